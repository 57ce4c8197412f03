// SPDX-License-Identifier: GPL-3.0-or-later
#include "midline/spine.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "midline/boundary_ray.h"
#include "midline/local_fit.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

constexpr int kRounds = 4;
constexpr double kShortestReachPx = 5.0;
constexpr double kReachInHalfWidths = 2.2;

struct Chord {
    double leftPx = 0.0;
    double rightPx = 0.0;
    bool valid = false;
};

/// A line through the body under refinement.
struct Line {
    std::vector<PixelPoint> points;
    std::vector<double> halfWidth;
};

/// A chord this much longer than the widest circle that fits there runs into a coronet, a bent head or a fork.
constexpr double kLongestChord = 1.3;

double interpolated(const std::vector<double>& alongs, const std::vector<double>& values, double along) {
    const auto above = std::upper_bound(alongs.begin(), alongs.end(), along) - alongs.begin();
    const auto i = static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(above, 1, std::ssize(alongs) - 1));
    const double step = alongs[i] - alongs[i - 1];
    const double t = step > 0.0 ? std::clamp((along - alongs[i - 1]) / step, 0.0, 1.0) : 0.0;
    return values[i - 1] + t * (values[i] - values[i - 1]);
}

double stepFor(double lengthPx) {
    return std::clamp(lengthPx / 360.0, 1.0, 6.0);
}

/// The line in even steps, each point moved onto the local quadratic of the points around it.
Line smoothed(const Line& line) {
    const std::vector<double> alongs = arcLengths<PixelFrame>(line.points);
    const double length = alongs.back();
    const auto count = static_cast<std::size_t>(std::max(12.0, length / stepFor(length)));
    Line smooth;
    for (std::size_t i = 0; i <= count; ++i) {
        const double along = length * static_cast<double>(i) / static_cast<double>(count);
        const double half = interpolated(alongs, line.halfWidth, along);
        const double reach = std::max(kShortestReachPx, kReachInHalfWidths * half);
        smooth.points.push_back(localQuadratic(line.points, alongs, along, reach).at);
        smooth.halfWidth.push_back(half);
    }
    return smooth;
}

PixelPoint unit(PixelPoint v) {
    return v * (1.0 / std::max(norm(v), 1e-12));
}

/// The exit of a ray, sought first near where the last one left; a much longer way than the last is sought again all
/// round.
std::optional<RayHit> exitNear(const std::vector<PixelPoint>& boundary, PixelPoint from, PixelPoint direction,
                               const std::optional<RayHit>& last) {
    if (!last) return firstExit(boundary, from, direction);
    const auto hit = firstExit(boundary, from, direction, last->segment);
    if (hit && hit->distance < 1.4 * last->distance + 3.0) return hit;
    return firstExit(boundary, from, direction);
}

/// Chords square to the line, none at its ends; not valid where a side is not met.
std::vector<Chord> chordsOf(const std::vector<PixelPoint>& boundary, const Line& line) {
    const std::vector<double> alongs = arcLengths<PixelFrame>(line.points);
    std::vector<Chord> chords(line.points.size());
    std::optional<RayHit> onLeft;
    std::optional<RayHit> onRight;
    for (std::size_t i = 1; i + 1 < line.points.size(); ++i) {
        const double reach = std::max(kShortestReachPx, kReachInHalfWidths * line.halfWidth[i]);
        const PixelPoint along = unit(localQuadratic(line.points, alongs, alongs[i], reach).slope);
        const PixelPoint left{along.y, -along.x};
        onLeft = exitNear(boundary, line.points[i], left, onLeft);
        onRight = exitNear(boundary, line.points[i], left * -1.0, onRight);
        if (!onLeft || !onRight) continue;
        chords[i] = {onLeft->distance, onRight->distance, true};
    }
    return chords;
}

/// From the end of a line on along its own curve until it leaves the body; nothing if it never does.
std::optional<PixelPoint> carriedToTip(const std::vector<PixelPoint>& boundary, const Line& line, bool atFront) {
    std::vector<PixelPoint> points = line.points;
    std::vector<double> half = line.halfWidth;
    if (atFront) {
        std::reverse(points.begin(), points.end());
        std::reverse(half.begin(), half.end());
    }
    const std::vector<double> alongs = arcLengths<PixelFrame>(points);
    const double reach = std::min(0.4 * alongs.back(), 8.0 + 5.0 * half.back());
    const double centre = alongs.back() - 0.5 * reach;
    const LocalCurve curve = localQuadratic(points, alongs, centre, 0.75 * reach);
    const PixelPoint slope = curve.slope + curve.bend * (alongs.back() - centre);
    const PixelPoint along = unit(slope);
    const double turn =
        std::clamp(cross(along, curve.bend), -0.5 / std::max(half.back(), 2.0), 0.5 / std::max(half.back(), 2.0));
    PixelPoint at = points.back();
    double angle = std::atan2(along.y, along.x);
    const double step = std::max(1.0, 0.25 * half.back());
    const double farthest = 6.0 * half.back() + 12.0;
    for (double gone = 0.0; gone < farthest; gone += step) {
        const PixelPoint direction{std::cos(angle), std::sin(angle)};
        const auto hit = firstExit(boundary, at, direction);
        if (!hit) return std::nullopt;
        if (hit->distance <= step) return at + direction * hit->distance;
        at = at + direction * step;
        angle += turn * step;
    }
    return std::nullopt;
}

/// The nearest point of `guide` at or after index `from`, searched a little way on only: both lines run the same way.
std::size_t nearestAhead(const Line& guide, PixelPoint at, std::size_t from) {
    std::size_t best = from;
    double nearest = dot(guide.points[from] - at, guide.points[from] - at);
    for (std::size_t i = from + 1; i < std::min(guide.points.size(), from + 40); ++i) {
        const PixelPoint off = guide.points[i] - at;
        if (const double d = dot(off, off); d < nearest) nearest = d, best = i;
    }
    return best;
}

/// Middles of the chords, without those near the tips, where a chord square to the axis no longer spans the body. Where
/// a chord is too long for the body's thickness, the guide stands in.
Line middlesOf(const Line& line, const std::vector<Chord>& chords, const Line& guide) {
    const std::vector<double> alongs = arcLengths<PixelFrame>(line.points);
    Line middles;
    std::size_t onGuide = 0;
    for (std::size_t i = 0; i < chords.size(); ++i) {
        onGuide = nearestAhead(guide, line.points[i], onGuide);
        const double half = 0.5 * (chords[i].leftPx + chords[i].rightPx);
        if (!chords[i].valid || half > kLongestChord * guide.halfWidth[onGuide] + 2.0) {
            if (onGuide < 3 || onGuide + 4 > guide.points.size()) continue;
            if (!middles.points.empty() && distance(middles.points.back(), guide.points[onGuide]) < 0.5) continue;
            middles.points.push_back(guide.points[onGuide]);
            middles.halfWidth.push_back(guide.halfWidth[onGuide]);
            continue;
        }
        const double toEnd = std::min(alongs[i], alongs.back() - alongs[i]);
        if (toEnd < 0.9 * half) continue;
        const std::size_t before = i == 0 ? 0 : i - 1;
        const std::size_t after = std::min(i + 1, line.points.size() - 1);
        const PixelPoint along = unit(line.points[after] - line.points[before]);
        const PixelPoint left{along.y, -along.x};
        middles.points.push_back(line.points[i] + left * (0.5 * (chords[i].leftPx - chords[i].rightPx)));
        middles.halfWidth.push_back(half);
    }
    return middles;
}

bool extended(const std::vector<PixelPoint>& boundary, Line& line) {
    const auto front = carriedToTip(boundary, line, true);
    const auto back = carriedToTip(boundary, line, false);
    if (front) {
        line.points.insert(line.points.begin(), *front);
        line.halfWidth.insert(line.halfWidth.begin(), line.halfWidth.front());
    }
    if (back) {
        line.points.push_back(*back);
        line.halfWidth.push_back(line.halfWidth.back());
    }
    return front.has_value() && back.has_value();
}

/// The path without its run into a corner or round a blunt end: near an end, the part where the border is nearer than
/// half of the way gone. It is carried on along the body's own curve afterwards.
Line withoutEndBranches(Line line) {
    for (int end = 0; end < 2; ++end) {
        const std::vector<double> alongs = arcLengths<PixelFrame>(line.points);
        std::size_t cut = 0;
        for (std::size_t i = 0; i < line.points.size() && alongs[i] < 0.25 * alongs.back(); ++i) {
            if (line.halfWidth[i] > 0.5 * alongs[i]) cut = i;
        }
        const auto count = static_cast<std::ptrdiff_t>(cut);
        line.points.erase(line.points.begin(), line.points.begin() + count);
        line.halfWidth.erase(line.halfWidth.begin(), line.halfWidth.begin() + count);
        std::reverse(line.points.begin(), line.points.end());
        std::reverse(line.halfWidth.begin(), line.halfWidth.end());
    }
    return line;
}

/// Points in even steps with half-widths from chords; the tips have none.
Midline finished(const std::vector<PixelPoint>& boundary, Line line) {
    const double length = lengthOf<PixelFrame>(line.points);
    const std::vector<double> alongs = arcLengths<PixelFrame>(line.points);
    const auto count = static_cast<std::size_t>(std::max(12.0, std::round(length / stepFor(length)))) + 1;
    Line even;
    even.points = resampled<PixelFrame>(line.points, count);
    for (std::size_t i = 0; i < count; ++i) {
        even.halfWidth.push_back(
            interpolated(alongs, line.halfWidth, length * static_cast<double>(i) / static_cast<double>(count - 1)));
    }
    const std::vector<Chord> chords = chordsOf(boundary, even);
    Midline midline;
    midline.spinePx = even.points;
    for (std::size_t i = 0; i < chords.size(); ++i) {
        const bool tip = i == 0 || i + 1 == chords.size();
        midline.leftHalfWidthPx.push_back(tip || !chords[i].valid ? 0.0 : chords[i].leftPx);
        midline.rightHalfWidthPx.push_back(tip || !chords[i].valid ? 0.0 : chords[i].rightPx);
    }
    return midline;
}

}  // namespace

Midline spineThrough(const Outline& outline, const MedialPath& path) {
    Line line = withoutEndBranches({path.pathPx, path.halfWidthPx});
    if (line.points.size() < 12) return {};
    line = smoothed(line);
    const Line guide = line;
    for (int round = 0; round < kRounds; ++round) {
        Line middles = middlesOf(line, chordsOf(outline.boundaryPx, line), guide);
        if (middles.points.size() < 8) return {};
        line = smoothed(middles);
        extended(outline.boundaryPx, line);
    }
    return finished(outline.boundaryPx, std::move(line));
}

}  // namespace ringrule
