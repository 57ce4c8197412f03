// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <optional>

#include "midline/body_plan.h"
#include "midline/boundary_ray.h"
#include "midline/local_fit.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

// From the throat's corner to the middle of the cleithral ring, along the trunk toward the head, in head lengths: the ring
// lies under the rear of the gill cover. Common practice, no source; its spread goes into the interval.
constexpr double kRingAboveThroat = 0.08;
constexpr double kRingSd = 0.03;
constexpr double kTrunkInTrunkAndTail = 0.36;  ///< usual share of the trunk: common practice, no source

PixelPoint unit(PixelPoint v) { return v * (1.0 / std::max(norm(v), 1e-12)); }

std::size_t nearestIndex(const std::vector<PixelPoint>& points, PixelPoint at) {
    const auto nearest = std::min_element(points.begin(), points.end(),
                                          [&](PixelPoint a, PixelPoint b) { return distance(a, at) < distance(b, at); });
    return static_cast<std::size_t>(nearest - points.begin());
}

/// The station of the trunk's greatest width: where the body is thickest behind the head.
std::size_t thickestTrunk(const WidthProfile& profile) {
    const auto count = profile.widthPx.size();
    const auto from = static_cast<std::size_t>(0.30 * static_cast<double>(count));
    const auto to = static_cast<std::size_t>(0.62 * static_cast<double>(count));
    std::size_t best = from;
    for (std::size_t i = from; i < to; ++i) {
        if (profile.widthPx[i] > profile.widthPx[best]) best = i;
    }
    return best;
}

/// Points of the boundary from `from` to `to`, walking forward or backward.
std::vector<PixelPoint> walked(const std::vector<PixelPoint>& boundary, std::size_t from, std::size_t to, bool forward) {
    std::vector<PixelPoint> points;
    const std::size_t n = boundary.size();
    for (std::size_t i = from, k = 0; k <= n; ++k) {
        points.push_back(boundary[i]);
        if (i == to) break;
        i = forward ? (i + 1) % n : (i + n - 1) % n;
    }
    return points;
}

/// The deepest corner that a side makes inside the straight line between its ends.
PixelPoint deepestCorner(const std::vector<PixelPoint>& side) {
    const PixelPoint along = unit(side.back() - side.front());
    return *std::max_element(side.begin(), side.end(), [&](PixelPoint a, PixelPoint b) {
        return std::abs(cross(along, a - side.front())) < std::abs(cross(along, b - side.front()));
    });
}

struct TrunkAxis {
    std::vector<double> alongs;
    double throatAlong = 0.0;  ///< of the station beside the throat's corner
    PixelPoint ring;
    PixelPoint tailward;       ///< unit direction of the trunk at the ring
    double headPx = 0.0;
};

/// The ring's place: the trunk's own curve, fitted clear of the head, carried on past the throat.
std::optional<TrunkAxis> trunkAxis(const Midline& midline, PixelPoint throat, double thickestAlong) {
    TrunkAxis axis;
    axis.alongs = arcLengths<PixelFrame>(midline.spinePx);
    std::vector<PixelPoint> trunk;
    std::vector<double> trunkAlongs;
    const auto beside = project<PixelFrame>(midline.spinePx, throat);
    axis.throatAlong = beside.along;
    const double clear = axis.throatAlong + 0.12 * (thickestAlong - axis.throatAlong);
    for (std::size_t i = 0; i < midline.spinePx.size(); ++i) {
        if (axis.alongs[i] < clear || axis.alongs[i] > axis.throatAlong + 1.7 * (thickestAlong - axis.throatAlong)) continue;
        trunk.push_back(midline.spinePx[i]);
        trunkAlongs.push_back(axis.alongs[i]);
    }
    if (trunk.size() < 8) return std::nullopt;
    const double reach = trunkAlongs.back() - trunkAlongs.front();
    const double start = trunkAlongs.front();
    const LocalCurve curve = localQuadratic(trunk, trunkAlongs, start, reach);
    const auto pointAtOffset = [&](double t) { return curve.at + curve.slope * t + curve.bend * (0.5 * t * t); };
    double offset = dot(throat - curve.at, unit(curve.slope));
    offset += dot(throat - pointAtOffset(offset), unit(curve.slope + curve.bend * offset));
    axis.headPx = distance(midline.spinePx.front(), pointAtOffset(offset));
    offset -= kRingAboveThroat * axis.headPx;
    axis.ring = pointAtOffset(offset);
    axis.tailward = unit(curve.slope + curve.bend * offset);
    axis.headPx = distance(midline.spinePx.front(), axis.ring);
    return axis;
}

/// The protocol's line: straight through the head, then the trunk's curve from the ring on.
Midline protocolLine(const Midline& midline, const TrunkAxis& axis) {
    Midline line;
    line.closedCoil = midline.closedCoil;
    line.remarks = midline.remarks;
    const double step = axis.alongs.back() / static_cast<double>(axis.alongs.size() - 1);
    const auto headSteps = static_cast<std::size_t>(std::max(4.0, std::round(axis.headPx / step)));
    const PixelPoint tip = midline.spinePx.front();
    for (std::size_t i = 0; i < headSteps; ++i) {
        line.spinePx.push_back(tip + (axis.ring - tip) * (static_cast<double>(i) / static_cast<double>(headSteps)));
        line.leftHalfWidthPx.push_back(0.0);
        line.rightHalfWidthPx.push_back(0.0);
    }
    line.spinePx.push_back(axis.ring);
    line.leftHalfWidthPx.push_back(0.0);
    line.rightHalfWidthPx.push_back(0.0);
    for (std::size_t i = 0; i < midline.spinePx.size(); ++i) {
        if (axis.alongs[i] < axis.throatAlong) continue;
        const double ahead = dot(midline.spinePx[i] - axis.ring, axis.tailward);
        if (axis.alongs[i] < axis.throatAlong + 0.1 * axis.headPx && ahead < 0.5 * step) continue;
        line.spinePx.push_back(midline.spinePx[i]);
        line.leftHalfWidthPx.push_back(midline.leftHalfWidthPx[i]);
        line.rightHalfWidthPx.push_back(midline.rightHalfWidthPx[i]);
    }
    return line;
}

/// The crown's tip: the boundary's farthest point from the line through snout and ring, on the side away from the trunk.
PixelPoint coronetTip(const Outline& outline, PixelPoint snout, const TrunkAxis& axis) {
    PixelPoint up = unit(PixelPoint{-(snout - axis.ring).y, (snout - axis.ring).x});
    if (dot(up, axis.tailward) > 0.0) up = up * -1.0;
    return *std::max_element(outline.boundaryPx.begin(), outline.boundaryPx.end(),
                             [&](PixelPoint a, PixelPoint b) { return dot(a - axis.ring, up) < dot(b - axis.ring, up); });
}

}  // namespace

Outcome<Anatomy> seahorseAnatomy(const Photo& /*photo*/, const Outline& outline, const Midline& midline) {
    const Refusal unclear{"shape-not-clear", "Head, trunk and tail of a seahorse could not be told apart. Take it side on."};
    const WidthProfile profile = widthProfile(midline);
    const std::size_t thickest = thickestTrunk(profile);
    const PixelPoint snout = midline.spinePx.front();
    const auto quarter = static_cast<std::size_t>(0.07 * static_cast<double>(midline.spinePx.size()));
    const PixelPoint snoutWay = unit(midline.spinePx[quarter] - snout);
    const std::size_t after = std::min(thickest + 6, midline.spinePx.size() - 1);
    const PixelPoint trunkWay = unit(midline.spinePx[after] - midline.spinePx[thickest - 6]);
    const bool ventralLeft = cross(snoutWay, trunkWay) < 0.0;
    const PixelPoint toBelly = (ventralLeft ? PixelPoint{trunkWay.y, -trunkWay.x} : PixelPoint{-trunkWay.y, trunkWay.x});
    const auto belly = firstExit(outline.boundaryPx, midline.spinePx[thickest], toBelly);
    if (!belly) return unclear;
    const std::size_t tipIndex = nearestIndex(outline.boundaryPx, snout);
    // The boundary runs clockwise; from the snout toward the tail the left side is met walking forward.
    const std::vector<PixelPoint> side = walked(outline.boundaryPx, tipIndex, belly->segment, ventralLeft);
    if (side.size() < 12) return unclear;
    const PixelPoint throat = deepestCorner(side);
    const std::vector<double> alongs = arcLengths<PixelFrame>(midline.spinePx);
    const auto axis = trunkAxis(midline, throat, alongs[thickest]);
    if (!axis) return unclear;

    Anatomy anatomy;
    anatomy.shape = Shape::Seahorse;
    anatomy.midline = protocolLine(midline, *axis);
    Landmarks& marks = anatomy.landmarks;
    marks.ventralOnLeft = ventralLeft;
    marks.ventralKnown = true;
    marks.snoutTip = Landmark{snout, std::hypot(0.4, 0.3 * outline.edgeBlurPx)};
    marks.headEnd = Landmark{axis->ring, kRingSd * axis->headPx};
    marks.coronet = Landmark{coronetTip(outline, snout, *axis), 1.0};
    const double rest = anatomy.midline.lengthPx() - axis->headPx;
    const double head = axis->headPx / anatomy.midline.lengthPx();
    marks.trunkEnd = landmarkAt(anatomy.midline, head + kTrunkInTrunkAndTail * (1.0 - head), 0.04 * rest / anatomy.midline.lengthPx());
    if (!midline.closedCoil) {
        marks.tailEnd = Landmark{anatomy.midline.spinePx.back(), std::hypot(0.4, 0.3 * outline.edgeBlurPx)};
    }
    return anatomy;
}

Landmarks seahorseFrontLandmarks(const Midline& midline) {
    Landmarks landmarks;
    landmarks.headEnd = landmarkAt(midline, 0.27, 0.03);
    landmarks.trunkEnd = landmarkAt(midline, 0.62, 0.05);
    return landmarks;
}

}  // namespace ringrule
