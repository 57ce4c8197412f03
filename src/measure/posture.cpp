// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/posture.h"

#include <algorithm>
#include <cmath>

#include "ringrule/geometry/polyline.h"

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

/// Also: 95 % of the squares of a normal lie below the square of this, in variances.
constexpr double kSdsInHalf95 = 1.959963984540054;

}  // namespace

PitchDoubt::PitchDoubt(const BodyInMm& body, double perDepthMm)
    : flat_(body), up_(pitched(body, kPitchSdDeg, perDepthMm)), down_(pitched(body, -kPitchSdDeg, perDepthMm)) {}

double PitchDoubt::sdOf(const std::function<double(const BodyInMm&)>& measure) const {
    const double up = measure(up_);
    const double down = measure(down_);
    const double changing = 0.5 * (up - down);
    const double shorter = 0.5 * (up + down) - measure(flat_);
    return std::hypot(changing, kSdsInHalf95 * shorter);
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
