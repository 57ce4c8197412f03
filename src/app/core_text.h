// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string_view>

namespace ringrule {

/// A fixed word or sentence of the engine (a remark, a measure's name, a landmark) in the language that is spoken; in
/// English where the language has none. Their translations are in translations/core_*.ts.
[[nodiscard]] QString coreText(std::string_view english);

}  // namespace ringrule
