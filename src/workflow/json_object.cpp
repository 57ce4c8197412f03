// SPDX-License-Identifier: GPL-3.0-or-later
#include "workflow/json_object.h"

#include <algorithm>
#include <limits>

#include "ringrule/error.h"

namespace ringrule {

JsonObject::JsonObject(const nlohmann::json& json, std::string file, std::string place)
    : json_(&json), file_(std::move(file)), place_(std::move(place)) {
    if (!json.is_object()) {
        throw Error(ErrorKind::BadData, (place_.empty() ? "the file" : "\"" + place_ + "\"") + " must be an object",
                    file_);
    }
}

void JsonObject::fail(const std::string& field, const std::string& what) const {
    const std::string name = place_.empty() ? field : place_ + "." + field;
    throw Error(ErrorKind::BadData, "\"" + name + "\" " + what, file_);
}

void JsonObject::allowOnly(std::initializer_list<const char*> fields) const {
    for (const auto& item : json_->items()) {
        const bool known = std::any_of(fields.begin(), fields.end(), [&](const char* f) { return item.key() == f; });
        if (!known) fail(item.key(), "is not a field that is known here; correct its name or take it out");
    }
}

const nlohmann::json* JsonObject::find(const char* field) const {
    const auto found = json_->find(field);
    return found == json_->end() || found->is_null() ? nullptr : &*found;
}

std::optional<std::string> JsonObject::textIfAny(const char* field) const {
    const auto* value = find(field);
    if (value == nullptr) return std::nullopt;
    if (!value->is_string()) fail(field, "must be text");
    return value->get<std::string>();
}

std::string JsonObject::text(const char* field) const {
    auto value = textIfAny(field);
    if (!value || value->empty()) fail(field, "is missing or empty");
    return *value;
}

std::vector<std::string> JsonObject::texts(const char* field) const {
    const auto* value = find(field);
    if (value == nullptr) return {};
    if (!value->is_array()) fail(field, "must be a list of texts");
    std::vector<std::string> all;
    for (const auto& item : *value) {
        if (!item.is_string()) fail(field, "must be a list of texts");
        all.push_back(item.get<std::string>());
    }
    return all;
}

std::optional<Date> JsonObject::dateIfAny(const char* field) const {
    const auto value = textIfAny(field);
    if (!value) return std::nullopt;
    const auto date = value->size() == 10 ? parseDate(*value) : std::nullopt;
    if (!date) fail(field, "must be a day such as 2031-01-06, not \"" + *value + "\"");
    return date;
}

Date JsonObject::date(const char* field) const {
    const auto value = dateIfAny(field);
    if (!value) fail(field, "is missing");
    return *value;
}

std::optional<double> JsonObject::numberIfAny(const char* field) const {
    const auto* value = find(field);
    if (value == nullptr) return std::nullopt;
    if (!value->is_number() || value->get<double>() < 0.0) fail(field, "must be a number, not negative");
    return value->get<double>();
}

std::optional<int> JsonObject::wholeNumberIfAny(const char* field) const {
    const auto* value = find(field);
    if (value == nullptr) return std::nullopt;
    if (!value->is_number_integer() || value->get<std::int64_t>() < 0 ||
        value->get<std::int64_t>() > std::numeric_limits<int>::max()) {
        fail(field, "must be a whole number, not negative");
    }
    return value->get<int>();
}

std::optional<bool> JsonObject::yesNoIfAny(const char* field) const {
    const auto* value = find(field);
    if (value == nullptr) return std::nullopt;
    if (!value->is_boolean()) fail(field, "must be true or false");
    return value->get<bool>();
}

std::vector<JsonObject> JsonObject::objects(const char* field) const {
    const auto* value = find(field);
    if (value == nullptr) return {};
    if (!value->is_array()) fail(field, "must be a list");
    std::vector<JsonObject> all;
    for (std::size_t i = 0; i < value->size(); ++i) {
        const std::string name = std::string(field) + "[" + std::to_string(i) + "]";
        all.emplace_back((*value)[i], file_, place_.empty() ? name : place_ + "." + name);
    }
    return all;
}

}  // namespace ringrule
