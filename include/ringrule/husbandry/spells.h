// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "ringrule/husbandry/date.h"

namespace ringrule {

/// A time in a tank or on a diet: first and last day both belong to it.
struct Spell {
    Date from;
    std::optional<Date> to;  ///< absent: it goes on
};

/// Days that two spells share; 0 also when one ends on the day on which the other begins, for that is how a move is
/// written. More than 0: an animal would be in two tanks at once. Spells that go on end on the last day of the year
/// 9999, the last that a collection can write.
[[nodiscard]] std::chrono::days sharedDays(const Spell& one, const Spell& other);

/// "from 2031-01-06 to 2031-02-01", or "from 2031-01-06 on".
[[nodiscard]] std::string spellText(const Spell& spell);

}  // namespace ringrule
