// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/measure/repeats.h"

#include <algorithm>
#include <cmath>

#include "measure/girth.h"
#include "measure/photo_checks.h"

namespace ringrule {
namespace {

constexpr double kOddDeviations = 4.0;  ///< a photo this many of its standard deviations off the rest is odd
constexpr double kHuber = 1.345;        ///< Huber 1964: 95 % efficient for normal errors

struct Reading {
    Estimate estimate;
    std::size_t photo = 0;
};

double medianOf(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    const std::size_t n = values.size();
    return n % 2 == 1 ? values[n / 2] : 0.5 * (values[n / 2 - 1] + values[n / 2]);
}

double weightOf(const Estimate& estimate) {
    return 1.0 / std::max(estimate.sdRandom * estimate.sdRandom, 1e-18);
}

/// Weighted mean; of three readings and more, readings far from the median weigh less (Huber).
Estimate combined(const std::vector<Reading>& readings) {
    Estimate result;
    if (readings.empty()) return result;
    std::vector<double> values;
    values.reserve(readings.size());
    for (const Reading& reading : readings) values.push_back(reading.estimate.value);
    double centre = medianOf(values);
    double weights = 0.0;
    double sdShared = 0.0;
    for (int round = 0; round < 20; ++round) {
        double sum = 0.0;
        weights = 0.0;
        sdShared = 0.0;
        for (const Reading& reading : readings) {
            const double off = std::abs(reading.estimate.value - centre) / std::max(reading.estimate.sdRandom, 1e-9);
            const double trust = readings.size() >= 3 && off > kHuber ? kHuber / off : 1.0;
            const double weight = trust * weightOf(reading.estimate);
            sum += weight * reading.estimate.value;
            sdShared += weight * reading.estimate.sdShared;
            weights += weight;
        }
        centre = sum / weights;
    }
    result.value = centre;
    result.sdShared = sdShared / weights;
    double scatter = 0.0;
    for (const Reading& reading : readings) {
        scatter += weightOf(reading.estimate) * std::pow(reading.estimate.value - centre, 2);
    }
    // Repeats that scatter more than they should say that the single interval was too narrow (Birge 1932).
    const double birge =
        readings.size() >= 3 ? std::sqrt(std::max(1.0, scatter / static_cast<double>(readings.size() - 1))) : 1.0;
    result.sdRandom = birge / std::sqrt(weights);
    return result;
}

std::vector<Reading> readingsOf(std::span<const Measurement> photos, Estimate Measurement::*field) {
    std::vector<Reading> readings;
    for (std::size_t i = 0; i < photos.size(); ++i) {
        if ((photos[i].*field).known()) readings.push_back({photos[i].*field, i});
    }
    return readings;
}

/// Photos that lie off the median of all. Two that disagree are both named: which of them is right cannot be told.
void nameOdd(const std::vector<Reading>& readings, std::vector<std::size_t>& odd) {
    const auto name = [&](std::size_t photo) {
        if (std::find(odd.begin(), odd.end(), photo) == odd.end()) odd.push_back(photo);
    };
    if (readings.size() == 2) {
        const Estimate& a = readings[0].estimate;
        const Estimate& b = readings[1].estimate;
        if (std::abs(a.value - b.value) > kOddDeviations * std::hypot(a.sdRandom, b.sdRandom)) {
            name(readings[0].photo);
            name(readings[1].photo);
        }
        return;
    }
    if (readings.size() < 3) return;
    std::vector<double> values;
    values.reserve(readings.size());
    for (const Reading& reading : readings) values.push_back(reading.estimate.value);
    const double middle = medianOf(values);
    for (const Reading& reading : readings) {
        if (std::abs(reading.estimate.value - middle) > kOddDeviations * reading.estimate.sdRandom) name(reading.photo);
    }
}

/// Quotient of two combined lengths: what the scale shares cancels.
Estimate quotient(const Estimate& above, const Estimate& below) {
    Estimate ratio;
    if (!above.known() || !below.known() || below.value <= 0.0) return ratio;
    ratio.value = above.value / below.value;
    ratio.sdRandom = ratio.value * std::hypot(above.sdRandom / above.value, below.sdRandom / below.value);
    return ratio;
}

void addRemarks(SessionMeasure& session, std::span<const Measurement> photos, bool secondView) {
    for (const Measurement& photo : photos) {
        for (const Remark remark : photo.remarks) {
            if (secondView && remark == Remark::WidthFromShape) continue;
            addRemark(session.remarks, remark);
        }
    }
    if (secondView) addRemark(session.remarks, Remark::WidthFromSecondView);
}

}  // namespace

SessionMeasure combineRepeats(std::span<const Measurement> photos) {
    SessionMeasure session;
    const auto lengths = readingsOf(photos, &Measurement::standardLengthMm);
    const auto depths = readingsOf(photos, &Measurement::trunkDepthMm);
    const auto widths = readingsOf(photos, &Measurement::trunkWidthMm);
    std::vector<Reading> sideLengths;
    for (const Reading& reading : lengths) {
        if (photos[reading.photo].view == View::Side || photos[reading.photo].view == View::Mirror)
            sideLengths.push_back(reading);
    }
    session.standardLengthMm = combined(sideLengths.empty() ? lengths : sideLengths);
    session.trunkDepthMm = combined(depths);
    session.trunkWidthMm = combined(widths);
    session.bellyHollowPercent = combined(readingsOf(photos, &Measurement::bellyHollowPercent));
    session.depthRatio = combined(readingsOf(photos, &Measurement::depthRatio));
    session.sidePhotos = static_cast<int>(depths.size());
    session.widthPhotos = static_cast<int>(widths.size());
    nameOdd(sideLengths.empty() ? lengths : sideLengths, session.oddOnes);
    nameOdd(depths, session.oddOnes);
    nameOdd(widths, session.oddOnes);
    std::sort(session.oddOnes.begin(), session.oddOnes.end());
    const bool secondView = session.trunkDepthMm.known() && session.trunkWidthMm.known();
    if (secondView) {
        session.girthMm = girthFromWidth(session.trunkDepthMm, session.trunkWidthMm);
        session.girthRatio = quotient(session.girthMm, session.standardLengthMm);
    } else {
        session.girthMm = combined(readingsOf(photos, &Measurement::girthMm));
        session.girthRatio = combined(readingsOf(photos, &Measurement::girthRatio));
    }
    addRemarks(session, photos, secondView);
    return session;
}

}  // namespace ringrule
