// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/measure/measure.h"

#include <algorithm>
#include <cmath>

#include "measure/body_in_mm.h"
#include "measure/girth.h"
#include "measure/photo_checks.h"
#include "measure/posture.h"
#include "measure/trunk.h"
#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

// What a rendered animal's half-way edges are off by, over 600 photos of each table (docs/measuring-method.md):
/// each edge, whatever its photo …
constexpr double kEdgeFloorPx = 0.02;
/// … and by this much of the edge's own blur, where skin is not evenly shaded.
constexpr double kEdgeShareOfBlur = 0.03;
/// Rings, and skin that is not evenly dark, move the greatest depth by about this share of it.
constexpr double kSkinShare = 0.0012;
constexpr double kBeforeVent = 0.015;  ///< of the trunk's length
/// Rings move the deepest point and the ends of its line by so much of the trunk's depth.
constexpr double kHollowSkinPercent = 0.10;
constexpr double kHiddenThroatPercent = 0.5;
constexpr double kToldApartSds = 2.8;  ///< √2 · 1.96: two measures with the same standard deviation
/// Share of the boundary that the body swept along its midline may leave out: a well followed body leaves under half a
/// per cent, one with half a fin some 3 %, crossing animals a third. Of the five large animals in 2,715 rendered ones
/// that left out 2 to 6 % none was measured right.
constexpr double kNotOneBody = 0.02;
constexpr double kDoubtfulLength = 0.10;  ///< standard deviation, share of the length …
constexpr double kDoubtfulDepth = 0.12;   ///< … and of the depth, under a doubtful outline
constexpr double kTooBentDeg = 35.0;
constexpr double kFinStep = 0.15;  ///< of the greatest depth: no trunk swells that much at once

/// A body on its photo's scale, and what its unknown posture does to its measures.
struct Seen {
    const BodyInMm& body;
    const PitchDoubt& pitch;
    const Scale& scale;
};

/// A length with its two parts of uncertainty; `ownSdMm` is what its ends and its posture add.
Estimate lengthEstimate(double mm, double ownSdMm, const Scale& scale) {
    Estimate estimate;
    estimate.value = mm;
    estimate.sdRandom = std::hypot(ownSdMm, mm * scale.relativeSdRandom());
    estimate.sdShared = mm * scale.relativeSdShared();
    return estimate;
}

/// Standard deviation of where one side of the body is seen.
double edgeSdPx(const Outline& outline) {
    return std::hypot(kEdgeFloorPx, kEdgeShareOfBlur * outline.edgeBlurPx, outline.edgeSdPx);
}

/// A depth across the body, `pitchSdMm` for its place before or behind the animal's plane.
Estimate depthEstimate(double mm, double pitchSdMm, const Outline& outline, double mmPerPx, const Scale& scale) {
    Estimate estimate;
    estimate.value = mm;
    estimate.sdRandom = std::hypot(std::sqrt(2.0) * edgeSdPx(outline) * mmPerPx,
                                   mm * std::hypot(kSkinShare, scale.relativeSdRandom()), pitchSdMm);
    estimate.sdShared = mm * scale.relativeSdShared();
    return estimate;
}

/// Quotient of two lengths of one photo: the scale and its uncertainty cancel.
Estimate ratioOf(const Estimate& above, const Estimate& below, const Scale& scale) {
    const auto own = [&](const Estimate& e) {
        const double scaled = e.value * scale.relativeSdRandom();
        return std::sqrt(std::max(0.0, e.sdRandom * e.sdRandom - scaled * scaled)) / e.value;
    };
    const double aboveShared =
        std::sqrt(std::max(0.0, std::pow(above.sdShared / above.value, 2) - std::pow(scale.relativeSdShared(), 2)));
    Estimate ratio;
    ratio.value = above.value / below.value;
    ratio.sdRandom = ratio.value * std::hypot(own(above), own(below));
    ratio.sdShared = ratio.value * aboveShared;
    return ratio;
}

struct Stations {
    std::optional<Place> snout, headEnd, trunkEnd, tailEnd;
};

void measureLengths(Measurement& m, const Seen& seen, const Stations& at) {
    const auto between = [&](const std::optional<Place>& from, const std::optional<Place>& to) {
        if (!from || !to || to->alongMm <= from->alongMm) return Estimate{};
        const double pitchSd = seen.pitch.sdOf(
            [&](const BodyInMm& body) { return body.alongAt(to->alongPx) - body.alongAt(from->alongPx); });
        return lengthEstimate(to->alongMm - from->alongMm, std::hypot(from->sdMm, to->sdMm, pitchSd), seen.scale);
    };
    if (m.view != View::Front || m.shape != Shape::Seahorse) m.standardLengthMm = between(at.snout, at.tailEnd);
    // From above and head-on gill cover and vent are not seen: their usual shares serve to find the trunk, and are no
    // measures.
    if (m.view == View::Above || m.view == View::Front) return;
    m.headLengthMm = between(at.snout, at.headEnd);
    m.trunkLengthMm = between(at.headEnd, at.trunkEnd);
    m.tailLengthMm = between(at.trunkEnd, at.tailEnd);
}

/// The ring's place counts in a seahorse's length: moved along the trunk, it takes from the trunk and hardly adds to
/// the head, which stands across.
void widenForRing(Measurement& m, const Stations& at) {
    if (m.shape == Shape::Seahorse && m.headLengthMm.known()) {
        const double own = std::hypot(at.snout->sdMm, at.headEnd->sdMm);
        const double rest = m.headLengthMm.sdRandom * m.headLengthMm.sdRandom - own * own;
        m.headLengthMm.sdRandom = std::hypot(std::sqrt(std::max(0.0, rest)), at.snout->sdMm, 0.24 * at.headEnd->sdMm);
    }
    if (m.shape != Shape::Seahorse || !m.standardLengthMm.known() || !at.headEnd) return;
    m.standardLengthMm.sdRandom = std::hypot(m.standardLengthMm.sdRandom, 0.8 * at.headEnd->sdMm);
}

bool has(const Measurement& m, Remark remark) {
    return std::find(m.remarks.begin(), m.remarks.end(), remark) != m.remarks.end();
}

void widen(Estimate& estimate, double share) {
    if (estimate.known()) estimate.sdRandom = std::hypot(estimate.sdRandom, share * std::abs(estimate.value));
}

/// An outline that is not to be trusted is off by a fin or a fold: no interval made of pixels holds that. Of ten large
/// rendered animals with a doubtful outline depth was off by 9 to 26 %, length by 4 to 28 %. Walked from the wrong end,
/// everything between the two tips is sought in the wrong place.
void widenForDoubt(Measurement& m) {
    const bool doubtful = has(m, Remark::OutlineDoubtful);
    if (!doubtful && !has(m, Remark::HeadEndGuessed)) return;
    // A straight-bodied fish is as long from either end; a seahorse's length turns at the ring.
    if (doubtful || m.shape == Shape::Seahorse) widen(m.standardLengthMm, kDoubtfulLength);
    for (Estimate Measurement::*length :
         {&Measurement::heightMm, &Measurement::headLengthMm, &Measurement::trunkLengthMm, &Measurement::tailLengthMm})
        widen(m.*length, kDoubtfulLength);
    for (Estimate Measurement::*across : {&Measurement::trunkDepthMm, &Measurement::trunkWidthMm, &Measurement::girthMm,
                                          &Measurement::girthRatio, &Measurement::depthRatio})
        widen(m.*across, kDoubtfulDepth);
    if (m.bellyHollowPercent.known())
        m.bellyHollowPercent.sdRandom = std::hypot(m.bellyHollowPercent.sdRandom, 100.0 * kDoubtfulDepth);
}

void measureHeight(Measurement& m, const Seen& seen, const Anatomy& anatomy, const Stations& at) {
    const auto& [body, pitch, scale] = seen;
    if (m.shape != Shape::Seahorse || !anatomy.landmarks.coronet || !at.headEnd || !at.tailEnd) return;
    const AnimalPoint coronet = scale.animalFromPixel(anatomy.landmarks.coronet->atPx);
    const AnimalPoint ring = scale.animalFromPixel(anatomy.landmarks.headEnd->atPx);
    const double trunkMm =
        at.trunkEnd ? at.trunkEnd->alongMm - at.headEnd->alongMm : 0.3 * (at.tailEnd->alongMm - at.headEnd->alongMm);
    const auto onward = std::lower_bound(body.along.begin(), body.along.end(), at.headEnd->alongMm + 0.4 * trunkMm);
    const AnimalPoint down = body.spine[static_cast<std::size_t>(onward - body.along.begin())] - ring;
    const double above = -dot(coronet - ring, down) / std::max(norm(down), 1e-9);
    const double tipSd = anatomy.landmarks.coronet->sdAlongPx * scale.mmPerPx(anatomy.landmarks.coronet->atPx);
    const double pitchSd =
        pitch.sdOf([&](const BodyInMm& b) { return b.alongAt(at.tailEnd->alongPx) - b.alongAt(at.headEnd->alongPx); });
    const double ownSd = std::hypot(std::hypot(0.8 * at.headEnd->sdMm, tipSd), pitchSd);
    m.heightMm = lengthEstimate(above + at.tailEnd->alongMm - at.headEnd->alongMm, ownSd, scale);
}

/// Precondition: the trunk's depth is known.
void measureBelly(Measurement& m, const Seen& seen, const Outline& outline, const Anatomy& anatomy,
                  const Stations& at) {
    if (!anatomy.landmarks.ventralKnown) return;
    const bool hidden = m.shape == Shape::Seahorse && norm(anatomy.ringToBellyPx) > 0.0;
    const PixelPoint throat = anatomy.landmarks.headEnd->atPx + anatomy.ringToBellyPx;
    const auto hollow = [&](double from, double to) {
        return hollowOf(seen.body, from, to, anatomy.landmarks.ventralOnLeft,
                        hidden ? std::optional(seen.scale.animalFromPixel(throat)) : std::nullopt);
    };
    const double from = at.headEnd->alongMm;
    // A straight-bodied fish's outline steps in behind the vent: the line ends just before that.
    const double before = m.shape == Shape::Seahorse ? 0.0 : kBeforeVent * (at.trunkEnd->alongMm - from);
    const double to = at.trunkEnd->alongMm - before;
    const Hollow deepest = hollow(from, to);
    if (!std::isfinite(deepest.mm)) return;
    const double byFrom = 0.5 * (hollow(from + at.headEnd->sdMm, to).mm - hollow(from - at.headEnd->sdMm, to).mm);
    const double byTo = 0.5 * (hollow(from, to + at.trunkEnd->sdMm).mm - hollow(from, to - at.trunkEnd->sdMm).mm);
    const double percent = 100.0 / m.trunkDepthMm.value;
    m.bellyHollowPercent.value = percent * deepest.mm;
    // A point and the middle between two others, each an edge of its own; scale and pitch go with the depth.
    const double edgesMm = std::sqrt(1.5) * edgeSdPx(outline) * seen.scale.mmPerPx(anatomy.landmarks.headEnd->atPx);
    m.bellyHollowPercent.sdRandom = std::hypot(percent * std::hypot(byFrom, byTo, edgesMm), kHollowSkinPercent);
    // A seahorse's head hangs over the first ventral point: it is taken to be as far from the ring as the back.
    if (hidden) m.bellyHollowPercent.sdRandom = std::hypot(m.bellyHollowPercent.sdRandom, kHiddenThroatPercent);
    // An outline that strays as far to the other side may as well be told by that: the interval holds both.
    const double apart = percent * (std::abs(deepest.mm) - std::abs(deepest.otherMm));
    if (apart < kToldApartSds * m.bellyHollowPercent.sdRandom) {
        const double both = percent * std::abs(deepest.mm - deepest.otherMm) / kSdsInHalf95;
        m.bellyHollowPercent.sdRandom = std::hypot(m.bellyHollowPercent.sdRandom, both);
    }
}

void measureTrunk(Measurement& m, const Seen& seen, const Outline& outline, const Anatomy& anatomy,
                  const Stations& at) {
    const auto& [body, pitch, scale] = seen;
    if (!at.headEnd || !at.trunkEnd) return;
    const TrunkDepth greatest = greatestDepth(body, at.headEnd->alongMm, at.trunkEnd->alongMm);
    if (greatest.depthMm <= 0.0) return;
    const double trunkMm = at.trunkEnd->alongMm - at.headEnd->alongMm;
    if (greatestStepMm(body, at.headEnd->alongMm + 0.2 * trunkMm, at.trunkEnd->alongMm - 0.08 * trunkMm) >
        kFinStep * greatest.depthMm) {
        addRemark(m.remarks, Remark::OutlineDoubtful);
    }
    const double mmPerPx = scale.mmPerPx(anatomy.landmarks.headEnd->atPx);
    const auto deepest = static_cast<std::size_t>(
        std::lower_bound(body.along.begin(), body.along.end(), greatest.alongMm) - body.along.begin());
    const double pitchSd = pitch.sdOf([&](const BodyInMm& b) { return b.depth[deepest]; });
    const Estimate depth = depthEstimate(greatest.depthMm, pitchSd, outline, mmPerPx, scale);
    if (turnDeg(body, at.headEnd->alongMm, at.trunkEnd->alongMm) > kTooBentDeg) addRemark(m.remarks, Remark::TooBent);
    if (m.view == View::Front || m.view == View::Above) {
        m.trunkWidthMm = depth;
        return;
    }
    m.trunkDepthMm = depth;
    m.girthMm = girthFromShape(depth, m.shape);
    addRemark(m.remarks, Remark::WidthFromShape);
    if (m.standardLengthMm.known()) {
        m.girthRatio = ratioOf(m.girthMm, m.standardLengthMm, scale);
        m.depthRatio = ratioOf(m.trunkDepthMm, m.standardLengthMm, scale);
    }
    measureBelly(m, seen, outline, anatomy, at);
}

void refuseWithoutMain(Measurement& m, const Anatomy& anatomy) {
    if (m.measured()) return;
    if (anatomy.midline.closedCoil) {
        m.refusal =
            Refusal{"tail-closed", "The tail closes on itself and hides length. Wait until it opens by itself."};
    } else {
        m.refusal = Refusal{"landmarks-missing", "The landmarks of the main measure were not found. Set them by hand."};
    }
}

}  // namespace

Measurement withSecondView(const Measurement& side, const Estimate& trunkWidthMm, const Scale& scale) {
    Measurement both = side;
    if (!trunkWidthMm.known() || !side.trunkDepthMm.known()) return both;
    both.trunkWidthMm = trunkWidthMm;
    both.girthMm = girthFromWidth(side.trunkDepthMm, trunkWidthMm);
    if (both.standardLengthMm.known()) both.girthRatio = ratioOf(both.girthMm, both.standardLengthMm, scale);
    std::erase(both.remarks, Remark::WidthFromShape);
    addRemark(both.remarks, Remark::WidthFromSecondView);
    return both;
}

Measurement measureAnimal(const Outline& outline, const Anatomy& anatomy, const Scale& scale,
                          const MeasureOptions& options) {
    Measurement m;
    m.shape = anatomy.shape;
    m.view = options.view;
    m.protocol = anatomy.shape == Shape::Seahorse ? "lourie-1999" : "dawson-1985";
    for (const auto* list : {&outline.remarks, &anatomy.remarks, &scale.remarks()}) {
        for (const Remark remark : *list) addRemark(m.remarks, remark);
    }
    if (has(m, Remark::CutOff)) {
        // Landmarks by proportion mean nothing on part of a body.
        m.refusal =
            Refusal{"cut-off", "The animal reaches the edge of the photo or of the plate. Centre it and repeat."};
        return m;
    }
    if (anatomy.midline.spinePx.size() < 4) {
        refuseWithoutMain(m, anatomy);
        return m;
    }
    const Sweep sweep = sweepOf(outline, anatomy);
    if (!anatomy.midline.closedCoil && (sweep.unsweptShare > kNotOneBody || sweep.endsEarly)) {
        addRemark(m.remarks, Remark::OutlineDoubtful);
        m.refusal = Refusal{"not-one-body",
                            "The outline is not one body: animals cross or touch, or something hangs on one. "
                            "Take them apart and repeat."};
        return m;
    }
    const BodyInMm body = bodyInMm(anatomy.midline, scale);
    const auto place = [&](const std::optional<Landmark>& mark) { return placeOf(body, anatomy.midline, mark, scale); };
    const Landmarks& marks = anatomy.landmarks;
    const Stations at{place(marks.snoutTip), place(marks.headEnd), place(marks.trunkEnd), place(marks.tailEnd)};
    const PixelPoint middle = anatomy.midline.spinePx[anatomy.midline.spinePx.size() / 2];
    const PitchDoubt pitch(body, relativePerDepthMm(scale, options.distanceFromPlateMm, middle));
    const Seen seen{body, pitch, scale};
    measureLengths(m, seen, at);
    widenForRing(m, at);
    measureHeight(m, seen, anatomy, at);
    measureTrunk(m, seen, outline, anatomy, at);
    for (const Remark remark : photoChecks(outline, anatomy)) addRemark(m.remarks, remark);
    widenForDoubt(m);
    refuseWithoutMain(m, anatomy);
    return m;
}

}  // namespace ringrule
