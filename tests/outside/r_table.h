// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

/// The columns of a table that R wrote, as text without quotes.
inline std::map<std::string, std::vector<std::string>> readRTable(const std::string& path) {
    std::ifstream file(path);
    std::vector<std::string> names;
    std::map<std::string, std::vector<std::string>> columns;
    std::string line;
    while (std::getline(file, line)) {
        std::istringstream cells(line);
        std::string cell;
        std::size_t column = 0;
        const bool header = names.empty();
        while (std::getline(cells, cell, ',')) {
            std::erase_if(cell, [](char c) { return c == '"' || c == '\r'; });
            if (header) {
                names.push_back(cell);
            } else {
                columns[names.at(column++)].push_back(cell);
            }
        }
    }
    if (columns.empty()) {
        throw std::runtime_error(path + ": no rows");
    }
    return columns;
}

/// What a referee's script printed: `what,name,value`.
class RefereeFigures {
public:
    explicit RefereeFigures(const std::string& path) {
        const auto table = readRTable(path);
        for (std::size_t i = 0; i < table.at("what").size(); ++i) {
            figures_[table.at("what")[i] + "/" + table.at("name")[i]] = std::stod(table.at("value")[i]);
        }
    }
    [[nodiscard]] double at(const std::string& what, const std::string& name) const {
        return figures_.at(what + "/" + name);
    }
    [[nodiscard]] bool has(const std::string& what, const std::string& name) const {
        return figures_.count(what + "/" + name) > 0;
    }

private:
    std::map<std::string, double> figures_;
};
