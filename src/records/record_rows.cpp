// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/record_rows.h"

#include <algorithm>

#include "records/record_values.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

bool namedByCode(const RecordField& field) {
    return field.type == FieldType::Link && recordKind(field.of).coded();
}

std::string selectList(const RecordKind& kind, Links links) {
    std::string list = kind.numbered ? "t.id, " : "0, ";
    list += kind.versioned ? "t.row_version" : "0";
    for (const RecordField& field : kind.fields) {
        if (links == Links::AsCodes && namedByCode(field)) {
            list += ", (SELECT l.code FROM " + recordKind(field.of).table + " l WHERE l.id = t." + field.name + ")";
        } else {
            list += ", t." + field.name;
        }
    }
    return list;
}

/// The next column as text, empty for none.
std::string readValue(Statement& row, const RecordField& field, Links links) {
    switch (field.type) {
        case FieldType::Number: {
            const auto value = row.realOrNone();
            return value ? shortNumber(*value) : std::string();
        }
        case FieldType::YesNo: {
            const auto value = row.numberOrNone();
            return !value ? std::string() : *value != 0 ? "true" : "false";
        }
        case FieldType::Link:
            if (links == Links::AsCodes && namedByCode(field)) return row.text();
            [[fallthrough]];
        case FieldType::Whole: {
            const auto value = row.numberOrNone();
            return value ? std::to_string(*value) : std::string();
        }
        case FieldType::Text:
        case FieldType::Choice:
        case FieldType::Words:
        case FieldType::Day:
        case FieldType::Moment:
            break;
    }
    return row.text();
}

void bindValue(Statement& row, const RecordField& field, const std::string& value) {
    switch (field.type) {
        case FieldType::Number:
            value.empty() ? row.bindNull() : row.bind(numberOf(value));
            return;
        case FieldType::YesNo:
            value.empty() ? row.bindNull() : row.bind(value == "true");
            return;
        case FieldType::Whole:
        case FieldType::Link:
            value.empty() ? row.bindNull() : row.bind(std::int64_t{std::stoll(value)});
            return;
        case FieldType::Day:
            value.empty() ? row.bindNull() : row.bind(value);
            return;
        case FieldType::Text:
        case FieldType::Choice:
        case FieldType::Words:
        case FieldType::Moment:
            break;
    }
    row.bind(value);
}

/// A number that no record of the kind has or ever had: the change log must not mix two records up.
std::int64_t freshNumber(const Database& database, const RecordKind& kind) {
    Statement ever(database, "SELECT coalesce(max(row_id), 0) + 1 FROM change_log WHERE kind = ?");
    static_cast<void>(ever.bind(kind.name).run().next());
    return std::max(nextNumber(database, kind.table), ever.number());
}

std::string insertSql(const RecordKind& kind) {
    std::string names;
    std::string marks;
    const auto column = [&](const std::string& name) {
        names += (names.empty() ? "" : ", ") + name;
        marks += marks.empty() ? "?" : ", ?";
    };
    if (kind.numbered) column("id");
    if (kind.versioned) column("row_version");
    for (const RecordField& field : kind.fields) column(field.name);
    return "INSERT INTO " + kind.table + " (" + names + ") VALUES (" + marks + ")";
}

std::string selectSql(const RecordKind& kind, Links links, const std::string& condition) {
    const std::string order = kind.numbered ? "t.id" : "t." + kind.fields[0].name + ", t." + kind.fields[1].name;
    return "SELECT " + selectList(kind, links) + " FROM " + kind.table + " t" +
           (condition.empty() ? "" : " WHERE " + condition) + " ORDER BY " + order;
}

void eachRow(Statement& rows, const RecordKind& kind, Links links, const std::function<void(Record&)>& each) {
    rows.run();
    while (rows.next()) {
        Record record;
        record.id = rows.number();
        record.version = rows.number();
        for (const RecordField& field : kind.fields) {
            std::string value = readValue(rows, field, links);
            if (!value.empty()) record.values.emplace_hint(record.values.end(), field.name, std::move(value));
        }
        each(record);
    }
}

/// SQL for a field's having a value, with a question mark for it; or for its being empty.
std::string conditionOn(const RecordField& field, const std::string& value) {
    if (!value.empty()) return "t." + field.name + " = ?";
    const bool isText = field.type == FieldType::Text || field.type == FieldType::Choice ||
                        field.type == FieldType::Words || field.type == FieldType::Moment;
    return isText ? "coalesce(t." + field.name + ", '') = ''" : "t." + field.name + " IS NULL";
}

/// Says which records a link would be left dangling in.
void mustBeUnlinked(const Database& database, const RecordKind& kind, std::int64_t id) {
    std::string names;
    for (const RecordKind& other : recordKinds()) {
        for (const RecordField& field : other.fields) {
            if (field.type != FieldType::Link || field.of != kind.name) continue;
            Statement links(database, "SELECT count(*) FROM " + other.table + " WHERE " + field.name + " = ?");
            static_cast<void>(links.bind(id).run().next());
            const std::int64_t count = links.number();
            if (count > 0)
                names += (names.empty() ? "" : ", ") + other.name + " (" + std::to_string(count) + ", as " +
                         field.name + ")";
        }
    }
    if (!names.empty())
        throw Error(ErrorKind::BadData, "other records name this " + kind.name + ": " + names +
                                            "; remove or change those first, or leave it");
}

}  // namespace

std::int64_t nextNumber(const Database& database, const std::string& table) {
    return std::stoll(database.textOf("SELECT coalesce(max(id), 0) + 1 FROM " + table));
}

void eachRecord(const Database& database, const RecordKind& kind, Links links, const std::string& condition,
                const std::function<void(Record&)>& each) {
    Statement rows(database, selectSql(kind, links, condition),
                   condition.empty() ? Statement::Fetch::RowByRow : Statement::Fetch::AtOnce);
    eachRow(rows, kind, links, each);
}

void eachRecordWith(const Database& database, const RecordKind& kind, const RecordValues& values,
                    const std::function<void(Record&)>& each) {
    std::string condition;
    for (const auto& [name, value] : values)
        condition += (condition.empty() ? "" : " AND ") + conditionOn(*kind.field(name), value);
    Statement rows(database, selectSql(kind, Links::AsCodes, condition), Statement::Fetch::RowByRow);
    for (const auto& [name, value] : values)
        if (!value.empty()) bindValue(rows, *kind.field(name), value);
    eachRow(rows, kind, Links::AsCodes, each);
}

std::vector<Record> readRecords(const Database& database, const RecordKind& kind, Links links,
                                const std::string& condition) {
    std::vector<Record> all;
    eachRecord(database, kind, links, condition, [&](Record& record) { all.push_back(std::move(record)); });
    return all;
}

std::optional<Record> findRecord(const Database& database, const RecordKind& kind, std::int64_t id, Links links) {
    auto found = readRecords(database, kind, links, "t.id = " + std::to_string(id));
    if (found.empty()) return std::nullopt;
    return std::move(found.front());
}

std::int64_t numberOfCode(const Database& database, const RecordKind& kind, const std::string& code) {
    Statement row(database, "SELECT id FROM " + kind.table + " WHERE code = ?");
    if (!row.bind(code).run().next()) {
        throw Error(ErrorKind::BadData, "there is no " + kind.name + " \"" + code + "\" in this collection");
    }
    return row.number();
}

RecordValues withNumbers(const Database& database, const RecordKind& kind, RecordValues values) {
    for (auto& [name, value] : values) {
        const RecordField* const field = kind.field(name);
        if (value.empty() || field == nullptr || field->type != FieldType::Link) continue;
        const RecordKind& linked = recordKind(field->of);
        if (linked.coded()) {
            value = std::to_string(numberOfCode(database, linked, value));
            continue;
        }
        Statement there(database, "SELECT 1 FROM " + linked.table + " WHERE id = ?");
        if (!there.bind(std::int64_t{std::stoll(normalValue(*field, value))}).run().next())
            throw Error(ErrorKind::BadData, "there is no " + linked.name + " " + value + " in this collection");
    }
    return values;
}

RecordWriter::RecordWriter(const Database& database, const RecordKind& kind)
    : kind_(kind), row_(database, insertSql(kind)) {}

void RecordWriter::add(const Record& record) {
    if (kind_.numbered) row_.bind(record.id);
    if (kind_.versioned) row_.bind(record.version);
    for (const RecordField& field : kind_.fields) bindValue(row_, field, record.text(field.name));
    row_.run();
}

std::int64_t insertRecord(const Database& database, const RecordKind& kind, const Record& record) {
    Record numbered = record;
    if (numbered.id == 0) numbered.id = freshNumber(database, kind);
    if (numbered.version == 0) numbered.version = 1;
    RecordWriter(database, kind).add(numbered);
    return numbered.id;
}

void updateRecord(const Database& database, const RecordKind& kind, std::int64_t id, const RecordValues& values) {
    std::string sets = "row_version = row_version + 1";
    for (const auto& [name, value] : values) sets += ", " + name + " = ?";
    Statement row(database, "UPDATE " + kind.table + " SET " + sets + " WHERE id = ?");
    for (const auto& [name, value] : values) bindValue(row, *kind.field(name), value);
    row.bind(id).run();
}

void deleteRecord(const Database& database, const RecordKind& kind, std::int64_t id) {
    mustBeUnlinked(database, kind, id);
    Statement(database, "DELETE FROM " + kind.table + " WHERE id = ?").bind(id).run();
}

}  // namespace ringrule
