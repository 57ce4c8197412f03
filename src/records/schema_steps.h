// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string_view>

namespace ringrule {

/// The statements of each step of the schema. A published step never changes.
[[nodiscard]] std::span<const std::string_view> schemaStep1();
[[nodiscard]] std::span<const std::string_view> schemaStep2();
[[nodiscard]] std::span<const std::string_view> schemaStep3();
[[nodiscard]] std::span<const std::string_view> schemaStep4();

}  // namespace ringrule
