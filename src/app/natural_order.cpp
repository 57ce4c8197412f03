// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/natural_order.h"

#include <algorithm>
#include <cctype>

namespace ringrule {
namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

/// The digits at the beginning, without leading zeros; `text` begins after them.
std::string_view takeNumber(std::string_view& text) {
    const auto end = static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), isDigit) - text.begin());
    std::string_view number = text.substr(0, end);
    text.remove_prefix(end);
    number.remove_prefix(std::min(number.find_first_not_of('0'), number.size()));
    return number;
}

int lower(char c) {
    return std::tolower(static_cast<unsigned char>(c));
}

}  // namespace

bool naturalLess(std::string_view a, std::string_view b) {
    const std::string_view wholeA = a, wholeB = b;
    while (!a.empty() && !b.empty()) {
        if (isDigit(a.front()) && isDigit(b.front())) {
            const std::string_view first = takeNumber(a), second = takeNumber(b);
            if (first.size() != second.size()) return first.size() < second.size();
            if (first != second) return first < second;
        } else {
            if (lower(a.front()) != lower(b.front())) return lower(a.front()) < lower(b.front());
            a.remove_prefix(1);
            b.remove_prefix(1);
        }
    }
    // What reads alike ("A2", "a02") still has an order of its own.
    return a.size() != b.size() ? a.size() < b.size() : wholeA < wholeB;
}

}  // namespace ringrule
