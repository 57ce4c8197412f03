// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/table_schema.h"

#include <sstream>

#include "records/csv_text.h"

namespace ringrule {
namespace {

using Json = nlohmann::ordered_json;

bool linksByCode(const RecordField& field) {
    return field.type == FieldType::Link && recordKind(field.of).coded();
}

std::string typeOf(const RecordField& field) {
    switch (field.type) {
        case FieldType::Words:
            return "array";
        case FieldType::Day:
            return "date";
        case FieldType::Whole:
            return "integer";
        case FieldType::Number:
            return "number";
        case FieldType::YesNo:
            return "boolean";
        case FieldType::Link:
            return linksByCode(field) ? "string" : "integer";
        case FieldType::Text:
        case FieldType::Choice:
        case FieldType::Moment:  // a day or a time: no one type of a schema
            break;
    }
    return "string";
}

Json fieldOf(const RecordField& field) {
    Json json{{"name", field.name}, {"type", typeOf(field)}, {"title", field.title}};
    if (!field.unit.empty()) json["unit"] = field.unit;
    Json constraints = Json::object();
    if (field.required && field.type != FieldType::Text) constraints["required"] = true;
    if (field.name == "code") constraints = {{"required", true}, {"unique", true}};
    if (field.type == FieldType::Choice) {
        std::istringstream words(field.of);
        for (std::string word; words >> word;) constraints["enum"].push_back(word);
    }
    if (!constraints.empty()) json["constraints"] = constraints;
    return json;
}

bool isText(const RecordField& field) {
    return field.type == FieldType::Text || linksByCode(field);
}

}  // namespace

Json tableSchemaOf(const RecordKind& kind) {
    Json fields = Json::array();
    if (kind.numbered) fields.push_back({{"name", "id"}, {"type", "integer"}, {"title", "Number of the record"}});
    if (kind.versioned)
        fields.push_back({{"name", "row_version"}, {"type", "integer"}, {"title", "Grows with every change"}});
    Json keys = Json::array();
    for (const RecordField& field : kind.fields) {
        fields.push_back(fieldOf(field));
        if (field.type != FieldType::Link) continue;
        const std::string resource = field.of == kind.name ? "" : field.of;
        keys.push_back({{"fields", field.name},
                        {"reference", {{"resource", resource}, {"fields", linksByCode(field) ? "code" : "id"}}}});
    }
    Json schema{{"fields", fields}, {"missingValues", {""}}};
    if (kind.numbered) {
        schema["primaryKey"] = "id";
    } else if (kind.name == "landmark") {
        schema["primaryKey"] = {"measure", "name"};
    } else {
        schema["primaryKey"] = kind.fields.front().name;
    }
    if (!keys.empty()) schema["foreignKeys"] = keys;
    return schema;
}

std::vector<std::string> tableColumns(const RecordKind& kind) {
    std::vector<std::string> names;
    if (kind.numbered) names.emplace_back("id");
    if (kind.versioned) names.emplace_back("row_version");
    for (const RecordField& field : kind.fields) names.push_back(field.name);
    return names;
}

std::string tableLine(const RecordKind& kind, const Record& record) {
    std::string line;
    if (kind.numbered) line += std::to_string(record.id) + ",";
    if (kind.versioned) line += std::to_string(record.version) + ",";
    for (const RecordField& field : kind.fields) {
        const std::string value = record.text(field.name);
        line += csvCell(isText(field) ? guarded(value) : value) + ",";
    }
    line.back() = '\r';
    return line + "\n";
}

}  // namespace ringrule
