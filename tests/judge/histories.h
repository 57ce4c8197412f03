// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/judge/review.h"

namespace histories {

using namespace std::chrono;

inline const ringrule::Date kHatched = sys_days{year{2030} / November / 15};

/// The n-th of monthly sessions, 0 first.
inline ringrule::Date session(int n) {
    return sys_days{year{2031} / January / 6} + days{30 * n};
}

/// A juvenile's length at a session: 0.4 mm a day.
inline double usualLengthMm(int n) {
    return 60.0 + 12.0 * n;
}

inline ringrule::Observation seen(int n, double lengthMm, double depthMm) {
    ringrule::Observation one;
    one.on = session(n);
    one.sidePhotos = 3;
    one.standardLengthMm = {lengthMm, 0.002 * lengthMm, 0.002 * lengthMm};
    one.trunkDepthMm = {depthMm, 0.008 * depthMm, 0.002 * depthMm};
    return one;
}

inline ringrule::AnimalHistory animal(const std::string& code, std::int64_t id, std::int64_t tank = 1) {
    ringrule::AnimalHistory one;
    one.animal.id = {id};
    one.animal.code = code;
    one.animal.species = "Syngnathus typhle";
    one.animal.shape = "pipefish";
    one.animal.hatchedOn = kHatched;
    one.stays.push_back({{id}, {tank}, kHatched, std::nullopt});
    return one;
}

/// Small fixed differences between animals and sessions, so that nothing is exactly alike: within ±1 %.
inline double wobble(int i, int n) {
    return 1.0 + 0.005 * (((i * 7 + n * 11 + i * n * 3) % 5) - 2);
}

/// Healthy tankmates "A1", "A2", … of one tank over sessions 0 to sessions − 1, a few percent apart.
inline std::vector<ringrule::AnimalHistory> group(int animals, int sessions) {
    std::vector<ringrule::AnimalHistory> result;
    for (int i = 0; i < animals; ++i) {
        auto one = animal("A" + std::to_string(i + 1), i + 1);
        const double size = 1.0 + 0.01 * (i % 5 - 2);
        const double build = 1.0 + 0.015 * ((i * 2) % 5 - 2);
        for (int n = 0; n < sessions; ++n) {
            const double length = usualLengthMm(n) * size;
            one.observations.push_back(seen(n, length, length / 28.0 * build * wobble(i, n)));
        }
        result.push_back(one);
    }
    return result;
}

/// Multiplies an animal's depth from a session on.
inline void thin(ringrule::AnimalHistory& one, int session, double factor) {
    auto& depth = one.observations.at(static_cast<std::size_t>(session)).trunkDepthMm;
    depth = {depth.value * factor, depth.sdRandom * factor, depth.sdShared * factor};
}

inline void setLength(ringrule::AnimalHistory& one, int session, double lengthMm) {
    auto& length = one.observations.at(static_cast<std::size_t>(session)).standardLengthMm;
    length = {lengthMm, 0.002 * lengthMm, 0.002 * lengthMm};
}

inline std::vector<ringrule::Finding> findingsOf(const std::vector<ringrule::Finding>& all, const std::string& code) {
    std::vector<ringrule::Finding> result;
    for (const auto& finding : all) {
        if (finding.animalCode == code) {
            result.push_back(finding);
        }
    }
    return result;
}

/// Findings other than "cannot tell".
inline std::vector<ringrule::Finding> flags(const std::vector<ringrule::Finding>& all) {
    std::vector<ringrule::Finding> result;
    for (const auto& finding : all) {
        if (finding.kind != ringrule::FindingKind::CannotTell) {
            result.push_back(finding);
        }
    }
    return result;
}

}  // namespace histories
