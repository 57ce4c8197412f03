// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <cstdint>
#include <random>
#include <utility>
#include <vector>

#include "ringrule/growth/diet_effect.h"
#include "ringrule/growth/group_growth.h"

/// How simulated animals grow. All but the straight ones bend each in its own way: rates differ by 10 %, sizes by 3 %.
enum class GrowthShape {
    Straight,        ///< as `GrowthTruth` says
    VonBertalanffy,  ///< 182·(1 − e^(−0.0056·age)) mm, about what the demo's pipefish do
    Gompertz,        ///< 150·exp(−2.5·e^(−0.015·age)) mm
    Logistic,        ///< 160/(1 + 6·e^(−0.014·age)) mm: no curve of a group has this shape
    Exponential      ///< fry: 9 mm at birth, 2 % a day (differing by 5 %), seen every ten days, error 0.5 % of length
};

/// Animals with a length at birth, a growth and a scatter of their own, seen every month.
struct GrowthTruth {
    int animals = 6;
    int sessions = 6;
    double firstDay = 60.0;
    double everyDays = 30.0;
    double lengthMm = 100.0;  ///< in the middle of the time
    double lengthSdMm = 3.0;
    double mmPerDay = 0.4;
    double mmPerDaySd = 0.04;  ///< a tenth: reared animals differ about as much
    double errorSdMm = 0.6;
    GrowthShape shape = GrowthShape::Straight;
};

struct SimulatedAnimal {
    double middleMm = 0.0;
    double mmPerDay = 0.0;  ///< of a straight one
    double size = 1.0;      ///< of a bent one: its size and its rate against the usual
    double rate = 1.0;
};

struct SimulatedGrowth {
    GrowthTruth truth;
    std::vector<SimulatedAnimal> animals;
    std::vector<ringrule::AnimalLength> lengths;

    [[nodiscard]] double middleDay() const { return truth.firstDay + 0.5 * (truth.sessions - 1) * truth.everyDays; }
    [[nodiscard]] double trueLength(std::size_t animal, double day) const { return lengthOf(animals[animal], day); }
    [[nodiscard]] double lengthOf(const SimulatedAnimal& one, double day) const {
        switch (truth.shape) {
            case GrowthShape::VonBertalanffy:
                return 182.0 * one.size * (1.0 - std::exp(-0.0056 * one.rate * day));
            case GrowthShape::Gompertz:
                return 150.0 * one.size * std::exp(-2.5 * std::exp(-0.015 * one.rate * day));
            case GrowthShape::Logistic:
                return 160.0 * one.size / (1.0 + 6.0 * std::exp(-0.014 * one.rate * day));
            case GrowthShape::Exponential:
                return 9.0 * one.size * std::exp(0.02 * one.rate * day);
            case GrowthShape::Straight:
                break;
        }
        return one.middleMm + one.mmPerDay * (day - middleDay());
    }
    /// The middle animal of the population, and one more of it.
    [[nodiscard]] SimulatedAnimal usual() const { return {truth.lengthMm, truth.mmPerDay, 1.0, 1.0}; }
    [[nodiscard]] SimulatedAnimal another(std::mt19937_64& generator) const {
        std::normal_distribution<double> normal;
        SimulatedAnimal one;
        one.middleMm = truth.lengthMm + truth.lengthSdMm * normal(generator);
        one.mmPerDay = truth.mmPerDay + truth.mmPerDaySd * normal(generator);
        one.size = 1.0 + 0.03 * (one.middleMm - truth.lengthMm) / truth.lengthSdMm;
        const double differ = truth.shape == GrowthShape::Exponential ? 0.05 : 0.1;
        one.rate = 1.0 + differ * (one.mmPerDay - truth.mmPerDay) / truth.mmPerDaySd;
        return one;
    }
    /// A length as a session shows it.
    [[nodiscard]] double seen(double lengthMm, std::mt19937_64& generator) const {
        std::normal_distribution<double> normal;
        return lengthMm + errorSdMm(lengthMm) * normal(generator);
    }
    [[nodiscard]] double errorSdMm(double lengthMm) const {
        return truth.shape == GrowthShape::Exponential ? 0.005 * lengthMm : truth.errorSdMm;
    }
};

inline SimulatedGrowth simulatedGrowth(const GrowthTruth& truth, std::uint64_t seed) {
    std::mt19937_64 generator(seed);
    SimulatedGrowth result{truth, {}, {}};
    for (int a = 0; a < truth.animals; ++a) {
        result.animals.push_back(result.another(generator));
        for (int s = 0; s < truth.sessions; ++s) {
            const double day = truth.firstDay + s * truth.everyDays;
            const double length = result.trueLength(static_cast<std::size_t>(a), day);
            const double seen = result.seen(length, generator);
            const double sd = result.errorSdMm(seen);
            result.lengths.push_back({a, day, seen, 1.0 / (sd * sd)});
        }
    }
    return result;
}

/// Two diets: every second animal (or tank of `perTank`) grows faster by `effect` mm a day; tanks differ by `tankSd`.
inline std::vector<ringrule::DietAnimal> simulatedDiets(const GrowthTruth& truth, double effect, int perTank,
                                                        double tankSd, std::uint64_t seed) {
    SimulatedGrowth growth = simulatedGrowth(truth, seed);
    std::mt19937_64 generator(seed + 7777777);
    std::normal_distribution<double> normal;
    std::vector<ringrule::DietAnimal> animals;
    double ofTank = 0.0;
    for (int a = 0; a < truth.animals; ++a) {
        const int tank = perTank > 0 ? a / perTank : 0;
        if (perTank > 0 && a % perTank == 0) {
            ofTank = tankSd * normal(generator);
        }
        const int diet = (perTank > 0 ? tank : a) % 2;
        ringrule::DietAnimal one{a, 10 + diet, tank, {}};
        for (int s = 0; s < truth.sessions; ++s) {
            const auto& length = growth.lengths[static_cast<std::size_t>(a * truth.sessions + s)];
            const double day = s * truth.everyDays;
            one.lengths.push_back({day, length.lengthMm + (ofTank + effect * diet) * day, 1.0});
        }
        animals.push_back(std::move(one));
    }
    return animals;
}
