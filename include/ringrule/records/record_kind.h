// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace ringrule {

enum class FieldType {
    Text,
    Choice,  ///< one of the words in `of`
    Words,   ///< a list of texts, as JSON
    Day,     ///< "YYYY-MM-DD"
    Moment,  ///< ISO 8601; may be empty
    Whole,
    Number,
    YesNo,  ///< "true" or "false"
    Link,   ///< a record of the kind `of`: by its code where it has one, or else by its number
};

/// One field of a kind of record: column of its table, of exported tables and option of the command line alike.
struct RecordField {
    std::string name;
    FieldType type = FieldType::Text;
    std::string title;      ///< what it says, for a keeper
    bool required = false;  ///< may not be empty
    std::string of;         ///< Choice: the words, each followed by a space; Link: the kind
    std::string unit;
    std::string otherwise;  ///< what an empty value means, where the database needs one
};

/// How records of a kind come about and change.
enum class RecordUse {
    Kept,     ///< by keepers: added, changed, removed
    Changed,  ///< added by sessions; keepers change fields, and nothing is ever removed
    Written,  ///< by the program only
};

/// What is known of one kind of record. The list of kinds drives the change log, undo, export and import.
struct RecordKind {
    std::string name;   ///< as the command line calls it, e.g. "feeding"
    std::string table;  ///< as the database calls it
    std::string title;
    RecordUse use = RecordUse::Kept;
    bool numbered = true;   ///< has an `id`; else the first field (and the second, of landmarks) tells rows apart
    bool versioned = true;  ///< has a `row_version`
    std::vector<RecordField> fields;

    [[nodiscard]] const RecordField* field(std::string_view name) const;
    /// Whether a record is called by a code of the keeper's own.
    [[nodiscard]] bool coded() const { return field("code") != nullptr; }
};

/// Every kind, in the order in which they are exported.
[[nodiscard]] const std::vector<RecordKind>& recordKinds();
/// The kind of this name. Throws `Error(BadUse)` that lists the names.
[[nodiscard]] const RecordKind& recordKind(std::string_view name);

/// Fields by name, as text; a field that is not there is empty.
using RecordValues = std::map<std::string, std::string>;

/// One row of a kind.
struct Record {
    std::int64_t id = 0;
    std::int64_t version = 0;  ///< grows with every change; a change says which version it was made from
    RecordValues values;

    [[nodiscard]] std::string text(const std::string& field) const;
};

}  // namespace ringrule
