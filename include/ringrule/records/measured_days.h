// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <span>

#include "ringrule/records/store.h"

namespace ringrule {

/// Calls `each` with the measures that count of one animal on one day, for each animal and day between two days (both
/// included), in order of day and animal, the photos in theirs. Reads a few sessions at a time: of years of a large
/// collection no more is in memory than that.
void eachMeasuredDay(const Store& store, Date from, Date to,
                     const std::function<void(AnimalId, Date, std::span<const Measurement>)>& each);

}  // namespace ringrule
