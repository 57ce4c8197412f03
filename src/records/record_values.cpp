// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/record_values.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include <QUtf8StringView>

#include "records/polyline_text.h"
#include "ringrule/error.h"
#include "ringrule/husbandry/date.h"

namespace ringrule {
namespace {

[[noreturn]] void refuse(const RecordField& field, std::string what) {
    std::replace_if(
        what.begin(), what.end(), [](unsigned char c) { return c < ' '; }, ' ');  // a message is one line
    throw Error(ErrorKind::BadData, "\"" + field.name + "\" " + what);
}

std::string normalDay(const RecordField& field, const std::string& value) {
    if (value.size() != 10 || !parseDate(value))
        refuse(field, "must be a day such as 2031-01-06, not \"" + value + "\"");
    return value;
}

std::string normalMoment(const RecordField& field, const std::string& value) {
    if (!parseDate(value)) refuse(field, "must be a time such as 2031-01-06T08:30:00, not \"" + value + "\"");
    return value;
}

template <class Number>
Number parsed(const RecordField& field, const std::string& value, const std::string& what) {
    Number number{};
    const char* const end = value.data() + value.size();
    const auto read = std::from_chars(value.data(), end, number);
    if (read.ec != std::errc() || read.ptr != end) refuse(field, "must be " + what + ", not \"" + value + "\"");
    return number;
}

std::string normalNumber(const RecordField& field, const std::string& value) {
    const double number = parsed<double>(field, value, "a number with a point, such as 101.25");
    if (!std::isfinite(number)) refuse(field, "must be a number, not \"" + value + "\"");
    return shortNumber(number);
}

std::string normalYesNo(const RecordField& field, const std::string& value) {
    if (value == "true" || value == "yes" || value == "1") return "true";
    if (value == "false" || value == "no" || value == "0") return "false";
    refuse(field, "must be yes or no, not \"" + value + "\"");
}

std::string normalChoice(const RecordField& field, const std::string& value) {
    if (value.find(' ') == std::string::npos && (" " + field.of).find(" " + value + " ") != std::string::npos)
        return value;
    std::string words = field.of;
    while (!words.empty() && words.back() == ' ') words.pop_back();
    refuse(field, "must be one of: " + words + "; not \"" + value + "\"");
}

std::string normalWords(const RecordField& field, const std::string& value) {
    if (!value.starts_with('[')) return textOfWords({value});  // a single word needs no brackets
    try {
        return textOfWords(wordsOfText(value));
    } catch (const Error&) {
        refuse(field, "must be a JSON list of texts");
    }
}

/// The fields of which exactly one says what a record is about; none when a single field does.
std::vector<std::string> subjectsOf(const RecordKind& kind) {
    if (kind.name == "note") return {"animal", "tank", "brood", "session", "photo"};
    const RecordField* const animal = kind.field("animal");
    if (animal == nullptr || animal->required || kind.field("tank") == nullptr) return {};
    return {"animal", "tank"};
}

void checkTogether(const RecordKind& kind, const RecordValues& values) {
    const auto at = [&](const char* name) {
        const auto found = values.find(name);
        return found == values.end() ? std::string() : found->second;
    };
    if (kind.field("to_day") != nullptr && !at("to_day").empty() && at("to_day") < at("from_day"))
        throw Error(ErrorKind::BadData, "\"to_day\" lies before \"from_day\"");
    std::string names;
    int said = 0;
    for (const std::string& name : subjectsOf(kind)) {
        names += (names.empty() ? "\"" : ", \"") + name + "\"";
        said += at(name.c_str()).empty() ? 0 : 1;
    }
    if (!names.empty() && said != 1)
        throw Error(ErrorKind::BadData, "say one of " + names + (said > 1 ? ", and only one" : ""));
}

}  // namespace

std::string shortNumber(double value) {
    std::array<char, 40> text{};
    return {text.data(), std::to_chars(text.data(), text.data() + text.size(), value).ptr};
}

double numberOf(const std::string& value) {
    double number = 0.0;
    std::from_chars(value.data(), value.data() + value.size(), number);
    return number;
}

std::string normalValue(const RecordField& field, const std::string& value) {
    if (value.empty()) return value;
    switch (field.type) {
        case FieldType::Day:
            return normalDay(field, value);
        case FieldType::Moment:
            return normalMoment(field, value);
        case FieldType::Number:
            return normalNumber(field, value);
        case FieldType::Whole:
            return std::to_string(parsed<std::int64_t>(field, value, "a whole number"));
        case FieldType::YesNo:
            return normalYesNo(field, value);
        case FieldType::Choice:
            return normalChoice(field, value);
        case FieldType::Words:
            return normalWords(field, value);
        case FieldType::Link:
            // Records without codes are told by their numbers.
            if (!recordKind(field.of).coded())
                return std::to_string(parsed<std::int64_t>(field, value, "the number of a " + field.of));
            [[fallthrough]];
        case FieldType::Text:
            if (!QUtf8StringView(value.data(), static_cast<qsizetype>(value.size())).isValidUtf8())
                refuse(field, "must be text in UTF-8");
            break;
    }
    return value;
}

const RecordField& fieldOf(const RecordKind& kind, const std::string& name) {
    if (const RecordField* const field = kind.field(name)) return *field;
    std::string names;
    for (const RecordField& field : kind.fields) names += (names.empty() ? "" : ", ") + field.name;
    throw Error(ErrorKind::BadData,
                "\"" + name + "\" is no field of the kind " + kind.name + "; its fields are " + names);
}

namespace {

RecordValues normalised(const RecordKind& kind, const RecordValues& values, bool textsMayLack) {
    for (const auto& [name, value] : values) static_cast<void>(fieldOf(kind, name));
    RecordValues normal;
    for (const RecordField& field : kind.fields) {
        const auto given = values.find(field.name);
        std::string value = normalValue(field, given == values.end() ? std::string() : given->second);
        if (value.empty()) value = field.otherwise;
        const bool lacks = value.empty() && field.required;
        if (lacks && !(textsMayLack && field.type == FieldType::Text && field.name != "code"))
            refuse(field, "is missing (" + field.title + ")");
        if (!value.empty()) normal[field.name] = std::move(value);
    }
    checkTogether(kind, normal);
    return normal;
}

}  // namespace

RecordValues normalValues(const RecordKind& kind, const RecordValues& values) {
    return normalised(kind, values, false);
}

RecordValues normalStoredValues(const RecordKind& kind, const RecordValues& values) {
    return normalised(kind, values, true);
}

}  // namespace ringrule
