// SPDX-License-Identifier: GPL-3.0-or-later
#include "growth/diet_units.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "ringrule/statistics/distributions.h"

namespace ringrule {

namespace {

constexpr double kTellingP = 0.05;  // the level of the verdict
constexpr int kManyUnits = 1000;
constexpr int kManySessions = 60;  // five years of months: longer than most of these animals live
constexpr double kDaysPerMonth = 30.4375;

MixedEstimate told(double value, double variance, double degreesOfFreedom) {
    MixedEstimate result;
    result.value = value;
    result.standardError = std::sqrt(variance);
    result.degreesOfFreedom = degreesOfFreedom;
    const double half = studentQuantile(0.975, degreesOfFreedom) * result.standardError;
    result.lower95 = value - half;
    result.upper95 = value + half;
    return result;
}

/// The chance to find the difference with groups of these sizes.
double powerOf(double difference, double unitVariance, double first, double second) {
    const double error = std::sqrt(unitVariance * (1.0 / first + 1.0 / second));
    return studentPower(difference / error, first + second - 2.0);
}

std::optional<int> unitsEnough(const PowerQuestion& question) {
    // The verdict is by permutation: too few units cannot tell anything, however alike they are.
    const auto enough = [&](int units) {
        return leastPermutationP(static_cast<std::uint64_t>(units), static_cast<std::uint64_t>(units)) <= kTellingP &&
               powerOf(question.difference, question.unitVariance, units, units) >= question.power;
    };
    int low = 1;  // two on each diet are the fewest that show a spread of their own
    int high = 2;
    while (!enough(high)) {
        low = high;
        high *= 2;
        if (low > kManyUnits) {
            return std::nullopt;
        }
    }
    while (high - low > 1) {
        const int middle = (low + high) / 2;
        (enough(middle) ? high : low) = middle;
    }
    return high;
}

std::optional<double> monthsEnough(const PowerQuestion& question) {
    if (!question.timeHelps || question.firstUnits < 2 || question.secondUnits < 2 || !(question.daysBetween > 0.0)) {
        return std::nullopt;
    }
    const auto enough = [&](int sessions) {
        const double m = sessions;
        const double squares = question.daysBetween * question.daysBetween * m * (m * m - 1.0) / 12.0;
        const double variance = question.lastingVariance + question.errorVariance / squares;
        return powerOf(question.difference, variance, question.firstUnits, question.secondUnits) >= question.power;
    };
    int low = 1;
    int high = kManySessions;
    if (!enough(high)) {
        return std::nullopt;
    }
    while (high - low > 1) {
        const int middle = (low + high) / 2;
        (enough(middle) ? high : low) = middle;
    }
    return (high - 1.0) * question.daysBetween / kDaysPerMonth;
}

}  // namespace

std::vector<FedUnit> animalUnits(const DietData& data, const std::vector<OwnSlope>& slopes, double slopeVariance,
                                 double errorVariance) {
    std::vector<FedUnit> units;
    double sum = 0.0;
    for (std::size_t a = 0; a < data.animals.size(); ++a) {
        const double variance = slopeVariance + errorVariance * slopes[a].errorVariance;
        units.push_back({data.animals[a].diet, data.animals[a].tank, slopes[a].value, 1.0 / variance});
        sum += units.back().weight;
    }
    for (FedUnit& unit : units) {
        unit.weight *= static_cast<double>(units.size()) / sum;
    }
    return units;
}

std::vector<FedUnit> tankUnits(const DietData& data, const std::vector<FedUnit>& animals) {
    std::map<int, FedUnit> tanks;
    std::map<int, double> counts;
    for (const FedUnit& animal : animals) {
        FedUnit& tank = tanks.try_emplace(animal.tank, FedUnit{animal.diet, animal.tank, 0.0, 1.0}).first->second;
        tank.slope += animal.slope;
        counts[animal.tank] += 1.0;
    }
    std::vector<FedUnit> result;
    result.reserve(static_cast<std::size_t>(data.tanks));
    for (auto& [id, tank] : tanks) {
        tank.slope /= counts[id];
        result.push_back(tank);
    }
    return result;
}

UnitMeans unitMeans(std::span<const FedUnit> units, std::size_t diets) {
    UnitMeans result;
    result.mean.assign(diets, 0.0);
    result.count.assign(diets, 0);
    for (const FedUnit& unit : units) {
        result.mean[unit.diet] += unit.slope;
        ++result.count[unit.diet];
    }
    for (std::size_t diet = 0; diet < diets; ++diet) {
        result.mean[diet] /= result.count[diet];
    }
    result.degreesOfFreedom = static_cast<double>(units.size()) - static_cast<double>(diets);
    for (const FedUnit& unit : units) {
        result.variance += std::pow(unit.slope - result.mean[unit.diet], 2) / std::max(1.0, result.degreesOfFreedom);
    }
    return result;
}

std::optional<MixedEstimate> UnitMeans::rate(std::size_t diet) const {
    if (degreesOfFreedom < 1.0 || !(variance > 0.0)) {
        return std::nullopt;
    }
    return told(mean[diet], variance / count[diet], degreesOfFreedom);
}

std::optional<MixedEstimate> UnitMeans::difference(std::size_t first, std::size_t second) const {
    if (degreesOfFreedom < 1.0 || !(variance > 0.0)) {
        return std::nullopt;
    }
    return told(mean[second] - mean[first], variance * (1.0 / count[first] + 1.0 / count[second]), degreesOfFreedom);
}

std::optional<PermutationResult> permuted(std::span<const FedUnit> units, std::size_t first, std::size_t second,
                                          bool withinTanks, const PermutationOptions& options) {
    std::map<int, std::pair<double, double>> centre;  // of each stratum: Σw·slope, Σw
    std::map<int, std::pair<bool, bool>> holds;
    const auto stratumOf = [&](const FedUnit& unit) { return withinTanks ? unit.tank : 0; };
    for (const FedUnit& unit : units) {
        if (unit.diet == first || unit.diet == second) {
            auto& [sum, weight] = centre[stratumOf(unit)];
            sum += unit.weight * unit.slope;
            weight += unit.weight;
            auto& [hasFirst, hasSecond] = holds[stratumOf(unit)];
            hasFirst = hasFirst || unit.diet == first;
            hasSecond = hasSecond || unit.diet == second;
        }
    }
    if (std::none_of(holds.begin(), holds.end(),
                     [](const auto& one) { return one.second.first && one.second.second; })) {
        return std::nullopt;
    }
    std::vector<StratifiedValue> values;
    for (const FedUnit& unit : units) {
        if (unit.diet == first || unit.diet == second) {
            const auto& [sum, weight] = centre.at(stratumOf(unit));
            values.push_back({unit.weight * (unit.slope - sum / weight), unit.diet == first, stratumOf(unit)});
        }
    }
    return permutationWithinStrata(values, options);
}

EnoughToTell enoughToTell(const PowerQuestion& question) {
    EnoughToTell result;
    result.difference = question.difference;
    result.permutationCannot = leastPermutationP(static_cast<std::uint64_t>(question.firstUnits),
                                                 static_cast<std::uint64_t>(question.secondUnits)) > kTellingP;
    if (question.difference > 0.0 && question.unitVariance > 0.0) {
        result.unitsPerDiet = unitsEnough(question);
        result.months = monthsEnough(question);
    }
    return result;
}

}  // namespace ringrule
