// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/outline/find_in_box.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

#include "outline/edge_path.h"
#include "outline/loop.h"
#include "outline/tone.h"
#include "ringrule/geometry/polygon.h"

namespace ringrule {
namespace {

constexpr double kSurround = 0.25;  ///< of the box's sides: what lies that far outside shows the background
constexpr int kLongestPx = 320;     ///< side of the picture in which colours are told apart
constexpr int kRounds = 4;
constexpr double kEvenSpread = 0.12;    ///< of its value: a background that varies less is even
constexpr double kDeepestShadow = 0.8;  ///< of the background's value; in light 0.6
constexpr double kShadowTint = 0.06;    ///< most that the colours' shares may lie apart
constexpr double kLeastShare = 0.02;    ///< of the box: less is no animal …
constexpr double kMostShare = 0.97;     ///< … and more is the background itself

struct Part {
    cv::Mat picture;  ///< reduced, BGR
    cv::Rect boxPx;   ///< in the reduced picture
    cv::Point originPx;
    double factor = 1.0;

    [[nodiscard]] PixelPoint inPhoto(cv::Point at) const {
        return {originPx.x + (at.x + 0.5) * factor - 0.5, originPx.y + (at.y + 0.5) * factor - 0.5};
    }
};

cv::Mat colourOf(const Photo& photo) {
    if (!photo.encoded.empty()) {
        if (cv::Mat colour = decodeColour(photo); colour.size() == photo.grey.size()) return colour;
    }
    cv::Mat colour;
    cv::cvtColor(photo.grey, colour, cv::COLOR_GRAY2BGR);
    return colour;
}

Part partAround(const Photo& photo, const cv::Rect& box) {
    const int wide = std::max(8, static_cast<int>(kSurround * box.width));
    const int high = std::max(8, static_cast<int>(kSurround * box.height));
    const cv::Rect around = cv::Rect(box.x - wide, box.y - high, box.width + 2 * wide, box.height + 2 * high) &
                            cv::Rect({0, 0}, photo.grey.size());
    Part part;
    part.originPx = around.tl();
    part.factor = std::max(1.0, static_cast<double>(std::max(around.width, around.height)) / kLongestPx);
    const auto reduced = [&](int value) { return static_cast<int>(std::lround(value / part.factor)); };
    cv::resize(colourOf(photo)(around), part.picture, {reduced(around.width), reduced(around.height)}, 0.0, 0.0,
               cv::INTER_AREA);
    part.boxPx =
        cv::Rect(reduced(box.x - around.x), reduced(box.y - around.y), reduced(box.width), reduced(box.height)) &
        cv::Rect({1, 1}, part.picture.size() - cv::Size(2, 2));
    return part;
}

/// Marks as background, before an even background, what only is darker than it and of its colour: the animal's shadow.
void markShadow(const Part& part, cv::Mat& mask) {
    cv::Mat1b around(part.picture.size(), static_cast<unsigned char>(255));
    around(part.boxPx).setTo(0);
    cv::Scalar mean;
    cv::Scalar spread;
    cv::meanStdDev(part.picture, mean, spread, around);
    for (int c = 0; c < 3; ++c) {
        if (spread[c] > kEvenSpread * mean[c]) return;
    }
    for (int y = 0; y < mask.rows; ++y) {
        for (int x = 0; x < mask.cols; ++x) {
            const auto& pixel = part.picture.at<cv::Vec3b>(y, x);
            const cv::Vec3d share(pixel[0] / mean[0], pixel[1] / mean[1], pixel[2] / mean[2]);
            const auto [least, most] = std::minmax({share[0], share[1], share[2]});
            if (least > kDeepestShadow && most - least < kShadowTint) mask.at<unsigned char>(y, x) = cv::GC_BGD;
        }
    }
}

/// The largest contour of what GrabCut counts as foreground.
std::vector<cv::Point> foregroundIn(const Part& part) {
    cv::Mat mask;
    cv::Mat background;
    cv::Mat foreground;
    cv::theRNG().state = 1;  // its clusters start from random centres: the same photo gives the same outline
    mask = cv::Mat(part.picture.size(), CV_8UC1, cv::Scalar(cv::GC_BGD));
    mask(part.boxPx).setTo(cv::GC_PR_FGD);
    markShadow(part, mask);
    const int open = cv::countNonZero(mask == cv::GC_PR_FGD);
    if (open < kLeastShare * part.boxPx.area()) return {};
    cv::grabCut(part.picture, mask, part.boxPx, background, foreground, kRounds, cv::GC_INIT_WITH_MASK);
    cv::Mat1b animal;
    cv::Mat1b sure;
    cv::compare(mask, cv::GC_PR_FGD, animal, cv::CMP_EQ);
    cv::compare(mask, cv::GC_FGD, sure, cv::CMP_EQ);
    animal |= sure;
    std::vector<std::vector<cv::Point>> contours;
    cv::findContours(animal, contours, cv::RETR_EXTERNAL, cv::CHAIN_APPROX_NONE);
    std::vector<cv::Point> largest;
    double most = 0.0;
    for (auto& contour : contours) {
        if (const double area = cv::contourArea(contour); area > most) most = area, largest = contour;
    }
    return largest;
}

}  // namespace

Outcome<Outline> findOutlineIn(const Photo& photo, const DrawnBox& box) {
    const Refusal none{"cannot-separate", "What is in the box cannot be told from what surrounds it. Trace its edge."};
    const cv::Rect drawn = cv::Rect(cv::Point(cvRound(box.topLeftPx.x), cvRound(box.topLeftPx.y)),
                                    cv::Point(cvRound(box.bottomRightPx.x), cvRound(box.bottomRightPx.y))) &
                           cv::Rect({0, 0}, photo.grey.size());
    if (drawn.width < 12 || drawn.height < 12) return none;
    const Part part = partAround(photo, drawn);
    if (part.boxPx.width < 8 || part.boxPx.height < 8 || part.boxPx.area() >= part.picture.size().area()) return none;
    const std::vector<cv::Point> contour = foregroundIn(part);
    const double share = contour.size() < 8 ? 0.0 : cv::contourArea(contour) / part.boxPx.area();
    if (share < kLeastShare || share > kMostShare) return none;
    std::vector<PixelPoint> rough;
    rough.reserve(contour.size() + 1);
    for (const cv::Point at : contour) rough.push_back(part.inPhoto(at));
    if (signedArea<PixelFrame>(rough) < 0.0) std::reverse(rough.begin(), rough.end());
    rough.push_back(rough.front());
    EdgePathOptions options;
    options.reachPx = 2.5 + part.factor;
    std::vector<PixelPoint> near = onEdge(photo.grey, photoTone(), rough, options);
    near.pop_back();
    rough.pop_back();
    Outline outline;
    outline.boundaryPx = crossesItself(near) ? rough : near;
    return drawnByHand(std::move(outline), perimeter<PixelFrame>(rough));
}

}  // namespace ringrule
