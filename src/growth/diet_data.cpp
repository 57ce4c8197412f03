// SPDX-License-Identifier: GPL-3.0-or-later
#include "growth/diet_data.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <optional>
#include <set>

namespace ringrule {

namespace {

constexpr std::size_t kFollowedAnimals = 3;

struct Gathered {
    std::int64_t diet = 0;
    std::int64_t tank = 0;
    std::map<double, std::vector<DayLength>> byDay;
};

std::optional<Refusal> addTo(std::map<std::int64_t, Gathered>& all, const DietAnimal& animal) {
    const auto [found, isNew] = all.try_emplace(animal.animal, Gathered{animal.diet, animal.tank, {}});
    if (!isNew && found->second.tank != animal.tank) {
        return Refusal{"animal-in-two-tanks", "An animal is listed in two tanks at once; correct its stays."};
    }
    if (!isNew && found->second.diet != animal.diet) {
        return Refusal{"animal-on-two-diets", "An animal is listed on two diets at once; correct its diets."};
    }
    for (const DayLength& one : animal.lengths) {
        if (!(one.lengthMm > 0.0) || !std::isfinite(one.lengthMm) || !std::isfinite(one.day) || !(one.weight > 0.0)) {
            return Refusal{"no-length", "A length is not above zero or has no day; correct or leave out that session."};
        }
        if (one.day < 0.0) {
            return Refusal{"dates-reversed", "A length is dated before the comparison begins; correct the dates."};
        }
        found->second.byDay[one.day].push_back(one);
    }
    return std::nullopt;
}

std::vector<DayLength> onePerDay(const std::map<double, std::vector<DayLength>>& byDay) {
    std::vector<DayLength> lengths;
    for (const auto& [day, repeats] : byDay) {
        DayLength mean{day, 0.0, 0.0};
        for (const DayLength& one : repeats) {
            mean.lengthMm += one.lengthMm / static_cast<double>(repeats.size());
            mean.weight += one.weight / static_cast<double>(repeats.size());
        }
        lengths.push_back(mean);
    }
    return lengths;
}

void describeDays(DietData& data) {
    std::set<double> days;
    double sum = 0.0;
    double count = 0.0;
    std::size_t followed = 0;
    for (const DietData::Animal& animal : data.animals) {
        followed += animal.lengths.size() >= 3 ? 1U : 0U;
        for (const DayLength& one : animal.lengths) {
            days.insert(one.day);
            sum += one.day;
            count += 1.0;
            data.weighted = data.weighted || one.weight != data.animals.front().lengths.front().weight;
        }
    }
    data.meanDay = sum / count;
    double squares = 0.0;
    for (const DietData::Animal& animal : data.animals) {
        for (const DayLength& one : animal.lengths) {
            squares += std::pow(one.day - data.meanDay, 2);
        }
    }
    data.unitDays = std::sqrt(squares / count);
    data.days = days.size();
    data.ownSlopes = followed >= kFollowedAnimals;
}

void describeTanks(DietData& data) {
    std::map<int, std::set<std::size_t>> dietsIn;
    data.tanksOf.assign(data.diets.size(), {});
    for (const DietData::Animal& animal : data.animals) {
        dietsIn[animal.tank].insert(animal.diet);
    }
    data.ownTanks = true;
    for (const auto& [tank, diets] : dietsIn) {
        data.ownTanks = data.ownTanks && diets.size() == 1;
        for (std::size_t diet : diets) {
            data.tanksOf[diet].push_back(tank);
        }
    }
    data.tanks = static_cast<int>(dietsIn.size());
}

DietData numbered(const std::map<std::int64_t, Gathered>& all) {
    DietData data;
    std::map<std::int64_t, std::size_t> dietIndex;
    std::map<std::int64_t, int> tankIndex;
    for (const auto& [id, one] : all) {
        if (one.byDay.size() > 1) {
            dietIndex.emplace(one.diet, 0);
            tankIndex.emplace(one.tank, 0);
        }
    }
    for (auto& [id, index] : dietIndex) {
        index = data.diets.size();
        data.diets.push_back(id);
    }
    int tanks = 0;
    for (auto& [id, index] : tankIndex) {
        index = tanks++;
    }
    for (const auto& [id, one] : all) {
        if (one.byDay.size() > 1) {
            data.animals.push_back({dietIndex.at(one.diet), tankIndex.at(one.tank), onePerDay(one.byDay)});
        }
    }
    return data;
}

double onScale(EffectUnit unit, double lengthMm) {
    return unit == EffectUnit::PercentPerDay ? 100.0 * std::log(lengthMm) : lengthMm;
}

double weightOn(const DietData& data, EffectUnit unit, const DayLength& one) {
    if (!data.weighted) {
        return 1.0;
    }
    return unit == EffectUnit::PercentPerDay ? one.weight * std::pow(one.lengthMm / 100.0, 2) : one.weight;
}

}  // namespace

Outcome<DietData> dietData(std::span<const DietAnimal> animals) {
    std::map<std::int64_t, Gathered> all;
    std::set<std::int64_t> asked;
    for (const DietAnimal& animal : animals) {
        asked.insert(animal.diet);
        if (auto refusal = addTo(all, animal)) {
            return *refusal;
        }
    }
    if (asked.size() < 2) {
        return Refusal{"too-few-groups",
                       "Fewer than two diets were kept throughout this time by animals that stayed in one tank."};
    }
    DietData data = numbered(all);
    if (data.diets.size() < asked.size()) {
        return Refusal{"too-few-points", "No animal on one of the diets has lengths on two days; add sessions."};
    }
    if (data.animals.size() < all.size()) {
        data.cautions.emplace_back("Animals with a length on one day only were left out: they tell no growth.");
    }
    describeDays(data);
    describeTanks(data);
    return data;
}

MixedData mixedDataOf(const DietData& data, const DietDesign& design) {
    const std::size_t diets = data.diets.size();
    const auto blocks = design.tankBlocks ? static_cast<std::size_t>(data.tanks - 1) : 0;
    const std::size_t columns = 2 * diets + (design.curved ? 1 : 0) + 2 * blocks;
    MixedData mixed;
    for (std::size_t a = 0; a < data.animals.size(); ++a) {
        const DietData::Animal& animal = data.animals[a];
        for (const DayLength& one : animal.lengths) {
            const double at = (one.day - data.meanDay) / data.unitDays;
            std::vector<double> row(columns, 0.0);
            row[animal.diet] = 1.0;
            row[diets + animal.diet] = at;
            if (design.curved) {
                row[2 * diets] = at * at;
            }
            if (design.tankBlocks && animal.tank > 0) {
                const std::size_t block = columns - 2 * blocks + 2 * static_cast<std::size_t>(animal.tank - 1);
                row[block] = 1.0;
                row[block + 1] = at;
            }
            mixed.x.insert(mixed.x.end(), row.begin(), row.end());
            mixed.y.push_back(onScale(design.unit, one.lengthMm));
            mixed.group.push_back(static_cast<int>(a));
            if (data.ownSlopes) {
                mixed.slope.push_back(at);
            }
            if (data.weighted) {
                mixed.weights.push_back(weightOn(data, design.unit, one));
            }
        }
    }
    return mixed;
}

std::vector<OwnSlope> ownSlopes(const DietData& data, const DietDesign& design, double bend) {
    std::vector<OwnSlope> slopes;
    for (const DietData::Animal& animal : data.animals) {
        double weightSum = 0.0;
        double meanDay = 0.0;
        for (const DayLength& one : animal.lengths) {
            weightSum += weightOn(data, design.unit, one);
            meanDay += weightOn(data, design.unit, one) * one.day;
        }
        meanDay /= weightSum;
        double squares = 0.0;
        double product = 0.0;
        for (const DayLength& one : animal.lengths) {
            const double weight = weightOn(data, design.unit, one);
            const double at = (one.day - data.meanDay) / data.unitDays;
            squares += weight * std::pow(one.day - meanDay, 2);
            product += weight * (one.day - meanDay) * (onScale(design.unit, one.lengthMm) - bend * at * at);
        }
        slopes.push_back({product / squares, 1.0 / squares});
    }
    return slopes;
}

}  // namespace ringrule
