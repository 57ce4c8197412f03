// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/growth/reference.h"

#include <cmath>
#include <numeric>

namespace ringrule {

namespace {

std::vector<GrowthPoint> pointsOf(const GroupMember& member) {
    std::vector<GrowthPoint> points;
    for (const Observation& one : member.observations) {
        if (one.ageDays && one.standardLengthMm.known() && one.standardLengthMm.value > 0.0) {
            points.push_back({*one.ageDays, one.standardLengthMm.value, 1.0});
        }
    }
    return points;
}

struct Deviations {
    std::vector<double> means;  ///< one an animal
    double squaresWithin = 0.0;
    double freedomWithin = 0.0;
};

Deviations deviationsFrom(const GrowthFit& fit, const std::vector<std::vector<GrowthPoint>>& animals) {
    Deviations result;
    for (const auto& points : animals) {
        std::vector<double> logs;
        logs.reserve(points.size());
        for (const GrowthPoint& point : points) {
            logs.push_back(std::log(point.lengthMm / fit.lengthAtDays(point.ageDays)));
        }
        const double mean = std::accumulate(logs.begin(), logs.end(), 0.0) / static_cast<double>(logs.size());
        for (double one : logs) {
            result.squaresWithin += (one - mean) * (one - mean);
        }
        result.freedomWithin += static_cast<double>(logs.size()) - 1.0;
        result.means.push_back(mean);
    }
    return result;
}

double sampleSd(const std::vector<double>& values) {
    if (values.size() < 2) {
        return 0.0;
    }
    const auto n = static_cast<double>(values.size());
    const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
    double squares = 0.0;
    for (double v : values) {
        squares += (v - mean) * (v - mean);
    }
    return std::sqrt(squares / (n - 1.0));
}

}  // namespace

Estimate ReferenceCurve::newAnimalAt(double ageDays) const {
    Estimate result = fit.meanAt(ageDays);
    const double spread = animals > 1 ? std::hypot(betweenAnimals, withinAnimal) * result.value : fit.residualSdMm;
    // The curve itself is uncertain by the spread between animals over their number, whatever the count of points.
    const double ofCurve = animals > 1 ? spread / std::sqrt(static_cast<double>(animals)) : result.sdRandom;
    result.sdRandom = std::hypot(spread, std::max(ofCurve, result.sdRandom));
    return result;
}

Outcome<ReferenceCurve> referenceCurve(std::span<const GroupMember> group, std::int64_t without) {
    std::vector<std::vector<GrowthPoint>> animals;
    std::vector<GrowthPoint> all;
    for (const GroupMember& member : group) {
        if (member.key == without) {
            continue;
        }
        auto points = pointsOf(member);
        if (!points.empty()) {
            all.insert(all.end(), points.begin(), points.end());
            animals.push_back(std::move(points));
        }
    }
    if (animals.empty()) {
        return Refusal{"too-few-animals", "There is no other animal of known age and length to compare with."};
    }
    const auto choice = chooseGrowth(all);
    if (!choice) {
        return choice.refusal();
    }
    ReferenceCurve curve;
    curve.fit = choice.value().best();
    curve.animals = static_cast<int>(animals.size());
    const Deviations deviations = deviationsFrom(curve.fit, animals);
    curve.betweenAnimals = sampleSd(deviations.means);
    curve.withinAnimal =
        deviations.freedomWithin > 0.0 ? std::sqrt(deviations.squaresWithin / deviations.freedomWithin) : 0.0;
    return curve;
}

}  // namespace ringrule
