// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/number_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace ringrule {
namespace {

std::string fixed(double value, int decimals) {
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "%.*f", decimals, value);
    std::string written = text.data();
    // "−0.00" reads as a change that is not there; a typographic minus lines up with the plus-minus sign.
    const bool zero = written.find_first_not_of("-0.") == std::string::npos;
    if (written.starts_with('-')) written.replace(0, 1, zero ? "" : "\u2212");
    return written;
}

// One significant figure of the interval, two where rounding a leading 1 would change it by up to a third.
int decimalsFor(double u95) {
    if (!(u95 > 0.0)) return 2;
    const int order = static_cast<int>(std::floor(std::log10(u95)));
    const bool leadingOne = u95 < 1.95 * std::pow(10.0, order);
    return std::clamp((leadingOne ? 1 : 0) - order, 0, 5);
}

}  // namespace

std::string numberWithInterval(const Estimate& estimate, std::string_view unit) {
    if (!estimate.known()) return "cannot tell";
    const int decimals = decimalsFor(estimate.u95());
    std::string text = fixed(estimate.value, decimals) + " ± " + fixed(estimate.u95(), decimals);
    if (!unit.empty()) text += "\u00A0" + std::string(unit);
    return text;
}

std::vector<MeasureRow> measureRows(const Measurement& m) {
    if (m.view == View::Front || m.view == View::Above) return {{"Trunk width", m.trunkWidthMm, "mm"}};
    std::vector<MeasureRow> rows{{"Standard length", m.standardLengthMm, "mm"}};
    if (m.shape == Shape::Seahorse) rows.push_back({"Height", m.heightMm, "mm"});
    rows.push_back({"Head length", m.headLengthMm, "mm"});
    rows.push_back({"Trunk length", m.trunkLengthMm, "mm"});
    rows.push_back({"Tail length", m.tailLengthMm, "mm"});
    rows.push_back({"Trunk depth", m.trunkDepthMm, "mm"});
    if (m.trunkWidthMm.known()) rows.push_back({"Trunk width", m.trunkWidthMm, "mm"});
    rows.push_back({"Girth", m.girthMm, "mm"});
    rows.push_back({"Depth ratio", m.depthRatio, ""});
    rows.push_back({"Girth ratio", m.girthRatio, ""});
    rows.push_back({"Belly hollow", m.bellyHollowPercent, "%"});
    return rows;
}

}  // namespace ringrule
