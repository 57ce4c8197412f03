// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include <nlohmann/json.hpp>

#include "ringrule/records/record_kind.h"

namespace ringrule {

/// The Table Schema (Frictionless, version 1) of the CSV file of a kind: names, types, units, missing values, keys.
[[nodiscard]] nlohmann::ordered_json tableSchemaOf(const RecordKind& kind);

/// The columns of that file in order: `id` and `row_version` where the kind has them, then its fields.
[[nodiscard]] std::vector<std::string> tableColumns(const RecordKind& kind);

/// The same record as cells of that file; a text that a spreadsheet would run is guarded.
[[nodiscard]] std::string tableLine(const RecordKind& kind, const Record& record);

}  // namespace ringrule
