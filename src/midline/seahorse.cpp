// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <optional>

#include "midline/body_plan.h"
#include "midline/boundary_ray.h"
#include "midline/local_fit.h"
#include "midline/trunk_taper.h"
#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

// The middle of the cleithral ring lies level with the throat's corner, or a little nearer to the head: the gill cover
// hangs over it, the more so the more the head is bent down. In head lengths along the trunk. Common practice, no
// source; its spread goes into the interval.
constexpr double kRingAboveThroat = 0.012;
constexpr double kRingByAngle = 0.32;
constexpr double kRingByRaisedHead = 0.22;  ///< the same of a head held up: little covers the ring then
// Trunks widen behind the ring more to the belly than to the back: the middle at the throat's level lies this much too
// far toward the belly, in head lengths, the more so the more the head is bent down.
constexpr double kRingTowardBack = 0.0085;
constexpr double kRingTowardBackByAngle = 0.035;
constexpr double kCornerInHeads = 0.05;  ///< so much of the belly beside the throat's corner is rounded by the lens
constexpr double kBellyInHeads = 0.45;   ///< so much of the belly behind tells how it goes on under the head
constexpr std::size_t kLeastBelly = 8;   ///< points
constexpr double kHiddenBelly = 0.965;   ///< the belly turns in under the head a little more: set on rendered animals
constexpr double kRingSd = 0.013;
constexpr std::size_t kLeastTrunkStations = 12;  ///< fewer tell no direction
constexpr std::size_t kLeastStations = 60;       ///< a midline cut shorter by a coil shows no trunk
constexpr double kTrunkInHeads = 1.28;  ///< usual length of the trunk in head lengths: common practice, no source
constexpr double kTrunkInHeadsSd = 0.12;
/// The last trunk ring lies where the depth has fallen to about this share of the cleithral ring's, which a full belly
/// leaves as it is. Common practice, no source; set on rendered animals.
constexpr double kTrunkEndDepth = 0.86;
constexpr double kTaperSdInTrunk = 0.026;  ///< how well the narrowing behind the trunk tells the trunk's end …
constexpr double kTaperSdWhenCut =
    0.042;                            ///< … and where a coil hides how the tail narrows on, or the outline is rough
constexpr double kRoughEdgePx = 0.5;  ///< edges seen in colour, or before a dark plate, scatter by more
constexpr double kBluntTail = 0.30;   ///< a tail's end this wide against the trunk is the back of a closed coil
constexpr double kTailSwells = 1.35;  ///< a tail that widens this much again touches itself
constexpr double kRoughEdges = 4.0;   ///< scatters of the edge: what a rough outline adds to a tail's swelling
constexpr double kHalfCurledDeg = 150.0;

PixelPoint unit(PixelPoint v) {
    return v * (1.0 / std::max(norm(v), 1e-12));
}

std::size_t nearestIndex(const std::vector<PixelPoint>& points, PixelPoint at) {
    const auto nearest = std::min_element(
        points.begin(), points.end(), [&](PixelPoint a, PixelPoint b) { return distance(a, at) < distance(b, at); });
    return static_cast<std::size_t>(nearest - points.begin());
}

/// The station of the trunk's greatest width: where the body is thickest behind the head.
std::size_t thickestTrunk(const WidthProfile& profile, bool cut) {
    const auto count = profile.widthPx.size();
    // What a closed coil hides is missing behind: head and trunk fill more of what is left.
    const auto from = static_cast<std::size_t>((cut ? 0.36 : 0.30) * static_cast<double>(count));
    const auto to = static_cast<std::size_t>((cut ? 0.80 : 0.62) * static_cast<double>(count));
    std::size_t best = from;
    for (std::size_t i = from; i < to; ++i) {
        if (profile.widthPx[i] > profile.widthPx[best]) best = i;
    }
    return best;
}

/// Points of the boundary from `from` to `to`, walking forward or backward.
std::vector<PixelPoint> walked(const std::vector<PixelPoint>& boundary, std::size_t from, std::size_t to,
                               bool forward) {
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

/// The corner between head and belly.
std::optional<PixelPoint> throatOf(const Outline& outline, const Midline& midline, std::size_t thickest,
                                   PixelPoint toBelly, bool ventralLeft) {
    const auto belly = firstExit(outline.boundaryPx, midline.spinePx[thickest], toBelly);
    if (!belly) return std::nullopt;
    const std::size_t tipIndex = nearestIndex(outline.boundaryPx, midline.spinePx.front());
    // The boundary runs clockwise; from the snout toward the tail the left side is met walking forward.
    const std::vector<PixelPoint> side = walked(outline.boundaryPx, tipIndex, belly->segment, ventralLeft);
    if (side.size() < 12) return std::nullopt;
    return deepestCorner(side);
}

/// The middle of the cleithral ring and the trunk's direction there.
struct Ring {
    PixelPoint at;
    PixelPoint tailward;          ///< unit direction of the trunk
    std::size_t firstBehind = 0;  ///< first station of the midline that lies in the trunk
    double headPx = 0.0;
    PixelPoint toBelly;    ///< from its middle to the belly line
    double depthPx = 0.0;  ///< of the ring; 0 when the back was not met
};

/// The first station in the trunk: from the thickest place toward the head as long as the stations still approach the
/// throat's level, seen along the trunk.
std::size_t firstInTrunk(const Midline& midline, std::size_t thickest, PixelPoint level, PixelPoint tailward,
                         double clearPx) {
    std::size_t first = thickest;
    while (first > 1 && dot(midline.spinePx[first - 1] - level, tailward) > clearPx &&
           dot(midline.spinePx[first] - midline.spinePx[first - 1], tailward) > 0.0) {
        --first;
    }
    return first;
}

/// From the throat's corner across the body to its back. A rough outline ends the corner in a notch: the ray begins
/// where the body does.
std::optional<double> depthFrom(const Outline& outline, PixelPoint throat, PixelPoint across, PixelPoint tailward) {
    for (const double clearPx : {2.0, 4.0, 8.0}) {
        const auto back =
            firstExit(outline.boundaryPx, throat + across * clearPx + tailward * (0.75 * clearPx), across);
        if (back) return back->distance + clearPx;
    }
    return std::nullopt;
}

/// Where the belly's line is `onPx` along the trunk from the throat's corner, headward where that is negative and the
/// head hides it: the quadratic through what is seen of it behind the corner, which the lens rounds, carried on.
std::optional<PixelPoint> bellyAt(const Outline& outline, PixelPoint throat, bool forward, PixelPoint tailward,
                                  double headPx, double onPx) {
    const std::vector<PixelPoint>& boundary = outline.boundaryPx;
    const std::size_t n = boundary.size();
    const double fromPx = std::max(kCornerInHeads * headPx, 2.0 * outline.edgeBlurPx);
    const double toPx = fromPx + kBellyInHeads * headPx;
    std::vector<PixelPoint> points;
    std::vector<double> alongs;
    double last = fromPx;
    for (std::size_t i = nearestIndex(boundary, throat), k = 0; k < n / 2; ++k) {
        const double along = dot(boundary[i] - throat, tailward);
        if (along > toPx) break;
        if (along > last) points.push_back(boundary[i]), alongs.push_back(along), last = along;
        i = forward ? (i + 1) % n : (i + n - 1) % n;
    }
    if (alongs.size() < kLeastBelly || last < fromPx + 0.5 * kBellyInHeads * headPx) return std::nullopt;
    const LocalCurve curve = localQuadratic(points, alongs, fromPx, toPx - fromPx);
    const double on = onPx - fromPx;
    return curve.at + curve.slope * on + curve.bend * (0.5 * on * on);
}

/// The ring: the middle between the throat's corner and the back opposite, moved headward under the gill cover.
std::optional<Ring> findRing(const Outline& outline, const Midline& midline, PixelPoint throat, std::size_t thickest,
                             PixelPoint trunkWay, PixelPoint toBelly, bool ventralLeft) {
    Ring ring;
    const std::size_t first = firstInTrunk(midline, thickest, throat, trunkWay, 0.0);
    // Chords next to the head run into it: the direction is taken from the trunk a little way behind. A full belly is
    // deepest close to the head; the way to there is too short to tell a direction.
    const std::size_t behind = std::max(thickest, first + kLeastTrunkStations);
    const std::size_t from = first + (behind - first) / 4;
    const std::size_t to = behind + (behind - first) / 4;
    if (to >= midline.spinePx.size()) return std::nullopt;
    ring.tailward = unit(midline.spinePx[to] - midline.spinePx[from]);
    const PixelPoint across = cross(ring.tailward, toBelly) > 0.0 ? PixelPoint{ring.tailward.y, -ring.tailward.x}
                                                                  : PixelPoint{-ring.tailward.y, ring.tailward.x};
    const auto depth = depthFrom(outline, throat, across, ring.tailward);
    if (!depth) return std::nullopt;
    const PixelPoint level = throat + across * (0.5 * *depth);
    const PixelPoint snout = midline.spinePx.front();
    const auto behindSnout = static_cast<std::size_t>(0.08 * static_cast<double>(midline.spinePx.size()));
    const PixelPoint snoutWay = unit(snout - midline.spinePx[behindSnout]);
    const double sine = std::max(0.4, std::abs(cross(snoutWay, ring.tailward)));
    const double cotangent = std::clamp(dot(snoutWay, ring.tailward) / sine, -0.25, 0.6);
    ring.headPx = distance(snout, level);
    const double byAngle = cotangent * (cotangent > 0.0 ? kRingByAngle : kRingByRaisedHead);
    const double headwardPx = (kRingAboveThroat + byAngle) * ring.headPx;
    ring.at = level - ring.tailward * headwardPx +
              across * ((kRingTowardBack + kRingTowardBackByAngle * cotangent) * ring.headPx);
    ring.headPx = distance(snout, ring.at);
    // Its belly end, which the head hides: as far from the middle as the back, and where the belly's line leads; each
    // alone is off by what the other is not.
    if (const auto nape = firstExit(outline.boundaryPx, ring.at, across)) {
        ring.depthPx = 2.0 * nape->distance;
        ring.toBelly = across * -nape->distance;
        const auto belly = bellyAt(outline, throat, ventralLeft, ring.tailward, ring.headPx, -headwardPx);
        if (belly) ring.toBelly = (ring.toBelly + *belly - ring.at) * (0.5 * kHiddenBelly);
    }
    ring.firstBehind = firstInTrunk(midline, thickest, level, ring.tailward, 0.06 * ring.headPx);
    return ring;
}

/// The protocol's line: straight through the head, then the trunk's curve from the ring on.
Midline protocolLine(const Midline& midline, const Ring& ring) {
    Midline line;
    line.closedCoil = midline.closedCoil;
    line.remarks = midline.remarks;
    const double step = midline.lengthPx() / static_cast<double>(midline.spinePx.size() - 1);
    const auto add = [&line](PixelPoint at, double left, double right) {
        line.spinePx.push_back(at);
        line.leftHalfWidthPx.push_back(left);
        line.rightHalfWidthPx.push_back(right);
    };
    const auto addStraight = [&](PixelPoint from, PixelPoint to) {
        const double count = std::max(1.0, std::round(distance(from, to) / step));
        for (double i = 0.0; i < count; i += 1.0) add(from + (to - from) * (i / count), 0.0, 0.0);
    };
    addStraight(midline.spinePx.front(), ring.at);
    addStraight(ring.at, midline.spinePx[ring.firstBehind]);
    for (std::size_t i = ring.firstBehind; i < midline.spinePx.size(); ++i) {
        add(midline.spinePx[i], midline.leftHalfWidthPx[i], midline.rightHalfWidthPx[i]);
    }
    return line;
}

/// The crown's tip: the boundary's farthest point from the line through snout and ring, on the side away from the
/// trunk.
PixelPoint coronetTip(const Outline& outline, PixelPoint snout, const Ring& ring) {
    PixelPoint up = unit(PixelPoint{-(snout - ring.at).y, (snout - ring.at).x});
    if (dot(up, ring.tailward) > 0.0) up = up * -1.0;
    return *std::max_element(outline.boundaryPx.begin(), outline.boundaryPx.end(),
                             [&](PixelPoint a, PixelPoint b) { return dot(a - ring.at, up) < dot(b - ring.at, up); });
}

/// Whether the tail touches itself without a gap to be seen: its end is blunt, or it swells behind a slimmer part.
bool touchesItself(const WidthProfile& profile, double pastPouch, double edgeSdPx) {
    if (profile.mean(0.92, 0.975) > kBluntTail * profile.greatestPx) return true;
    double slimmest = 1e9;
    for (double share = pastPouch; share < 0.985; share += 0.005) {
        slimmest = std::min(slimmest, profile.at(share));
        if (profile.at(share) > kTailSwells * slimmest + 2.5 + kRoughEdges * edgeSdPx) return true;
    }
    return false;
}

/// The last trunk ring: where the body has narrowed to a tail, or the usual proportion where that is not seen.
Landmark trunkEndOf(const Midline& line, const Midline& midline, const Ring& ring, const TrunkTaper& taper,
                    double edgeSdPx) {
    const double whole = line.lengthPx();
    const double usual = std::min((1.0 + kTrunkInHeads) * ring.headPx, 0.95 * whole);
    if (taper.trunkEndStation > 0.0) {
        const PixelPoint narrowed = midline.spinePx[static_cast<std::size_t>(std::lround(taper.trunkEndStation))];
        const double seen = project<PixelFrame>(line.spinePx, narrowed).along;
        const double sdInTrunk = midline.closedCoil || edgeSdPx > kRoughEdgePx ? kTaperSdWhenCut : kTaperSdInTrunk;
        if (std::abs(seen - usual) < 3.0 * kTrunkInHeadsSd * ring.headPx)
            return landmarkAt(line, seen / whole, sdInTrunk * (seen - ring.headPx) / whole);
    }
    return landmarkAt(line, usual / whole, kTrunkInHeadsSd * ring.headPx / whole);
}

double turnedDeg(const Midline& midline, std::size_t from) {
    double turn = 0.0;
    constexpr std::size_t kGap = 6;
    for (std::size_t i = from + kGap; i + kGap < midline.spinePx.size(); i += kGap) {
        const PixelPoint before = midline.spinePx[i] - midline.spinePx[i - kGap];
        const PixelPoint after = midline.spinePx[i + kGap] - midline.spinePx[i];
        turn += std::atan2(cross(before, after), dot(before, after));
    }
    return std::abs(turn) * 180.0 / M_PI;
}

}  // namespace

Outcome<Anatomy> seahorseAnatomy(const Outline& outline, const Midline& midline) {
    const Refusal unclear{"shape-not-clear",
                          "Head, trunk and tail of a seahorse could not be told apart. Take it side on."};
    if (midline.spinePx.size() < kLeastStations) return unclear;
    const WidthProfile profile = widthProfile(midline);
    const std::size_t thickest = thickestTrunk(profile, midline.closedCoil);
    const PixelPoint snout = midline.spinePx.front();
    const auto quarter = static_cast<std::size_t>(0.07 * static_cast<double>(midline.spinePx.size()));
    const PixelPoint snoutWay = unit(midline.spinePx[quarter] - snout);
    const std::size_t after = std::min(thickest + 6, midline.spinePx.size() - 1);
    const PixelPoint trunkWay = unit(midline.spinePx[after] - midline.spinePx[thickest - 6]);
    const bool ventralLeft = cross(snoutWay, trunkWay) < 0.0;
    const PixelPoint toBelly =
        (ventralLeft ? PixelPoint{trunkWay.y, -trunkWay.x} : PixelPoint{-trunkWay.y, trunkWay.x});
    const auto throat = throatOf(outline, midline, thickest, toBelly, ventralLeft);
    if (!throat) return unclear;
    const auto ring = findRing(outline, midline, *throat, thickest, trunkWay, toBelly, ventralLeft);
    if (!ring) return unclear;

    const TrunkTaper taper = trunkTaper(profile, thickest, kTrunkEndDepth * ring->depthPx);
    Anatomy anatomy;
    anatomy.shape = Shape::Seahorse;
    anatomy.midline = protocolLine(withoutPouch(midline, taper, ventralLeft), *ring);
    anatomy.pouchPx = pouchOutline(midline, taper, ventralLeft);
    Landmarks& marks = anatomy.landmarks;
    marks.ventralOnLeft = ventralLeft;
    marks.ventralKnown = true;
    marks.snoutTip = Landmark{snout, std::hypot(0.4, 0.3 * outline.edgeBlurPx)};
    marks.headEnd = Landmark{ring->at, kRingSd * ring->headPx};
    anatomy.ringToBellyPx = ring->toBelly;
    marks.coronet = Landmark{coronetTip(outline, snout, *ring), 1.0};
    marks.trunkEnd = trunkEndOf(anatomy.midline, midline, *ring, taper, outline.edgeSdPx);
    if (!midline.closedCoil && touchesItself(profile, 0.72, outline.edgeSdPx)) {
        anatomy.midline.closedCoil = true;
        anatomy.remarks.push_back(Remark::TailClosed);
    }
    if (anatomy.midline.closedCoil) return anatomy;
    marks.tailEnd = Landmark{anatomy.midline.spinePx.back(), std::hypot(0.4, 0.3 * outline.edgeBlurPx)};
    if (turnedDeg(midline, thickest) > kHalfCurledDeg) anatomy.remarks.push_back(Remark::TailHalfCurled);
    return anatomy;
}

Landmarks seahorseFrontLandmarks(const Midline& midline) {
    Landmarks landmarks;
    landmarks.headEnd = landmarkAt(midline, 0.27, 0.03);
    landmarks.trunkEnd = landmarkAt(midline, 0.62, 0.05);
    return landmarks;
}

}  // namespace ringrule
