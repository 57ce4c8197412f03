// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace ringrule {

/// How long a father carries, from egg transfer to birth.
struct BroodingTime {
    int leastDays = 0;
    int mostDays = 0;
    std::string_view source;
};

/// That of a species, or what is usual in pipefish and seahorses when none is published for it here. Warm water is
/// quicker. `species` is the scientific name.
[[nodiscard]] BroodingTime broodingTime(std::string_view species);

}  // namespace ringrule
