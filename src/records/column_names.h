// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "ringrule/records/record_kind.h"
#include "ringrule/records/table_import.h"

namespace ringrule {

/// What a column of this head most likely is in a record of this kind; `field` empty when it is not known.
[[nodiscard]] ColumnUse likelyUse(const RecordKind& kind, const std::string& head);

/// A value of a column as the field wants it: days in order, decimal commas, units taken off, centimetres times ten.
/// Throws `Error(BadData)` for a day that could be either.
[[nodiscard]] std::string cleanedValue(const RecordField& field, std::string value, const ColumnUse& use,
                                       DayOrder order, bool decimalComma);

/// Whether a field is a measure that stands in a column of its own.
[[nodiscard]] bool isMeasure(const std::string& field);

}  // namespace ringrule
