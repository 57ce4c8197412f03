// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/posture.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "ringrule/geometry/polyline.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {
namespace {

/// The body's long axis and the middle of its extent along it.
struct Axis {
    AnimalPoint middle;
    AnimalPoint along;  ///< unit vector toward the tail
};

Axis axisOf(const BodyInMm& body) {
    AnimalPoint mean{};
    for (const AnimalPoint& at : body.spine) mean = mean + at * (1.0 / static_cast<double>(body.spine.size()));
    double xx = 0.0;
    double xy = 0.0;
    double yy = 0.0;
    for (const AnimalPoint& at : body.spine) {
        const AnimalPoint off = at - mean;
        xx += off.x * off.x, xy += off.x * off.y, yy += off.y * off.y;
    }
    const double angle = 0.5 * std::atan2(2.0 * xy, xx - yy);
    Axis axis{mean, {std::cos(angle), std::sin(angle)}};
    if (dot(body.spine.back() - body.spine.front(), axis.along) < 0.0) axis.along = axis.along * -1.0;
    double lowest = 0.0;
    double highest = 0.0;
    for (const AnimalPoint& at : body.spine) {
        lowest = std::min(lowest, dot(at - mean, axis.along));
        highest = std::max(highest, dot(at - mean, axis.along));
    }
    axis.middle = mean + axis.along * (0.5 * (lowest + highest));
    return axis;
}

}  // namespace

BodyInMm pitched(const BodyInMm& body, double degrees, double perDepthMm) {
    if (body.spine.size() < 2) return body;
    const Axis axis = axisOf(body);
    const double shortened = 1.0 - std::cos(degrees * M_PI / 180.0);
    const double sine = std::sin(degrees * M_PI / 180.0);
    const auto seen = [&](const AnimalPoint& at) {
        const double along = dot(at - axis.middle, axis.along);
        const AnimalPoint off = at - axis.middle - axis.along * (along * shortened);
        return axis.middle + off * (1.0 + perDepthMm * along * sine);
    };
    BodyInMm turned = body;
    for (auto* points : {&turned.spine, &turned.left, &turned.right}) {
        for (AnimalPoint& at : *points) at = seen(at);
    }
    turned.along = arcLengths<AnimalFrame>(turned.spine);
    for (std::size_t i = 0; i < turned.depth.size(); ++i) turned.depth[i] = distance(turned.left[i], turned.right[i]);
    return turned;
}

namespace {

double normalBelow(double t) {
    return 0.5 * std::erfc(-t / std::numbers::sqrt2);
}

/// Probability that |linear t + square t²| ≤ `most` for a standard normal t; neither coefficient is negative.
double withinOf(double linear, double square, double most) {
    const double rise = std::sqrt(linear * linear + 4.0 * square * most);
    const double upper = 2.0 * most / (linear + rise);
    const double lower = -0.5 * (linear + rise) / square;
    double within = normalBelow(upper) - normalBelow(lower);
    // Between them the parabola may dip below −most.
    if (const double dip = linear * linear - 4.0 * square * most; dip > 0.0) {
        const double root = std::sqrt(dip);
        within -= normalBelow(-2.0 * most / (linear + root)) - normalBelow(-0.5 * (linear + root) / square);
    }
    return within;
}

/// What 95 % of |linear t + square t²| lie below, for a standard normal t.
double within95(double linear, double square) {
    linear = std::abs(linear);
    square = std::abs(square);
    double high = kSdsInHalf95 * linear + kSdsInHalf95 * kSdsInHalf95 * square;
    if (square < 1e-9 * linear || high <= 0.0) return high;
    double low = 0.0;
    for (int halving = 0; halving < 50; ++halving) {
        const double middle = 0.5 * (low + high);
        (withinOf(linear, square, middle) < 0.95 ? low : high) = middle;
    }
    return high;
}

}  // namespace

PitchDoubt::PitchDoubt(const BodyInMm& body, double perDepthMm)
    : flat_(body), up_(pitched(body, kPitchSdDeg, perDepthMm)), down_(pitched(body, -kPitchSdDeg, perDepthMm)) {}

double PitchDoubt::sdOf(const std::function<double(const BodyInMm&)>& measure) const {
    const double up = measure(up_);
    const double down = measure(down_);
    const double changing = 0.5 * (up - down);
    const double shorter = 0.5 * (up + down) - measure(flat_);
    return within95(changing, shorter) / kSdsInHalf95;
}

double relativePerDepthMm(const Scale& scale, double distanceFromPlateMm, PixelPoint at) {
    constexpr double kUsualBench = 1.0 / 450.0;
    const PixelPoint there = at + PixelPoint{10.0, 0.0};
    const double onPlate = distance(scale.plateFromPixel(at), scale.plateFromPixel(there));
    const double onAnimal = distance(scale.animalFromPixel(at), scale.animalFromPixel(there));
    if (distanceFromPlateMm <= 0.0 || onPlate <= onAnimal) return kUsualBench;
    return (onPlate / onAnimal - 1.0) / distanceFromPlateMm;
}

}  // namespace ringrule
