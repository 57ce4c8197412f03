// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/plate_region.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace ringrule {
namespace {

constexpr double kEdgeMm = 0.6;       ///< rim that may show the plate's cut edge
constexpr double kPrintShare = 0.10;  ///< of the plate's shorter side: where rulers and lettering are looked for
constexpr double kQuietShare = 0.10;  ///< of a marker's side
/// Of the plate's shorter side: ticks and numbers of the millimetre scales on the plates that Ringrule prints
/// (`PlateRuler::stripMm`, 7 mm on a side of 120), with what the lens spreads.
constexpr double kScaleShare = 7.4 / 120.0;
constexpr double kNarrowestScaleMm = 0.6 * 7.4;  ///< there they stop shrinking with the plate …
constexpr double kWidestScaleMm = 2.5 * 7.4;     ///< … and this holds a bench plate enlarged to half a metre

/// An upright rectangle on the plate, through the lens.
std::vector<PixelPoint> rectangle(const Scale& scale, double left, double top, double right, double bottom) {
    const std::array<PlatePoint, 4> corners{{{left, top}, {right, top}, {right, bottom}, {left, bottom}}};
    std::vector<PixelPoint> outline;
    outline.reserve(48);
    for (std::size_t side = 0; side < 4; ++side) {
        const PlatePoint from = corners[side];
        const PlatePoint to = corners[(side + 1) % 4];
        for (int i = 0; i < 12; ++i) outline.push_back(scale.pixelFromPlate(from + (to - from) * (i / 12.0)));
    }
    return outline;
}

/// The plate's outline, drawn in by `insetMm`, through the lens.
std::vector<PixelPoint> plateOutline(const Box& box, const Scale& scale, double insetMm) {
    return rectangle(scale, insetMm, insetMm, box.plate.widthMm - insetMm, box.plate.heightMm - insetMm);
}

/// How wide the strips of the millimetre scales are at most: always within the rim.
double scaleStripMm(double shorterSideMm, double rimMm) {
    return std::min(rimMm, std::clamp(kScaleShare * shorterSideMm, kNarrowestScaleMm, kWidestScaleMm));
}

void fill(cv::Mat1b& mask, const std::vector<cv::Point2d>& polygon, unsigned char value) {
    std::vector<cv::Point> whole;
    whole.reserve(polygon.size());
    for (const cv::Point2d& point : polygon) whole.emplace_back(cvRound(point.x), cvRound(point.y));
    if (whole.size() >= 3) cv::fillPoly(mask, std::vector<std::vector<cv::Point>>{whole}, cv::Scalar(value));
}

std::vector<cv::Point2d> inPicture(const Reduced& picture, const std::vector<PixelPoint>& outline) {
    std::vector<cv::Point2d> reduced;
    reduced.reserve(outline.size());
    for (const PixelPoint point : outline) reduced.push_back(picture.reducedFromPhoto(point));
    return reduced;
}

/// A marker's square, each side moved outward by a share of its length.
std::vector<cv::Point2d> grown(const Reduced& picture, const FoundMarker& marker, double left, double top, double right,
                               double bottom) {
    const auto& c = marker.cornersPx;
    const PixelPoint x = (c[1] - c[0] + c[2] - c[3]) * 0.5;
    const PixelPoint y = (c[3] - c[0] + c[2] - c[1]) * 0.5;
    return inPicture(picture, {c[0] - x * left - y * top, c[1] + x * right - y * top, c[2] + x * right + y * bottom,
                               c[3] - x * left + y * bottom});
}

}  // namespace

cv::Rect plateBounds(const cv::Mat& grey, const Box& box, const Scale& scale) {
    double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
    for (const PixelPoint at : plateOutline(box, scale, 0.0)) {
        left = std::min(left, at.x), right = std::max(right, at.x);
        top = std::min(top, at.y), bottom = std::max(bottom, at.y);
    }
    const auto bounded = [](double value, int most) { return static_cast<int>(std::clamp(value, 0.0, 1.0 * most)); };
    const cv::Point from(bounded(left, grey.cols), bounded(top, grey.rows));
    const cv::Point to(bounded(std::ceil(right) + 1.0, grey.cols), bounded(std::ceil(bottom) + 1.0, grey.rows));
    return {from, to};
}

PlateRegion plateRegion(const Reduced& picture, const Box& box, const FoundPlate& plate, const Scale& scale) {
    PlateRegion region;
    region.plate = cv::Mat1b(picture.light.size(), static_cast<unsigned char>(0));
    fill(region.plate, inPicture(picture, plateOutline(box, scale, kEdgeMm)), 255);
    region.rim = region.plate.clone();
    const double printMm = kPrintShare * std::min(box.plate.widthMm, box.plate.heightMm);
    fill(region.rim, inPicture(picture, plateOutline(box, scale, printMm)), 0);
    const double stripMm = scaleStripMm(std::min(box.plate.widthMm, box.plate.heightMm), printMm);
    region.scales = region.plate.clone();
    fill(region.scales,
         inPicture(picture, rectangle(scale, stripMm, 0.0, box.plate.widthMm, box.plate.heightMm - stripMm)), 0);
    region.marks = cv::Mat1b(picture.light.size(), static_cast<unsigned char>(0));
    for (const PlateMarker& marker : box.plate.markers) {
        const double half = (0.5 + kQuietShare) * marker.sideMm;
        std::vector<PixelPoint> square;
        for (const auto& [x, y] : {std::pair{-1, -1}, std::pair{1, -1}, std::pair{1, 1}, std::pair{-1, 1}}) {
            square.push_back(scale.pixelFromPlate(marker.centreMm + PlatePoint{x * half, y * half}));
        }
        fill(region.marks, inPicture(picture, square), 255);
    }
    for (const FoundMarker& card : plate.cards) {
        fill(region.marks, grown(picture, card, kQuietShare, kQuietShare, kQuietShare, kQuietShare), 255);
        region.cards.push_back(grown(picture, card, 0.0, 0.0, 0.0, 0.0));
    }
    return region;
}

}  // namespace ringrule
