// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "ringrule/husbandry/date.h"

namespace ringrule {

/// One object of a file that people write by hand, read strictly: whatever is missing, of the wrong kind or not known
/// is an `Error(BadData)` whose sentence names the field, e.g. "animals[3].hatched_on". The JSON must outlive it.
class JsonObject {
public:
    /// `file` and `place` are for messages only.
    JsonObject(const nlohmann::json& json, std::string file, std::string place);

    /// Throws when the object has a field of another name: a slip of the pen must not be passed over.
    void allowOnly(std::initializer_list<const char*> fields) const;

    [[nodiscard]] std::string text(const char* field) const;  ///< not empty
    [[nodiscard]] std::optional<std::string> textIfAny(const char* field) const;
    [[nodiscard]] std::vector<std::string> texts(const char* field) const;
    [[nodiscard]] Date date(const char* field) const;
    [[nodiscard]] std::optional<Date> dateIfAny(const char* field) const;      ///< absent or null: none
    [[nodiscard]] std::optional<double> numberIfAny(const char* field) const;  ///< not negative
    [[nodiscard]] std::optional<int> wholeNumberIfAny(const char* field) const;
    [[nodiscard]] std::optional<bool> yesNoIfAny(const char* field) const;
    /// The objects of a list; none when the field is absent.
    [[nodiscard]] std::vector<JsonObject> objects(const char* field) const;

    [[noreturn]] void fail(const std::string& field, const std::string& what) const;

private:
    [[nodiscard]] const nlohmann::json* find(const char* field) const;

    const nlohmann::json* json_;
    std::string file_;
    std::string place_;
};

}  // namespace ringrule
