// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/photo_checks.h"

#include <algorithm>
#include <cmath>

#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

constexpr double kSmallLengthPx = 400.0;
constexpr double kSmallDepthPx = 40.0;
constexpr double kBlurredShare = 0.10;    ///< sigma of the edge against the greatest depth
constexpr double kSweptTolerance = 0.02;  ///< a straight fish's outline is its swept body to about 1 %

double greatestWidthPx(const Midline& midline) {
    double greatest = 0.0;
    for (std::size_t i = 0; i < midline.spinePx.size(); ++i) {
        greatest = std::max(greatest, midline.leftHalfWidthPx[i] + midline.rightHalfWidthPx[i]);
    }
    return greatest;
}

}  // namespace

void addRemark(std::vector<Remark>& remarks, Remark remark) {
    if (std::find(remarks.begin(), remarks.end(), remark) == remarks.end()) remarks.push_back(remark);
}

double sweptShare(const Outline& outline, const Midline& midline) {
    double area = 0.0;
    for (std::size_t i = 1; i < midline.spinePx.size(); ++i) {
        const double before = midline.leftHalfWidthPx[i - 1] + midline.rightHalfWidthPx[i - 1];
        const double after = midline.leftHalfWidthPx[i] + midline.rightHalfWidthPx[i];
        area += 0.5 * (before + after) * distance(midline.spinePx[i - 1], midline.spinePx[i]);
    }
    return outline.areaPx2 > 0.0 ? area / outline.areaPx2 : 0.0;
}

std::vector<Remark> photoChecks(const Outline& outline, const Anatomy& anatomy) {
    std::vector<Remark> remarks;
    const double depthPx = greatestWidthPx(anatomy.midline);
    if (anatomy.midline.lengthPx() < kSmallLengthPx || depthPx < kSmallDepthPx) remarks.push_back(Remark::SmallInFrame);
    if (outline.edgeBlurPx > kBlurredShare * depthPx) remarks.push_back(Remark::Blurred);
    if (anatomy.shape != Shape::Seahorse && !anatomy.midline.closedCoil &&
        std::abs(sweptShare(outline, anatomy.midline) - 1.0) > kSweptTolerance) {
        remarks.push_back(Remark::OutlineDoubtful);
    }
    return remarks;
}

}  // namespace ringrule
