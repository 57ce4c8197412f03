// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/husbandry/spells.h"

#include <algorithm>

namespace ringrule {
namespace {

constexpr Date kLastDay{std::chrono::year{9999} / 12 / 31};

}  // namespace

std::chrono::days sharedDays(const Spell& one, const Spell& other) {
    const Date oneEnd = one.to.value_or(kLastDay);
    const Date otherEnd = other.to.value_or(kLastDay);
    if (oneEnd <= other.from || otherEnd <= one.from) return std::chrono::days{0};
    return std::min(oneEnd, otherEnd) - std::max(one.from, other.from) + std::chrono::days{1};
}

std::string spellText(const Spell& spell) {
    return "from " + formatDate(spell.from) + (spell.to ? " to " + formatDate(*spell.to) : " on");
}

}  // namespace ringrule
