// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/csv_text.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "ringrule/error.h"

namespace ringrule {
namespace {

char likelySeparator(const std::string& text) {
    const auto end = text.begin() + static_cast<std::ptrdiff_t>(std::min(text.find('\n'), text.size()));
    char best = ',';
    std::ptrdiff_t most = 0;
    for (const char candidate : {',', ';', '\t'}) {
        const auto count = std::count(text.begin(), end, candidate);
        if (count > most) {
            most = count;
            best = candidate;
        }
    }
    return best;
}

}  // namespace

std::string csvCell(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char c : text) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    return quoted + "\"";
}

std::string guarded(const std::string& text) {
    if (text.empty() || std::string("=+-@'\t\r\n").find(text.front()) == std::string::npos) return text;
    return "'" + text;
}

std::string unguarded(const std::string& text) {
    const bool marked =
        text.size() > 1 && text[0] == '\'' && std::string("=+-@'\t\r\n").find(text[1]) != std::string::npos;
    return marked ? text.substr(1) : text;
}

CsvReader::CsvReader(std::string text, char separator) : text_(std::move(text)) {
    if (text_.starts_with("\xEF\xBB\xBF")) at_ = 3;
    separator_ = separator != 0 ? separator : likelySeparator(text_);
}

std::string CsvReader::cell() {
    std::string value;
    if (at_ < text_.size() && text_[at_] == '"') {
        for (++at_; at_ < text_.size(); ++at_) {
            if (text_[at_] == '"') {
                if (at_ + 1 >= text_.size() || text_[at_ + 1] != '"') break;
                ++at_;
            }
            if (text_[at_] == '\n') ++line_;
            value += text_[at_];
        }
        if (at_ < text_.size()) ++at_;  // the closing quote
    }
    while (at_ < text_.size() && text_[at_] != separator_ && text_[at_] != '\n' && text_[at_] != '\r')
        value += text_[at_++];
    return value;
}

std::optional<std::vector<std::string>> CsvReader::next() {
    while (at_ < text_.size()) {
        began_ = line_;
        std::vector<std::string> cells{cell()};
        while (at_ < text_.size() && text_[at_] == separator_) {
            ++at_;
            cells.push_back(cell());
        }
        if (at_ < text_.size() && text_[at_] == '\r') ++at_;
        if (at_ < text_.size() && text_[at_] == '\n') ++at_;
        ++line_;
        if (std::any_of(cells.begin(), cells.end(), [](const std::string& c) { return !c.empty(); })) return cells;
    }
    return std::nullopt;
}

std::string textOfFile(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    if (!in || std::filesystem::is_directory(path)) throw Error(ErrorKind::BadData, "cannot be opened", path);
    return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace ringrule
