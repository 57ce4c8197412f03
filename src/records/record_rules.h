// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "records/database.h"
#include "ringrule/records/record_kind.h"

namespace ringrule {

/// Throws `Error(BadData)` that says what to do for what no animal can be: a hand measure out of every range, two tanks
/// or two diets at once (an own diet and its tank's may be at once: its own wins). `id` is 0 for a record that is being
/// added. `before` is what stood there: a change that leaves old trouble as it was or makes it smaller is taken, so
/// that a collection of an older version can be put right step by step. Values are normal, links are numbers.
void mustBeBelievable(const Database& database, const RecordKind& kind, std::int64_t id, const RecordValues& values,
                      const RecordValues& before = {});

/// A sentence for each record, or two of them, of a whole collection that would be refused now.
[[nodiscard]] std::vector<std::string> unbelievableRecords(const Database& database);

}  // namespace ringrule
