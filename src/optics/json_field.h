// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

namespace ringrule {

/// A value in a JSON document that knows its own name, e.g. "plate.markers[2].side_mm", so that whoever reads it need
/// not care about messages. Every reader throws `Error(BadBox)` naming the field when it is missing or of another type.
class JsonField {
public:
    /// The document itself. `json` must outlive the field and all that is taken from it.
    JsonField(const nlohmann::json& json, std::string file);

    [[nodiscard]] JsonField at(const std::string& key) const;
    [[nodiscard]] std::optional<JsonField> find(const std::string& key) const;
    [[nodiscard]] std::vector<JsonField> items() const;
    /// The entries of a list that must have just `count` of them.
    [[nodiscard]] std::vector<JsonField> items(std::size_t count) const;

    [[nodiscard]] std::string text() const;
    [[nodiscard]] int whole(int least, int greatest) const;
    [[nodiscard]] double number() const;
    [[nodiscard]] double number(double least, double greatest) const;
    [[nodiscard]] double above(double bound) const;

    /// Throws the error "<name> <message>".
    [[noreturn]] void refuse(const std::string& message) const;

private:
    JsonField(const nlohmann::json& json, std::string name, std::string file);

    const nlohmann::json* json_;
    std::string name_;
    std::string file_;
};

}  // namespace ringrule
