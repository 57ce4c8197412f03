// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <cstdint>
#include <random>
#include <utility>
#include <vector>

#include "ringrule/growth/diet_effect.h"
#include "ringrule/growth/group_growth.h"

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
};

struct SimulatedAnimal {
    double middleMm = 0.0;
    double mmPerDay = 0.0;
};

struct SimulatedGrowth {
    GrowthTruth truth;
    std::vector<SimulatedAnimal> animals;
    std::vector<ringrule::AnimalLength> lengths;

    [[nodiscard]] double middleDay() const { return truth.firstDay + 0.5 * (truth.sessions - 1) * truth.everyDays; }
    [[nodiscard]] double trueLength(std::size_t animal, double day) const {
        return animals[animal].middleMm + animals[animal].mmPerDay * (day - middleDay());
    }
};

inline SimulatedGrowth simulatedGrowth(const GrowthTruth& truth, std::uint64_t seed) {
    std::mt19937_64 generator(seed);
    std::normal_distribution<double> normal;
    SimulatedGrowth result{truth, {}, {}};
    for (int a = 0; a < truth.animals; ++a) {
        const double middle = truth.lengthMm + truth.lengthSdMm * normal(generator);
        const double rate = truth.mmPerDay + truth.mmPerDaySd * normal(generator);
        result.animals.push_back({middle, rate});
        for (int s = 0; s < truth.sessions; ++s) {
            const double day = truth.firstDay + s * truth.everyDays;
            const double length =
                result.trueLength(static_cast<std::size_t>(a), day) + truth.errorSdMm * normal(generator);
            result.lengths.push_back({a, day, length, 1.0});
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
