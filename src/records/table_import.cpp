// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/table_import.h"

#include <algorithm>

#include "records/column_names.h"
#include "records/csv_text.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

/// Thrown through the transaction of a trial: everything is taken back.
struct OnlyTried {};

std::vector<ColumnUse> columnsOf(const RecordKind& kind, const std::vector<std::string>& head,
                                 const TableImportOptions& options) {
    std::vector<ColumnUse> columns;
    for (const std::string& name : head) {
        ColumnUse use = likelyUse(kind, name);
        const auto told = options.fieldOfColumn.find(name);
        if (told != options.fieldOfColumn.end()) use.field = told->second;
        columns.push_back(std::move(use));
    }
    for (const auto& [column, field] : options.fieldOfColumn) {
        if (std::find(head.begin(), head.end(), column) == head.end())
            throw Error(ErrorKind::BadUse, "the table has no column \"" + column + "\"");
        if (!field.empty() && kind.field(field) == nullptr && !(kind.name == "hand-measure" && isMeasure(field)))
            throw Error(ErrorKind::BadUse,
                        "\"" + field + "\" is no field of the kind " + kind.name + "; see ringrule list");
    }
    for (std::size_t i = 1; i < columns.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            if (columns[i].field.empty() || columns[i].field != columns[j].field) continue;
            throw Error(ErrorKind::BadUse, "columns \"" + columns[j].column + "\" and \"" + columns[i].column +
                                               "\" would both be " + columns[i].field + "; leave one out (--map \"" +
                                               columns[i].column + "=\")");
        }
    }
    return columns;
}

/// The records of one row: one, or one for each measure that stands in a column of its own.
class RowReader {
public:
    RowReader(const RecordKind& kind, const std::vector<ColumnUse>& columns, const TableImportOptions& options,
              bool decimalComma)
        : kind_(kind), columns_(columns), options_(options), decimalComma_(decimalComma) {}

    [[nodiscard]] std::vector<RecordValues> records(const std::vector<std::string>& cells) const {
        if (cells.size() != columns_.size())
            throw Error(ErrorKind::BadData, "has " + std::to_string(cells.size()) + " cells, the table's head has " +
                                                std::to_string(columns_.size()));
        RecordValues shared(options_.always.begin(), options_.always.end());
        RecordValues measures;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const ColumnUse& use = columns_[i];
            const std::string cell = unguarded(cells[i]);
            if (use.field.empty() || cell.empty()) continue;
            const RecordField* const field = kind_.field(use.field);
            const RecordField& type = field != nullptr ? *field : *kind_.field("value");
            std::string value = cleanedValue(type, cell, use, options_.dayOrder, decimalComma_);
            (field != nullptr ? shared : measures)[use.field] = std::move(value);
        }
        if (kind_.name == "animal") setHowExact(shared);
        const bool wide = std::any_of(columns_.begin(), columns_.end(), [&](const ColumnUse& use) {
            return !use.field.empty() && kind_.field(use.field) == nullptr;
        });
        if (!wide) return {shared};
        std::vector<RecordValues> all;
        for (const auto& [measure, value] : measures) {
            all.push_back(shared);
            all.back()["measure"] = measure;
            all.back()["value"] = value;
        }
        return all;
    }

private:
    /// "2030-11-15 (about)" and "ca. 2030-11-15" are estimates.
    static void setHowExact(RecordValues& values) {
        const auto day = values.find("hatched_on");
        if (day == values.end()) return;
        std::string& text = day->second;
        bool about = false;
        for (const char* word : {"(about)", "about ", "ca. ", "ca ", "~"}) {
            const auto at = text.find(word);
            if (at == std::string::npos) continue;
            text.erase(at, std::string(word).size());
            about = true;
        }
        while (!text.empty() && text.back() == ' ') text.pop_back();
        values.try_emplace("hatched_exactly", about ? "no" : "yes");
    }

    const RecordKind& kind_;
    const std::vector<ColumnUse>& columns_;
    const TableImportOptions& options_;
    bool decimalComma_;
};

}  // namespace

TableImport importTable(Store& store, const std::filesystem::path& file, const std::string& kindName,
                        const TableImportOptions& options) {
    const RecordKind& kind = recordKind(kindName);
    CsvReader reader(textOfFile(file.string()), 0, file.string());
    const auto head = reader.next();
    if (!head) throw Error(ErrorKind::BadData, "this table is empty", file.string());
    TableImport result;
    result.columns = columnsOf(kind, *head, options);
    const RowReader rows(kind, result.columns, options, reader.separator() != ',');
    try {
        store.together([&] {
            while (const auto cells = reader.next()) {
                ++result.rows;
                for (std::size_t i = 0; i < std::min(cells->size(), result.columns.size()); ++i)
                    if (result.columns[i].example.empty()) result.columns[i].example = (*cells)[i];
                try {
                    const auto records = rows.records(*cells);
                    store.together([&] {
                        for (const RecordValues& values : records) static_cast<void>(store.addRecord(kindName, values));
                    });
                    result.records += static_cast<int>(records.size());
                } catch (const Error& error) {
                    if (error.kind() != ErrorKind::BadData) throw;
                    result.bad.push_back({reader.line(), error.what()});
                }
            }
            if (!options.write || !result.bad.empty()) throw OnlyTried{};
        });
        result.written = true;
    } catch (const OnlyTried&) {
        // Nothing is kept: what was tried is told.
    }
    return result;
}

}  // namespace ringrule
