// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>
#include <numeric>
#include <set>

#include "judge/case_file.h"
#include "ringrule/growth/rate.h"
#include "ringrule/judge/diets.h"
#include "ringrule/judge/tankmates.h"

namespace ringrule {

namespace {

constexpr std::size_t kLeastOnDiet = 3;

/// The diet that covers the whole time, if one does.
std::optional<DietId> oneDiet(const AnimalHistory& animal, Date from, Date to) {
    for (const DietSpell& spell : animal.dietSpells) {
        if (spell.from <= from && (!spell.to || *spell.to >= to)) {
            return spell.diet;
        }
    }
    return std::nullopt;
}

Estimate rateWithin(const CaseFile& file, Date from, Date to) {
    const Observation* first = nullptr;
    const Observation* last = nullptr;
    for (const Observation* seen : file.sound) {
        if (seen->on >= from && seen->on <= to && seen->standardLengthMm.known()) {
            first = first == nullptr ? seen : first;
            last = seen;
        }
    }
    if (first == nullptr || first == last) {
        return {};
    }
    const auto rate = growthRate(*first, *last);
    return rate ? rate.value().mmPerDay : Estimate{};
}

bool allAlike(const std::vector<double>& values) {
    return std::all_of(values.begin(), values.end(), [&](double v) { return v == values.front(); });
}

std::vector<DietPair> pairsOf(const std::vector<DietGroup>& groups) {
    std::vector<DietPair> pairs;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        for (std::size_t j = i + 1; j < groups.size(); ++j) {
            const auto& a = groups[i].mmPerDay;
            const auto& b = groups[j].mmPerDay;
            if (a.size() < kLeastOnDiet || b.size() < kLeastOnDiet || (allAlike(a) && allAlike(b))) {
                continue;
            }
            pairs.push_back({i, j, welchTest(a, b), permutationTest(a, b), 1.0});
        }
    }
    std::vector<double> pValues;
    pValues.reserve(pairs.size());
    for (const DietPair& pair : pairs) {
        pValues.push_back(pair.permutation.pTwoSided);
    }
    const auto adjusted = benjaminiHochberg(pValues);
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        pairs[i].adjustedP = adjusted[i];
    }
    return pairs;
}

/// Animals by the diet that they kept throughout, and the tanks each diet was in.
struct ByDiet {
    std::map<DietId, DietGroup> groups;
    std::map<DietId, std::set<TankId>> tanksOf;
    std::set<TankId> tanks;
};

ByDiet groupByDiet(std::span<const AnimalHistory> animals, Date from, Date to, const JudgeOptions& options) {
    const Casebook book(animals, to, options);
    ByDiet result;
    for (std::size_t i = 0; i < animals.size(); ++i) {
        const auto diet = oneDiet(animals[i], from, to);
        const auto tank = tankOn(animals[i], to);
        const Estimate rate = rateWithin(book.file(i), from, to);
        if (!diet || !tank || !rate.known()) {
            continue;
        }
        DietGroup& group = result.groups[*diet];
        group.diet = *diet;
        group.codes.push_back(animals[i].animal.code);
        group.mmPerDay.push_back(rate.value);
        result.tanksOf[*diet].insert(*tank);
        result.tanks.insert(*tank);
    }
    return result;
}

}  // namespace

Outcome<DietComparison> compareDiets(std::span<const AnimalHistory> animals, Date from, Date to,
                                     const JudgeOptions& options) {
    ByDiet byDiet = groupByDiet(animals, from, to, options);
    if (byDiet.groups.size() < 2) {
        return Refusal{"too-few-groups",
                       "Fewer than two diets were kept throughout this time by animals with two lengths."};
    }
    DietComparison comparison;
    std::size_t tankShares = 0;
    for (auto& [diet, group] : byDiet.groups) {
        group.meanMmPerDay = std::accumulate(group.mmPerDay.begin(), group.mmPerDay.end(), 0.0) /
                             static_cast<double>(group.mmPerDay.size());
        group.tanks = static_cast<int>(byDiet.tanksOf[diet].size());
        tankShares += byDiet.tanksOf[diet].size();
        comparison.groups.push_back(group);
    }
    comparison.pairs = pairsOf(comparison.groups);
    if (tankShares == byDiet.tanks.size()) {
        comparison.cautions.emplace_back(
            "Each diet had tanks of its own: tanks, not animals, are then the unit of comparison, and any other "
            "difference "
            "between the tanks looks like an effect of food.");
    }
    if (std::any_of(comparison.groups.begin(), comparison.groups.end(),
                    [](const DietGroup& group) { return group.mmPerDay.size() < kLeastOnDiet; })) {
        comparison.cautions.emplace_back("A diet with fewer than three animals is shown, not tested.");
    }
    return comparison;
}

std::vector<DietAnimal> dietAnimals(std::span<const AnimalHistory> animals, Date from, Date to,
                                    const JudgeOptions& options) {
    const Casebook book(animals, to, options);
    std::vector<DietAnimal> all;
    for (std::size_t i = 0; i < animals.size(); ++i) {
        const auto diet = oneDiet(animals[i], from, to);
        const auto tank = tankOn(animals[i], to);
        if (!diet || !tank || tankOn(animals[i], from) != tank) {
            continue;
        }
        DietAnimal one{animals[i].animal.id.value, diet->value, tank->value, {}};
        for (const Observation* seen : book.file(i).sound) {
            if (seen->on >= from && seen->on <= to && seen->standardLengthMm.known()) {
                const double sdMm = logLengthSd(*seen, options.doubt) * seen->standardLengthMm.value;
                one.lengths.push_back({static_cast<double>((seen->on - from).count()), seen->standardLengthMm.value,
                                       1.0 / (sdMm * sdMm)});
            }
        }
        all.push_back(std::move(one));
    }
    return all;
}

}  // namespace ringrule
