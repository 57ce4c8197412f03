// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "records/database.h"
#include "records/statement.h"
#include "ringrule/records/record_kind.h"

namespace ringrule {

/// How a link to a record with a code is written: codes are for people and files, numbers for the change log.
enum class Links { AsCodes, AsNumbers };

/// The number after the last one of a table; inside a transaction nobody else takes it.
[[nodiscard]] std::int64_t nextNumber(const Database& database, const std::string& table);

/// Calls `each` with every record of a kind for which the SQL `condition` on the table `t` holds (empty: all), in order
/// of number. Needs no more memory than one record when there is no
/// condition; `each` must not ask this database anything then.
void eachRecord(const Database& database, const RecordKind& kind, Links links, const std::string& condition,
                const std::function<void(Record&)>& each);

/// Calls `each`, which must not ask this database anything, with every record that has these normal values (links as
/// numbers; empty: the field is empty), its links as codes, in order of number. Needs no more memory than one record.
void eachRecordWith(const Database& database, const RecordKind& kind, const RecordValues& values,
                    const std::function<void(Record&)>& each);

[[nodiscard]] std::vector<Record> readRecords(const Database& database, const RecordKind& kind, Links links,
                                              const std::string& condition = {});
[[nodiscard]] std::optional<Record> findRecord(const Database& database, const RecordKind& kind, std::int64_t id,
                                               Links links);

/// The number of the record with this code. Throws `Error(BadData)` that names it when there is none.
[[nodiscard]] std::int64_t numberOfCode(const Database& database, const RecordKind& kind, const std::string& code);

/// `values` with codes turned into numbers.
[[nodiscard]] RecordValues withNumbers(const Database& database, const RecordKind& kind, RecordValues values);

/// Writes records of a kind inside the caller's transaction; prepared once, run many times.
class RecordWriter {
public:
    RecordWriter(const Database& database, const RecordKind& kind);
    /// Normal values, links as numbers; the record's own number (where the kind has one) and version.
    void add(const Record& record);

private:
    const RecordKind& kind_;
    Statement row_;
};

/// Writes normal values with links as numbers. `record.id` 0 gives the row a number of its own, `version` 0 is 1.
std::int64_t insertRecord(const Database& database, const RecordKind& kind, const Record& record);
/// Changes the fields that are in `values` (empty: none) and raises the row's version.
void updateRecord(const Database& database, const RecordKind& kind, std::int64_t id, const RecordValues& values);
void deleteRecord(const Database& database, const RecordKind& kind, std::int64_t id);

}  // namespace ringrule
