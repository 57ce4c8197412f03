// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/json_field.h"

#include <cmath>
#include <cstdint>
#include <sstream>
#include <utility>

#include "ringrule/error.h"

namespace ringrule {
namespace {

std::string plain(double value) {
    std::ostringstream out;
    out << value;
    return out.str();
}

}  // namespace

JsonField::JsonField(const nlohmann::json& json, std::string file) : JsonField(json, {}, std::move(file)) {}

JsonField::JsonField(const nlohmann::json& json, std::string name, std::string file)
    : json_(&json), name_(std::move(name)), file_(std::move(file)) {}

void JsonField::refuse(const std::string& message) const {
    throw Error(ErrorKind::BadBox, (name_.empty() ? "the box file" : name_) + " " + message, file_);
}

std::optional<JsonField> JsonField::find(const std::string& key) const {
    if (!json_->is_object()) refuse("must be an object in braces");
    const auto found = json_->find(key);
    if (found == json_->end() || found->is_null()) return std::nullopt;
    return JsonField(*found, name_.empty() ? key : name_ + "." + key, file_);
}

JsonField JsonField::at(const std::string& key) const {
    if (auto field = find(key)) return *field;
    JsonField(*json_, name_.empty() ? key : name_ + "." + key, file_).refuse("is missing");
}

std::vector<JsonField> JsonField::items() const {
    if (!json_->is_array()) refuse("must be a list in brackets");
    std::vector<JsonField> fields;
    fields.reserve(json_->size());
    for (std::size_t i = 0; i < json_->size(); ++i)
        fields.push_back(JsonField((*json_)[i], name_ + "[" + std::to_string(i) + "]", file_));
    return fields;
}

std::vector<JsonField> JsonField::items(std::size_t count) const {
    auto fields = items();
    if (fields.size() != count)
        refuse("must have " + std::to_string(count) + " entries, not " + std::to_string(fields.size()));
    return fields;
}

std::string JsonField::text() const {
    if (!json_->is_string()) refuse("must be text in quotes");
    return json_->get<std::string>();
}

int JsonField::whole(int least, int greatest) const {
    if (!json_->is_number_integer()) refuse("must be a whole number");
    const auto value = json_->get<std::int64_t>();
    if (value < least || value > greatest)
        refuse("must lie from " + std::to_string(least) + " to " + std::to_string(greatest) + ", not " +
               std::to_string(value));
    return static_cast<int>(value);
}

double JsonField::number() const {
    if (!json_->is_number()) refuse("must be a number");
    const auto value = json_->get<double>();
    if (!std::isfinite(value)) refuse("must be a finite number");
    return value;
}

double JsonField::number(double least, double greatest) const {
    const double value = number();
    if (value < least || value > greatest)
        refuse("must lie from " + plain(least) + " to " + plain(greatest) + ", not " + plain(value));
    return value;
}

double JsonField::above(double bound) const {
    const double value = number();
    if (!(value > bound)) refuse("must be more than " + plain(bound) + ", not " + plain(value));
    return value;
}

}  // namespace ringrule
