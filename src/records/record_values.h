// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "ringrule/records/record_kind.h"

namespace ringrule {

/// A value as the collection writes it ("yes" becomes "true", "03.50" becomes "3.5"). Throws `Error(BadData)`, a
/// sentence that names the field, when it is none of its type; empty stays empty.
[[nodiscard]] std::string normalValue(const RecordField& field, const std::string& value);

/// All of a record's values, normal. Throws as above, and for a field that the kind does not have, one that is required
/// and empty, a last day before the first, or a record that is about nothing or about
/// several things at once (a note of an animal and a tank).
[[nodiscard]] RecordValues normalValues(const RecordKind& kind, const RecordValues& values);
/// The same for what a collection once kept: an empty text is taken as it is.
[[nodiscard]] RecordValues normalStoredValues(const RecordKind& kind, const RecordValues& values);

/// The field of this name. Throws `Error(BadData)` that lists the names.
[[nodiscard]] const RecordField& fieldOf(const RecordKind& kind, const std::string& name);

/// A number with the fewest digits that read back as the same.
[[nodiscard]] std::string shortNumber(double value);
/// A normal value of a number field, whatever the locale. Precondition: not empty.
[[nodiscard]] double numberOf(const std::string& value);

}  // namespace ringrule
