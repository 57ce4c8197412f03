// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sentence.h"

#include <utility>

namespace ringrule {

std::string Sentence::text() const {
    std::string text;
    for (std::size_t k = 0; k < pattern.size(); ++k) {
        const int value = pattern[k] == '%' && k + 1 < pattern.size() ? pattern[k + 1] - '1' : -1;
        if (value >= 0 && value < std::ssize(values)) {
            text += values[static_cast<std::size_t>(value)];
            ++k;
        } else {
            text += pattern[k];
        }
    }
    return text;
}

Sentence sentence(std::string pattern, std::vector<std::string> values) {
    return {std::move(pattern), std::move(values)};
}

std::string textOf(const std::vector<Sentence>& sentences) {
    std::string text;
    for (const Sentence& sentence : sentences) text += (text.empty() ? "" : " ") + sentence.text();
    return text;
}

}  // namespace ringrule
