// SPDX-License-Identifier: GPL-3.0-or-later
#include "growth/diet_words.h"

#include <cmath>
#include <cstdio>

namespace ringrule {

namespace {

std::string rounded(double value, int digits = 2) {
    char text[32];
    std::snprintf(text, sizeof text, "%.*g", digits, value);
    return text;
}

std::string inUnit(const DietEffects& effects, double value) {
    return rounded(value) + (effects.unit == EffectUnit::PercentPerDay ? " % a day" : " mm a day");
}

std::string lessOrMore(double difference) {
    return rounded(std::abs(difference)) + (difference < 0.0 ? " less" : " more");
}

std::string whatWasSeen(const DietEffects& effects, const DietEffect& pair) {
    const std::string what =
        effects.tanksAreUnits ? "Tanks on the second diet grew by " : "Animals on the second diet grew by ";
    std::string text =
        what + inUnit(effects, std::abs(pair.effect)) + (pair.effect < 0.0 ? " less" : " more") + " than on the first";
    if (pair.difference) {
        text +=
            " (95 % interval " + lessOrMore(pair.difference->lower95) + " to " + lessOrMore(pair.difference->upper95);
        text += pair.permutation ? "; permutation p " + rounded(pair.adjustedP) + ")" : ")";
    }
    return text + ".";
}

std::string whatWouldDo(const DietEffects& effects, const DietEffect& pair) {
    const std::string units = effects.tanksAreUnits ? "tanks" : "animals";
    const EnoughToTell& enough = pair.enough;
    std::string text;
    if (!pair.difference) {
        return " One of the two was given " +
               std::string(effects.tanksAreUnits ? "in a single tank" : "to a single animal") +
               ", which does not show how much " + units + " differ anyway; give each diet in two or more.";
    }
    if (enough.permutationCannot) {
        text += " With so few " + units + " even wholly different growth could be chance.";
    }
    if (!(enough.difference > 0.0) || (!enough.unitsPerDiet && !enough.months)) {
        return text;
    }
    text += " To tell a difference of " + inUnit(effects, enough.difference) + " would take ";
    if (enough.unitsPerDiet) {
        text += "about " + std::to_string(*enough.unitsPerDiet) + " " + units + " on each diet over the same time";
    }
    if (enough.months && !enough.permutationCannot) {
        text += std::string(enough.unitsPerDiet ? ", or " : "") + "these " + units + " over about " +
                rounded(std::ceil(*enough.months), 3) + " months";
    }
    return text + ".";
}

}  // namespace

std::string dietSentence(const DietEffects& effects, const DietEffect& pair) {
    const std::string seen = whatWasSeen(effects, pair);
    switch (pair.verdict) {
        case DietVerdict::Differ:
            return seen + " That is more than chance explains.";
        case DietVerdict::Alike:
            return seen + " A difference that matters (" + inUnit(effects, pair.enough.difference) +
                   " or more) is ruled out.";
        case DietVerdict::TooFewToTell:
            return seen + " Too few to tell." + whatWouldDo(effects, pair);
    }
    return seen;
}

}  // namespace ringrule
