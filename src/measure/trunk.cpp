// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/trunk.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ringrule {
namespace {

constexpr double kSmoothShare = 0.003;  ///< of the body's length, to both sides: well under a ring, so that crests stay

constexpr double kTangentShare = 0.03;  ///< of the body's length, to both sides: more than a ring

std::size_t stationAt(const BodyInMm& body, double alongMm) {
    const auto above = std::lower_bound(body.along.begin(), body.along.end(), alongMm) - body.along.begin();
    return static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(above, 0, std::ssize(body.along) - 1));
}

/// Direction of one side of the outline around a station, over more than a ring to both sides; none where it is hidden.
std::optional<AnimalPoint> sideAlong(const BodyInMm& body, const std::vector<AnimalPoint>& side, std::size_t i) {
    const double reach = kTangentShare * body.along.back();
    std::size_t from = stationAt(body, body.along[i] - reach);
    std::size_t to = std::min(stationAt(body, body.along[i] + reach), side.size() - 1);
    while (from < i && body.depth[from] <= 0.0) ++from;
    while (to > i && body.depth[to] <= 0.0) --to;
    if (to < from + 4) return std::nullopt;
    const AnimalPoint step = side[to] - side[from];
    return step * (1.0 / std::max(norm(step), 1e-12));
}

/// Cosine of the angle by which a chord leans from square to the body, whose direction is midway between its two sides:
/// a midline that is drawn aside by a pouch or a hollow leans its chords and makes them too long.
double lean(const BodyInMm& body, std::size_t i) {
    const auto left = sideAlong(body, body.left, i);
    const auto right = sideAlong(body, body.right, i);
    if (!left || !right) return 1.0;
    const AnimalPoint along = *left + *right;
    const AnimalPoint chord = body.left[i] - body.right[i];
    return std::abs(cross(along, chord)) / std::max(norm(along) * norm(chord), 1e-12);
}

/// Whether a foot of the next chord lies behind that of this one: chords that fan out from beside the head, or from a
/// head held up, are not square to the trunk.
bool fansOut(const BodyInMm& body, std::size_t i) {
    const AnimalPoint along = body.spine[i + 1] - body.spine[i];
    return dot(body.left[i + 1] - body.left[i], along) <= 0.0 || dot(body.right[i + 1] - body.right[i], along) <= 0.0;
}

double smoothedDepth(const BodyInMm& body, std::size_t i) {
    const double reach = kSmoothShare * body.along.back();
    double sum = 0.0;
    double weights = 0.0;
    for (std::size_t k = stationAt(body, body.along[i] - reach); k < body.along.size(); ++k) {
        const double t = std::abs(body.along[k] - body.along[i]) / reach;
        if (body.along[k] > body.along[i] + reach) break;
        if (body.depth[k] <= 0.0) continue;
        const double weight = k == i ? 1.0 : std::max(0.0, 1.0 - t);
        sum += weight * body.depth[k] * lean(body, k);
        weights += weight;
    }
    return weights > 0.0 ? sum / weights : 0.0;
}

}  // namespace

TrunkDepth greatestDepth(const BodyInMm& body, double fromMm, double toMm) {
    TrunkDepth greatest;
    std::size_t first = stationAt(body, fromMm);
    while (first < body.along.size() && body.depth[first] <= 0.0) ++first;
    while (first + 1 < body.along.size() && body.depth[first + 1] > 0.0 && fansOut(body, first)) ++first;
    for (std::size_t i = first; i < body.along.size() && body.along[i] <= toMm; ++i) {
        if (body.depth[i] <= 0.0) continue;
        if (const double depth = smoothedDepth(body, i); depth > greatest.depthMm) greatest = {depth, body.along[i]};
    }
    return greatest;
}

double greatestStepMm(const BodyInMm& body, double fromMm, double toMm) {
    double greatest = 0.0;
    const double span = 0.01 * body.along.back();
    for (std::size_t i = stationAt(body, fromMm); i < body.along.size() && body.along[i] + span <= toMm; ++i) {
        const std::size_t k = stationAt(body, body.along[i] + span);
        if (body.depth[i] <= 0.0 || body.depth[k] <= 0.0) continue;
        greatest = std::max(greatest, std::abs(body.depth[k] - body.depth[i]));
    }
    return greatest;
}

Hollow hollowOf(const BodyInMm& body, double fromMm, double toMm, bool leftSide,
                const std::optional<AnimalPoint>& hidden) {
    const std::vector<AnimalPoint>& side = leftSide ? body.left : body.right;
    std::size_t from = stationAt(body, fromMm);
    std::size_t to = stationAt(body, toMm);
    while (from < to && body.depth[from] <= 0.0) ++from;
    while (to > from && body.depth[to] <= 0.0) --to;
    if (to < from + 8) return {std::numeric_limits<double>::quiet_NaN(), 0.0};
    const AnimalPoint start = hidden.value_or(side[from]);
    const AnimalPoint chord = side[to] - start;
    const double length = std::max(norm(chord), 1e-12);
    // Seen from snout to tail the left side's outside lies to the left: a positive cross product is to the right.
    const double inward = leftSide ? 1.0 : -1.0;
    double inside = 0.0;
    double outside = 0.0;
    for (std::size_t i = from; i <= to; ++i) {
        if (body.depth[i] <= 0.0) continue;
        const double deviation = inward * cross(chord, side[i] - start) / length;
        inside = std::max(inside, deviation);
        outside = std::min(outside, deviation);
    }
    return inside >= -outside ? Hollow{inside, outside} : Hollow{outside, inside};
}

double turnDeg(const BodyInMm& body, double fromMm, double toMm) {
    const double span = 0.2 * (toMm - fromMm);
    const auto direction = [&](double a, double b) {
        return body.spine[stationAt(body, b)] - body.spine[stationAt(body, a)];
    };
    const AnimalPoint first = direction(fromMm, fromMm + span);
    const AnimalPoint last = direction(toMm - span, toMm);
    return std::abs(std::atan2(cross(first, last), dot(first, last))) * 180.0 / M_PI;
}

}  // namespace ringrule
