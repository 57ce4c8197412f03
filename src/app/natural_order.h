// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace ringrule {

/// Whether `a` stands before `b` in a list that a person reads: runs of digits count as numbers, so that "A2" stands
/// before "A10", and small and capital letters alike.
[[nodiscard]] bool naturalLess(std::string_view a, std::string_view b);

}  // namespace ringrule
