// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "ringrule/judge/finding.h"

/// A group of young pipefish and a tank of adult seahorses with known truth, photographed over nine monthly sessions.
/// Numbers are invented, in the range of what reared animals do; one seed makes one replicate.
struct SimulatedHouse {
    double betweenSize = 0.03;    ///< spread of length between healthy animals
    double betweenDepth = 0.03;   ///< spread of depth at one length
    double betweenGrowth = 0.03;  ///< spread of growth rate
    double sessionDepth = 0.01;   ///< true variation of depth from session to session
    double lengthError = 0.003;   ///< of one session's length
    double depthError = 0.0125;   ///< of one session's depth
    double scaleError = 0.002;    ///< common to a session
    double toldErrors = 1.0;      ///< told standard deviations, as part of the true ones
    double spoilt = 0.0;          ///< part of animal-sessions whose depth is off by 8 %, up or down
    double allometry = 1.1;       ///< true slope of ln depth on ln length
    double slowedGrowth = 0.5;    ///< the failing animal's growth, as part of the usual, from March to mid-June
    double deepestLoss = 0.20;    ///< its depth lost by June, as part of what its length lets expect
    bool failing = true;          ///< whether the fourth pipefish fails
    bool sexesKnown = false;      ///< four females, three males, on record from the start
    bool widths = false;          ///< a second view gives the pipefish's trunk width, 0.8 % variation and 1.5 % error
    int sidePhotos = 3;
    int pipefish = 7;
    std::uint64_t seed = 1;
};

namespace simulated {

using namespace std::chrono;

inline ringrule::Date day(int month, unsigned dayOfMonth) {
    return sys_days{year{2031} / std::chrono::month(static_cast<unsigned>(month)) / std::chrono::day(dayOfMonth)};
}

inline std::vector<ringrule::Date> sessions() {
    return {day(1, 6), day(2, 3), day(3, 3), day(4, 7), day(5, 5), day(6, 2), day(7, 7), day(8, 4), day(9, 1)};
}

inline const ringrule::Date kHatched = sys_days{year{2030} / November / 15};

/// Straight lines between knots.
template <std::size_t N>
double between(const std::array<std::array<double, 2>, N>& knots, double x) {
    if (x <= knots.front()[0]) {
        return knots.front()[1];
    }
    for (std::size_t i = 1; i < N; ++i) {
        if (x <= knots[i][0]) {
            const double part = (x - knots[i - 1][0]) / (knots[i][0] - knots[i - 1][0]);
            return knots[i - 1][1] + part * (knots[i][1] - knots[i - 1][1]);
        }
    }
    return knots.back()[1];
}

/// Depth that the failing animal has lost by age, as part of the deepest loss: from March to June, then it recovers.
inline double lossCourse(double ageDays) {
    return between<6>({{{80, 0.0}, {108, 0.25}, {143, 0.5}, {171, 0.75}, {199, 1.0}, {290, 0.1}}}, ageDays);
}

class Generator {
public:
    explicit Generator(const SimulatedHouse& house) : house_(house), engine_(house.seed) {}

    /// True depth of each pipefish of the last house against the usual at its length, when it is healthy.
    [[nodiscard]] const std::vector<double>& builds() const { return builds_; }

    std::vector<ringrule::AnimalHistory> house() {
        std::vector<ringrule::AnimalHistory> animals;
        std::vector<double> scale;
        for (std::size_t s = 0; s < sessions().size(); ++s) {
            scale.push_back(1.0 + house_.scaleError * normal());
        }
        for (int i = 0; i < house_.pipefish; ++i) {
            animals.push_back(pipefish(i, scale));
        }
        for (int i = 0; i < 5; ++i) {
            animals.push_back(seahorse(i, scale));
        }
        return animals;
    }

private:
    double normal() { return normal_(engine_); }

    static ringrule::AnimalHistory blank(const std::string& code, std::int64_t id, std::int64_t tank,
                                         ringrule::Date hatched) {
        ringrule::AnimalHistory animal;
        animal.animal.code = code;
        animal.animal.id = {id};
        animal.animal.hatchedOn = hatched;
        animal.stays.push_back({{id}, {tank}, std::max(hatched, kHatched), std::nullopt});
        return animal;
    }

    ringrule::Observation seen(std::size_t session, double lengthMm, double depthMm, double scale) {
        ringrule::Observation one;
        one.on = sessions()[session];
        one.sidePhotos = house_.sidePhotos;
        const double length = lengthMm * scale * (1.0 + house_.lengthError * normal());
        const double usual = house_.sessionDepth * normal();
        const double error = house_.depthError * normal();
        const double spoilt = uniform_(engine_) < house_.spoilt ? (uniform_(engine_) < 0.5 ? -0.08 : 0.08) : 0.0;
        const double depth = depthMm * scale * (1.0 + usual) * (1.0 + error) * (1.0 + spoilt);
        const double told = house_.toldErrors;
        one.standardLengthMm = {length, told * house_.lengthError * length, told * house_.scaleError * length};
        one.trunkDepthMm = {depth, told * house_.depthError * depth, told * house_.scaleError * depth};
        return one;
    }

    ringrule::AnimalHistory pipefish(int index, const std::vector<double>& scale) {
        auto animal = blank("P" + std::to_string(index + 1), index + 1, 3, kHatched);
        animal.animal.species = "Syngnathus typhle";
        animal.animal.shape = "pipefish";
        const std::array sexes{ringrule::Sex::Female, ringrule::Sex::Male, ringrule::Sex::Female, ringrule::Sex::Female,
                               ringrule::Sex::Male,   ringrule::Sex::Male, ringrule::Sex::Female};
        if (house_.sexesKnown) {
            animal.animal.sex = sexes[static_cast<std::size_t>(index) % sexes.size()];
        }
        const bool fails = house_.failing && index == 3;
        const bool slower = index == 5;
        const double size = 1.0 + house_.betweenSize * normal();
        const double growth = slower ? 0.945 : 1.0 + house_.betweenGrowth * normal();
        const double build = 1.0 + house_.betweenDepth * normal();
        builds_.push_back(build);
        animal.dietSpells.push_back({{index + 1}, {fails ? 3 : 1}, kHatched, std::nullopt});
        if (fails) {
            animal.dietSpells.back().to = day(6, 16);
            animal.dietSpells.push_back({{index + 1}, {1}, day(6, 16), std::nullopt});
        }
        double length = 25.0;
        std::size_t session = 0;
        for (int age = 1; session < sessions().size(); ++age) {
            const double slowed = fails && age > 92 && age < 222 ? house_.slowedGrowth : 1.0;
            length += 0.0056 * (182.0 - length) * growth * slowed;
            if (kHatched + days(age) != sessions()[session]) {
                continue;
            }
            const double mm = length * size;
            const double loss = fails ? house_.deepestLoss * lossCourse(age) : 0.0;
            const double depth = 100.0 / 28.0 * std::pow(mm / 100.0, house_.allometry) * build * (1.0 - loss);
            animal.observations.push_back(seen(session, mm, depth, scale[session]));
            animal.observations.back().ageDays = age;
            animal.observations.back().bellyHollowPercent = {-6.0 + 0.8 * normal() + 75.0 * loss, 0.8, 0.0};
            if (house_.widths) {
                const double width = 0.9 * depth * (1.0 + 0.008 * normal()) * (1.0 + 0.015 * normal());
                animal.observations.back().trunkWidthMm = {width, 0.015 * width, house_.scaleError * width};
            }
            ++session;
        }
        return animal;
    }

    ringrule::AnimalHistory seahorse(int index, const std::vector<double>& scale) {
        const int id = 11 + index;
        auto animal = blank("H" + std::to_string(index + 1), id, 5, sys_days{year{2029} / July / 1} + days(20 * index));
        animal.animal.species = "Hippocampus reidi";
        animal.animal.shape = "seahorse";
        animal.animal.sex = index % 2 == 1 ? ringrule::Sex::Male : ringrule::Sex::Female;
        const double mm = 148.0 * (1.0 + house_.betweenSize * normal());
        const double build = 1.0 + house_.betweenDepth * normal();
        for (std::size_t session = 0; session < sessions().size(); session += 2) {
            const bool brooding = index == 3 && session == 4;
            auto one = seen(session, mm + 0.22 * static_cast<double>(session),
                            0.107 * mm * build * (brooding ? 1.3 : 1.0), scale[session]);
            one.girthFair = !brooding;
            if (uniform_(engine_) < 0.15) {
                one.standardLengthMm = {};  // the tail was closed
            }
            animal.observations.push_back(one);
        }
        if (index == 3) {
            animal.states.push_back({{id}, "brooding", day(5, 1), day(5, 16)});
        }
        return animal;
    }

    SimulatedHouse house_;
    std::vector<double> builds_;
    std::mt19937_64 engine_;
    std::normal_distribution<double> normal_;
    std::uniform_real_distribution<double> uniform_;
};

}  // namespace simulated

[[nodiscard]] inline std::vector<ringrule::AnimalHistory> simulate(const SimulatedHouse& house) {
    return simulated::Generator(house).house();
}
