// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/csv_text.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string_view>

#include <QUtf8StringView>

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

CsvReader::CsvReader(std::string text, char separator, std::string path)
    : text_(std::move(text)), path_(std::move(path)) {
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
        if (at_ >= text_.size())
            throw Error(ErrorKind::BadData,
                        "line " + std::to_string(began_) + ": a quotation mark is opened here and never closed", path_);
        ++at_;  // the closing quote
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
    std::string text{std::istreambuf_iterator<char>(in), {}};
    std::size_t line = 1;
    for (std::size_t at = 0; at < text.size(); ++line) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        const std::string_view one = std::string_view(text).substr(at, end - at);
        if (!QUtf8StringView(one.data(), static_cast<qsizetype>(one.size())).isValidUtf8() ||
            one.find('\0') != std::string_view::npos)
            throw Error(ErrorKind::BadData,
                        "line " + std::to_string(line) +
                            ": this is not text in UTF-8; save the table again as CSV in UTF-8 (spreadsheets call it "
                            "\"CSV UTF-8\")",
                        path);
        at = end + 1;
    }
    return text;
}

}  // namespace ringrule
