// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/words.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <utility>

namespace ringrule {

std::string numberText(double value, int decimals) {
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "%.*f", decimals, value);
    std::string result = text.data();
    // "-0.0" reads as a change that is not there.
    const bool zero = result.find_first_not_of("-0.") == std::string::npos;
    return zero && result.front() == '-' ? result.substr(1) : result;
}

std::string percentText(double percent) {
    return numberText(percent, std::abs(percent) < 9.95 ? 1 : 0) + " %";
}

std::string sizeWithInterval(const Estimate& percent) {
    const double size = std::abs(percent.value);
    const int decimals = size < 9.95 ? 1 : 0;
    return numberText(size, decimals) + " % (" + numberText(size - percent.u95(), decimals) + " to " +
           numberText(size + percent.u95(), decimals) + " %)";
}

std::string rateText(const Estimate& mmPerDay) {
    return numberText(mmPerDay.value, 2) + " mm/day (" + numberText(mmPerDay.value - mmPerDay.u95(), 2) + " to " +
           numberText(mmPerDay.value + mmPerDay.u95(), 2) + ")";
}

std::string listText(std::span<const std::string> codes) {
    std::string text;
    for (std::size_t i = 0; i < codes.size(); ++i) {
        if (i > 0) {
            text += i + 1 == codes.size() ? " and " : ", ";
        }
        text += codes[i];
    }
    return text;
}

std::string tankmatesText(std::span<const std::string> codes) {
    if (codes.size() == 1) {
        return "its tankmate " + codes.front();
    }
    return "its " + std::to_string(codes.size()) + " tankmates (" + listText(codes) + ")";
}

}  // namespace ringrule
