// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/column_names.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdio>
#include <utility>

#include "records/record_values.h"
#include "ringrule/error.h"
#include "ringrule/husbandry/date.h"
#include "ringrule/records/measure_columns.h"

namespace ringrule {
namespace {

/// Words that keepers' tables use for fields, all lower case with underscores.
constexpr std::array kOtherWords{
    std::pair{"id", "code"},
    std::pair{"animal_id", "code"},
    std::pair{"animal_code", "code"},
    std::pair{"animal", "code"},
    std::pair{"code", "animal"},
    std::pair{"id", "animal"},
    std::pair{"animal_id", "animal"},
    std::pair{"animal_code", "animal"},
    std::pair{"scientific_name", "species"},
    std::pair{"born", "hatched_on"},
    std::pair{"born_on", "hatched_on"},
    std::pair{"hatched", "hatched_on"},
    std::pair{"hatch_date", "hatched_on"},
    std::pair{"birth_date", "hatched_on"},
    std::pair{"date_of_birth", "hatched_on"},
    std::pair{"arrived", "arrived_on"},
    std::pair{"arrival", "arrived_on"},
    std::pair{"origin", "source"},
    std::pair{"dam", "mother"},
    std::pair{"sire", "father"},
    std::pair{"date", "on_day"},
    std::pair{"day", "on_day"},
    std::pair{"measured_on", "on_day"},
    std::pair{"measured_by", "keeper"},
    std::pair{"by", "keeper"},
    std::pair{"remark", "note"},
    std::pair{"remarks", "note"},
    std::pair{"notes", "note"},
    std::pair{"comment", "note"},
    std::pair{"comments", "note"},
    std::pair{"notes", "text"},
    std::pair{"note", "text"},
    std::pair{"temperature", "temperature_c"},
    std::pair{"salinity", "salinity_ppt"},
    std::pair{"sl", "standard_length_mm"},
    std::pair{"length", "standard_length_mm"},
    std::pair{"standard_length", "standard_length_mm"},
    std::pair{"ht", "height_mm"},
    std::pair{"height", "height_mm"},
    std::pair{"hl", "head_length_mm"},
    std::pair{"head_length", "head_length_mm"},
    std::pair{"trl", "trunk_length_mm"},
    std::pair{"trunk_length", "trunk_length_mm"},
    std::pair{"tal", "tail_length_mm"},
    std::pair{"tail_length", "tail_length_mm"},
    std::pair{"td", "trunk_depth_mm"},
    std::pair{"depth", "trunk_depth_mm"},
    std::pair{"trunk_depth", "trunk_depth_mm"},
    std::pair{"tw", "trunk_width_mm"},
    std::pair{"trunk_width", "trunk_width_mm"},
    std::pair{"girth", "girth_mm"},
};

std::string plain(const std::string& head) {
    std::string word;
    for (const char c : head) {
        const auto letter = static_cast<unsigned char>(c);
        if (std::isalnum(letter))
            word += static_cast<char>(std::tolower(letter));
        else if (!word.empty() && word.back() != '_')
            word += '_';
    }
    while (!word.empty() && word.back() == '_') word.pop_back();
    return word;
}

bool takenAway(std::string& word, const std::string& ending) {
    if (!word.ends_with(ending)) return false;
    word.erase(word.size() - ending.size());
    return true;
}

std::string dayInOrder(const std::string& value, DayOrder order) {
    int first = 0;
    int second = 0;
    int year = 0;
    char a = 0;
    char b = 0;
    char rest = 0;
    const int read = std::sscanf(value.c_str(), "%2d%c%2d%c%4d%c", &first, &a, &second, &b, &year, &rest);
    if (read != 5 || a != b || std::string("./-").find(a) == std::string::npos || year < 1000) return value;
    if (order == DayOrder::NotTold && first <= 12 && second <= 12 && first != second) {
        throw Error(ErrorKind::BadData,
                    "\"" + value + "\" may be two days: say which part is the day (--day-order dmy or mdy)");
    }
    const bool monthFirst = order == DayOrder::MonthFirst || (order == DayOrder::NotTold && second > 12);
    if (monthFirst) std::swap(first, second);
    std::array<char, 40> text{};
    std::snprintf(text.data(), text.size(), "%04d-%02d-%02d", year, second, first);
    return text.data();
}

std::string plainNumber(std::string value, double factor, bool decimalComma) {
    for (const char* unit : {"mm", "cm", "%"}) {
        if (!takenAway(value, unit)) continue;
        if (std::string(unit) == "cm" && factor == 1.0) factor = 10.0;
    }
    while (!value.empty() && value.back() == ' ') value.pop_back();
    const auto comma = value.find(',');
    if (decimalComma && comma != std::string::npos && value.find('.') == std::string::npos) value[comma] = '.';
    if (factor == 1.0 || value.empty()) return value;
    const RecordField any{"value", FieldType::Number, {}, false, {}, {}, {}};
    // Twelve digits: 10.1 cm are 101 mm and not 101.00000000000001.
    std::array<char, 40> text{};
    std::snprintf(text.data(), text.size(), "%.12g", numberOf(normalValue(any, value)) * factor);
    return text.data();
}

}  // namespace

bool isMeasure(const std::string& field) {
    return std::any_of(kMeasureColumns.begin(), kMeasureColumns.end(),
                       [&](const MeasureColumn& measure) { return measure.column == field; });
}

ColumnUse likelyUse(const RecordKind& kind, const std::string& head) {
    ColumnUse use;
    use.column = head;
    std::string word = plain(head);
    const auto known = [&](const std::string& field) {
        return kind.field(field) != nullptr || (kind.name == "hand-measure" && isMeasure(field));
    };
    if (known(word)) {
        use.field = word;
        return use;
    }
    if (takenAway(word, "_cm"))
        use.factor = 10.0;
    else
        takenAway(word, "_mm");
    for (const auto& [other, field] : kOtherWords) {
        if (word != other || !known(field)) continue;
        use.field = field;
        return use;
    }
    if (known(word + "_mm")) use.field = word + "_mm";
    return use;
}

std::string cleanedValue(const RecordField& field, std::string value, const ColumnUse& use, DayOrder order,
                         bool decimalComma) {
    while (!value.empty() && value.front() == ' ') value.erase(0, 1);
    while (!value.empty() && value.back() == ' ') value.pop_back();
    if (field.type == FieldType::Day) return dayInOrder(value, order);
    if (field.type == FieldType::Number) return plainNumber(value, use.factor, decimalComma);
    if (field.type == FieldType::Choice) {
        std::transform(value.begin(), value.end(), value.begin(),
                       [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
        if (field.name == "sex" && (value == "f" || value == "m")) return value == "f" ? "female" : "male";
        if (field.name == "sex" && (value == "?" || value == "u")) return "unknown";
    }
    return value;
}

}  // namespace ringrule
