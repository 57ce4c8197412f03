// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/measured_collection.h"

#include <iostream>

#include "ringrule/workflow/session_table.h"

namespace ringrule::cli {

std::optional<MeasuredCollection> openMeasured(const std::string& where) {
    MeasuredCollection found{Store::open(where), {}, {}};
    found.histories = historiesFromStore(found.store);
    found.days = sessionDays(found.histories);
    if (!found.days.empty()) return found;
    std::cout << "Nothing is measured in this collection yet.\n";
    return std::nullopt;
}

}  // namespace ringrule::cli
