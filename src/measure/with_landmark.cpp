// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "ringrule/geometry/polyline.h"
#include "ringrule/measure/measure.h"

namespace ringrule {
namespace {

constexpr double kHandSdPx = 1.5;  ///< how well a person sets a point on a photo; common practice, no source

/// Drops the stations before an arc length and starts the line at `tip`.
void startAt(Midline& midline, PixelPoint tip) {
    const auto onLine = project<PixelFrame>(midline.spinePx, tip);
    const std::vector<double> alongs = arcLengths<PixelFrame>(midline.spinePx);
    const bool beyond = onLine.along <= 1e-9;
    std::size_t keep = 0;
    while (!beyond && keep + 4 < alongs.size() && alongs[keep] <= onLine.along) ++keep;
    const auto cut = static_cast<std::ptrdiff_t>(keep);
    midline.spinePx.erase(midline.spinePx.begin(), midline.spinePx.begin() + cut);
    midline.leftHalfWidthPx.erase(midline.leftHalfWidthPx.begin(), midline.leftHalfWidthPx.begin() + cut);
    midline.rightHalfWidthPx.erase(midline.rightHalfWidthPx.begin(), midline.rightHalfWidthPx.begin() + cut);
    midline.spinePx.insert(midline.spinePx.begin(), tip);
    midline.leftHalfWidthPx.insert(midline.leftHalfWidthPx.begin(), 0.0);
    midline.rightHalfWidthPx.insert(midline.rightHalfWidthPx.begin(), 0.0);
}

void carryLineTo(Midline& midline, PixelPoint tip, bool front) {
    if (front) {
        startAt(midline, tip);
        return;
    }
    midline = reversed(midline);
    startAt(midline, tip);
    midline = reversed(midline);
}

}  // namespace

std::optional<Landmark>& landmarkIn(Landmarks& marks, LandmarkName name) {
    switch (name) {
        case LandmarkName::SnoutTip:
            return marks.snoutTip;
        case LandmarkName::Coronet:
            return marks.coronet;
        case LandmarkName::HeadEnd:
            return marks.headEnd;
        case LandmarkName::TrunkEnd:
            return marks.trunkEnd;
        case LandmarkName::TailEnd:
            break;
    }
    return marks.tailEnd;
}

Anatomy withLandmark(const Anatomy& anatomy, LandmarkName name, PixelPoint atPx) {
    Anatomy moved = anatomy;
    const bool tip = name == LandmarkName::SnoutTip || name == LandmarkName::TailEnd;
    PixelPoint at = atPx;
    if (tip && moved.midline.spinePx.size() >= 6) {
        carryLineTo(moved.midline, atPx, name == LandmarkName::SnoutTip);
    } else if (!tip && name != LandmarkName::Coronet && moved.midline.spinePx.size() >= 2) {
        at = project<PixelFrame>(moved.midline.spinePx, atPx).at;
    }
    landmarkIn(moved.landmarks, name) = Landmark{at, kHandSdPx, true};
    if (std::find(moved.remarks.begin(), moved.remarks.end(), Remark::MovedByHand) == moved.remarks.end()) {
        moved.remarks.push_back(Remark::MovedByHand);
    }
    return moved;
}

}  // namespace ringrule
