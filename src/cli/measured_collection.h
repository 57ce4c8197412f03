// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ringrule/workflow/collection_review.h"

namespace ringrule::cli {

/// An open collection with what was measured in it.
struct MeasuredCollection {
    Store store;
    std::vector<AnimalHistory> histories;
    std::vector<Date> days;  ///< of its sessions, in order; at least one
};

/// Opens the collection that `--store` names. Says so on standard output, and returns nothing, when nothing is measured
/// in it yet.
[[nodiscard]] std::optional<MeasuredCollection> openMeasured(const std::string& where);

}  // namespace ringrule::cli
