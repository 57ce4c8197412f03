// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <charconv>
#include <fstream>
#include <iterator>
#include <optional>
#include <set>

#include "ringrule/error.h"
#include "ringrule/optics/marker_pattern.h"
#include "ringrule/sheets/card_sheet.h"

namespace ringrule {
namespace {

constexpr std::size_t kLargestFile = 1'000'000;

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view kBlank = " \t\r";
    const std::size_t first = text.find_first_not_of(kBlank);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

std::optional<int> numberIn(std::string_view text) {
    int number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (text.empty() || error != std::errc() || end != text.data() + text.size()) return std::nullopt;
    return number;
}

bool isCard(const std::optional<int>& number) {
    return number && *number >= 0 && *number < markerCount(kCardDictionary);
}

[[noreturn]] void refuseNumbers(const std::string& why) {
    throw Error(ErrorKind::BadUse, why + ": write card numbers from 0 to 999 as in 1-12,15,20-24, each once");
}

/// First and last of "7" or "3-9".
std::pair<int, int> rangeIn(std::string_view part) {
    const std::size_t dash = part.find('-');
    const auto first = numberIn(trimmed(part.substr(0, dash)));
    const auto last = dash == std::string_view::npos ? first : numberIn(trimmed(part.substr(dash + 1)));
    if (!isCard(first) || !isCard(last) || *last < *first)
        refuseNumbers("\"" + std::string(part) + "\" is no card number or range of them");
    return {*first, *last};
}

/// A field without its quotes; two quotes inside stand for one.
std::string unquoted(std::string_view field) {
    if (field.size() < 2 || field.front() != '"' || field.back() != '"') return std::string(field);
    std::string text;
    const std::string_view inside = field.substr(1, field.size() - 2);
    for (std::size_t i = 0; i < inside.size(); ++i) {
        text += inside[i];
        if (inside[i] == '"' && i + 1 < inside.size() && inside[i + 1] == '"') ++i;
    }
    return text;
}

struct Row {
    std::optional<int> number;
    std::string name;
};

std::optional<Row> rowIn(std::string_view line) {
    const std::size_t between = line.find_first_of(",;\t");
    if (between == std::string_view::npos) return std::nullopt;
    return Row{numberIn(trimmed(unquoted(trimmed(line.substr(0, between))))),
               unquoted(trimmed(line.substr(between + 1)))};
}

std::string contentOf(const std::filesystem::path& csv) {
    std::ifstream file(csv, std::ios::binary);
    if (!file || std::filesystem::is_directory(csv))
        throw Error(ErrorKind::BadData, "the table of names cannot be opened: check its name", csv.string());
    std::string text((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
    if (text.size() > kLargestFile)
        throw Error(ErrorKind::BadData, "this is too large for a table of names", csv.string());
    if (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);  // a spreadsheet's mark of UTF-8
    return text;
}

}  // namespace

std::vector<int> cardNumbersIn(std::string_view text) {
    std::vector<int> numbers;
    std::set<int> seen;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t comma = std::min(text.find(',', from), text.size());
        const auto [first, last] = rangeIn(trimmed(text.substr(from, comma - from)));
        for (int number = first; number <= last; ++number) {
            if (!seen.insert(number).second) refuseNumbers("card " + std::to_string(number) + " comes twice");
            numbers.push_back(number);
        }
        from = comma + 1;
    }
    return numbers;
}

std::map<int, std::string> readCardNames(const std::filesystem::path& csv) {
    const std::string text = contentOf(csv);
    std::map<int, std::string> names;
    int lineNumber = 0;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        const std::string_view line = trimmed(std::string_view(text).substr(from, end - from));
        from = end + 1;
        ++lineNumber;
        if (line.empty()) continue;
        const auto row = rowIn(line);
        if (lineNumber == 1 && row && !row->number) continue;  // the head
        if (!row || !isCard(row->number))
            throw Error(
                ErrorKind::BadData,
                "line " + std::to_string(lineNumber) + " is not a card number from 0 to 999, a comma and a name",
                csv.string());
        if (!names.emplace(*row->number, row->name).second)
            throw Error(ErrorKind::BadData,
                        "line " + std::to_string(lineNumber) + " names card " + std::to_string(*row->number) + " again",
                        csv.string());
    }
    return names;
}

}  // namespace ringrule
