// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "ringrule/records/store.h"

namespace ringrule {

/// In which order a day's parts stand when it is not written as 2031-01-06.
enum class DayOrder { NotTold, DayFirst, MonthFirst };

struct TableImportOptions {
    std::map<std::string, std::string>
        fieldOfColumn;                          ///< corrections of the mapping; an empty field leaves a column out
    std::map<std::string, std::string> always;  ///< fields that every record gets, e.g. keeper or method
    DayOrder dayOrder = DayOrder::NotTold;
    bool write = false;  ///< false: everything is tried and nothing is kept
};

/// What becomes of a column.
struct ColumnUse {
    std::string column;
    std::string field;    ///< of the record, or the name of a measure; empty: left out
    double factor = 1.0;  ///< 10 when the head says cm
    std::string example;  ///< the first value that is there
};

struct BadRow {
    std::size_t line = 0;
    std::string sentence;
};

struct TableImport {
    std::vector<ColumnUse> columns;
    int rows = 0;
    int records = 0;  ///< that were or would be added
    std::vector<BadRow> bad;
    bool written = false;
};

/// Imports a CSV table as records of a kind. Columns are matched to fields by name; for hand measures a column may be a
/// measure ("SL (cm)"), one record each. Every row is tried against the collection. With one bad row nothing is
/// written; so the mapping and the bad rows can be looked at first. Throws `Error(BadData)`, `Error(BadUse)`.
[[nodiscard]] TableImport importTable(Store& store, const std::filesystem::path& file, const std::string& kind,
                                      const TableImportOptions& options = {});

}  // namespace ringrule
