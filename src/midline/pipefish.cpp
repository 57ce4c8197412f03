// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "midline/body_plan.h"
#include "midline/fin_base.h"
#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

// Usual proportions, used where the outline shows no feature. Head: common practice for Syngnathus, no source. Snout to
// vent: 172 Syngnathus floridae of the Flanagan lab's pipefish_sbge data (females 0.449, males 0.423, sd 0.022 each),
// and as much again for what other species differ by: no source.
constexpr Station kUsualHead{0.20, 0.025, false};
constexpr Station kUsualTrunkEnd{0.436, 0.036, false};
constexpr double kEyeInHead = 0.63;  ///< place of the eye's centre, share of the head: common practice, no source
constexpr double kTrunkFrom = 0.36, kTrunkTo = 0.62;  ///< shares of the length between which the vent is sought …
constexpr double kVentFrom = 0.38, kVentTo = 0.56;    ///< … and may lie
constexpr double kHalfStep = 0.011;                   ///< narrowing is taken over twice this share of the length
/// Roughnesses of the outline: a narrowing must be this much deeper, or it is the outline's. On 40 grey outlines of
/// rendered pipefish the vent's was 6.8 to 18, on 38 rough ones taken from colour alone 1.3 to 7.
constexpr double kClearVent = 5.0;
constexpr double kClearGill = 3.0;  ///< and of the gill cover's

double lengthSteps(const WidthProfile& profile) {
    return static_cast<double>(profile.widthPx.size() - 1);
}

double medianOf(std::vector<double>& values) {
    const auto middle = values.begin() + std::ssize(values) / 2;
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

/// The narrowing at every station along the trunk, over two per cent of the length.
std::vector<double> dropsAlong(const WidthProfile& profile) {
    std::vector<double> drops;
    for (double share = kTrunkFrom; share <= kTrunkTo; share += 1.0 / lengthSteps(profile))
        drops.push_back(profile.at(share - kHalfStep) - profile.at(share + kHalfStep));
    return drops;
}

/// Standard deviation of the narrowing from station to station, by their quartiles: rings, and what the outline is off
/// by.
double roughnessPx(std::vector<double> drops) {
    constexpr double kSdsToQuartile = 0.6745;
    const double usual = medianOf(drops);
    for (double& drop : drops) drop = std::abs(drop - usual);
    return medianOf(drops) / kSdsToQuartile;
}

/// The rear of the opercle: the gill cover bulges, the body behind it is narrower again.
Station headEndOf(const WidthProfile& profile, const EyeSpot& eye, View view, double clearPx) {
    Station usual = kUsualHead;
    // From above the narrowest place lies behind the eyes, which bulge on both sides, and not behind the gill cover.
    if (view != View::Side) return usual;
    const bool likely = std::abs(eye.share / kEyeInHead - usual.share) < 2.4 * usual.sdShare;
    if (eye.strength > 0.6 && likely) usual = {eye.share / kEyeInHead, 0.09 * eye.share / kEyeInHead, false};
    const double from = 0.86 * usual.share;
    const double to = 1.18 * usual.share;
    double deepest = 0.0;
    Station best = usual;
    for (double share = from; share <= to; share += 1.0 / lengthSteps(profile)) {
        double before = 0.0;
        double after = 0.0;
        for (int k = 1; k <= 12; ++k) {
            before = std::max(before, profile.at(share - 0.015 * usual.share * k));
            after = std::max(after, profile.at(share + 0.03 * usual.share * k));
        }
        const double dip = std::min(before, after) - profile.at(share);
        // The gill cover's edge lies just before the narrowest place.
        if (dip > deepest) deepest = dip, best = {0.99 * share, 0.006 * usual.share, true};
    }
    return deepest > std::max(0.015 * profile.greatestPx, clearPx) ? best : usual;
}

/// The last trunk ring: behind the vent the body narrows at once.
Station trunkEndOf(const WidthProfile& profile, std::vector<double> drops, double clearPx) {
    double steepest = 0.0;
    Station best = kUsualTrunkEnd;
    for (std::size_t i = 0; i < drops.size(); ++i) {
        const double share = kTrunkFrom + static_cast<double>(i) / lengthSteps(profile);
        if (drops[i] > steepest && share > kVentFrom && share < kVentTo)
            steepest = drops[i], best = {share - 0.65 * kHalfStep, 0.0014, true};
    }
    return steepest - medianOf(drops) > std::max(0.04 * profile.greatestPx, clearPx) ? best : kUsualTrunkEnd;
}

/// The base of an opaque caudal fin: the tail's narrowest place before it widens into the fin. The tip if it never
/// does.
Station tailEndOf(const WidthProfile& profile, double fromShare, double flare) {
    double narrowest = 1e9;
    double at = 1.0;
    const double step = 1.0 / lengthSteps(profile);
    // Stations without a width at the end are a thread that was followed past the outline.
    double last = 1.0;
    while (last > fromShare && profile.at(last - step) <= 0.5) last -= step;
    for (double share = fromShare; share < last - 2.0 * step; share += step) {
        if (profile.at(share) < narrowest) narrowest = profile.at(share), at = share;
    }
    double flared = at;
    for (double share = at; share < last; share += step) {
        if (profile.at(share) > profile.at(flared)) flared = share;
    }
    if (profile.at(flared) < flare * narrowest + 1.0 || at > 1.0 - 4.0 * step) return {1.0, 0.0, false};
    // Back from the fin's widest place to where the tail's own width begins.
    double base = flared;
    while (base > at && profile.at(base) > 1.15 * narrowest + 0.4) base -= step;
    return {base, 0.004, true};
}

double tipSd(const Outline& outline, const Midline& midline) {
    const double tipPx = std::hypot(0.25, 0.3 * outline.edgeBlurPx);
    return tipPx / std::max(midline.lengthPx(), 1.0);
}

/// The same for the tail: an end too thin for an outline was followed as a thread, and where a thread ends is less
/// sure.
double tailTipSd(const Outline& outline, const Midline& midline) {
    const std::size_t before = midline.spinePx.size() - 3;
    const bool thread = midline.leftHalfWidthPx[before] + midline.rightHalfWidthPx[before] <= 0.0;
    const double threadPx = thread ? 2.0 + 1.2 * outline.edgeBlurPx : 0.0;
    return std::hypot(tipSd(outline, midline), threadPx / std::max(midline.lengthPx(), 1.0));
}

}  // namespace

Landmark landmarkAt(const Midline& midline, double share, double sdShare) {
    const std::vector<double> alongs = arcLengths<PixelFrame>(midline.spinePx);
    return {pointAt<PixelFrame>(midline.spinePx, alongs, share * alongs.back()), sdShare * alongs.back(), false};
}

Landmarks pipefishLandmarks(const Photo& photo, const Outline& outline, const Midline& midline, const EyeSpot& eye,
                            View view, std::vector<Remark>& remarks) {
    const WidthProfile profile = widthProfile(midline);
    const double tip = tipSd(outline, midline);
    const std::vector<double> drops = dropsAlong(profile);
    const double rough = roughnessPx(drops);
    const Station head = headEndOf(profile, eye, view, kClearGill * rough);
    const Station trunk = view == View::Side ? trunkEndOf(profile, drops, kClearVent * rough) : kUsualTrunkEnd;
    Station tail = tailEndOf(profile, 0.90, 1.35);
    bool finBaseSeen = false;
    if (tail.seen) {
        if (const auto bodyEnd = bodyEndInFin(photo, midline, profile, tail.share, 1.0))
            tail = {*bodyEnd, 0.0015, true}, finBaseSeen = true;
    }
    const double end = finBaseSeen ? tip : tailTipSd(outline, midline);
    Landmarks landmarks;
    landmarks.snoutTip = landmarkAt(midline, 0.0, tip);
    landmarks.headEnd = landmarkAt(midline, head.share, head.sdShare);
    landmarks.trunkEnd = landmarkAt(midline, trunk.share, trunk.sdShare);
    landmarks.tailEnd = landmarkAt(midline, tail.share, std::hypot(end, tail.sdShare));
    if (!finBaseSeen && (tail.seen || end > tip)) remarks.push_back(Remark::FinBaseUncertain);
    return landmarks;
}

Landmarks fishLandmarks(const Outline& outline, const Midline& midline, const EyeSpot& eye,
                        std::vector<Remark>& remarks) {
    const WidthProfile profile = widthProfile(midline);
    const double tip = tipSd(outline, midline);
    const Station tail = tailEndOf(profile, 0.60, 1.25);
    Landmarks landmarks;
    landmarks.snoutTip = landmarkAt(midline, 0.0, tip);
    const double head = eye.strength > 0.6 ? std::clamp(2.2 * eye.share, 0.15, 0.38) : 0.27;
    landmarks.headEnd = landmarkAt(midline, head * tail.share, 0.04);
    landmarks.trunkEnd = landmarkAt(midline, 0.62 * tail.share, 0.05);
    landmarks.tailEnd = landmarkAt(midline, tail.share, std::hypot(tip, tail.seen ? 0.012 : 0.03));
    remarks.push_back(Remark::FinBaseUncertain);
    return landmarks;
}

}  // namespace ringrule
