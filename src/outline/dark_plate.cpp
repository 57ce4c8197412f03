// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/dark_plate.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace ringrule {
namespace {

constexpr double kDarkShare = 0.4;      ///< of the white round the markers: a plate darker than this is a dark one
constexpr double kPatchReach = 0.45;    ///< of a card marker's side: how far its quiet zone reaches on a dark plate
constexpr double kCardFaceReach = 5.0;  ///< of a card marker's side: how far a card's white face reaches
constexpr float kLeastSpan = 0.02F;     ///< of light, between the plate and the lightest place
constexpr float kLeastOverPlate = 1.35F;
constexpr float kFloorShare = 0.4F;  ///< of the plate's light: below this only noise is left to tell apart

float quantileWhere(const cv::Mat1f& light, const cv::Mat1b& mask, double share) {
    std::vector<float> values;
    for (int y = 0; y < light.rows; y += 3) {
        for (int x = 0; x < light.cols; x += 3) {
            if (mask(y, x) != 0) values.push_back(light(y, x));
        }
    }
    if (values.empty()) return 0.0F;
    const auto at = values.begin() + static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
    std::nth_element(values.begin(), at, values.end());
    return *at;
}

cv::Mat1b groundOf(const PlateRegion& region) {
    cv::Mat1b ground = region.plate.clone();
    ground.setTo(0, region.marks);
    ground.setTo(0, region.rim);
    return ground;
}

/// Marks grown to where a piece that hangs on them is still theirs.
cv::Mat1b reachOfMarks(const PlateRegion& region) {
    cv::Mat1b reach;
    double side = 0.0;
    cv::Mat1i labels;
    cv::Mat stats;
    cv::Mat centroids;
    const int count = cv::connectedComponentsWithStats(region.marks, labels, stats, centroids, 8, CV_32S);
    for (int label = 1; label < count; ++label) {
        side = std::max(side, std::sqrt(static_cast<double>(stats.at<int>(label, cv::CC_STAT_AREA))));
    }
    const int grow = 2 * static_cast<int>(std::lround(kPatchReach * side)) / 2 + 1;
    cv::dilate(region.marks, reach, cv::getStructuringElement(cv::MORPH_RECT, {grow, grow}));
    for (const auto& card : region.cards) {
        const double reachPx = kCardFaceReach * cv::norm(card[1] - card[0]);
        const cv::Point2d middle = (card[0] + card[1] + card[2] + card[3]) / 4.0;
        cv::circle(reach, {cvRound(middle.x), cvRound(middle.y)}, cvRound(reachPx), cv::Scalar(255), cv::FILLED);
    }
    return reach;
}

}  // namespace

bool plateIsDark(const Reduced& coarse, const PlateRegion& region) {
    const float white = quantileWhere(coarse.light, region.marks, 0.9);
    const float ground = quantileWhere(coarse.light, groundOf(region), 0.5);
    return static_cast<double>(ground) < kDarkShare * static_cast<double>(white);
}

PlateRegion withWhitePatches(const Reduced& coarse, PlateRegion region) {
    const float white = quantileWhere(coarse.light, region.marks, 0.9);
    const float ground = quantileWhere(coarse.light, groundOf(region), 0.5);
    cv::Mat1b pale;
    cv::compare(coarse.light, static_cast<double>(0.5F * (white + ground)), pale, cv::CMP_GT);
    const cv::Mat1b reach = reachOfMarks(region);
    pale &= reach;
    pale |= region.marks;
    cv::Mat1i labels;
    cv::Mat1b patches(pale.size(), static_cast<unsigned char>(0));
    const int count = cv::connectedComponents(pale, labels, 8, CV_32S);
    std::vector<bool> ofMark(static_cast<std::size_t>(count), false);
    for (int y = 0; y < labels.rows; ++y) {
        for (int x = 0; x < labels.cols; ++x) {
            if (region.marks(y, x) != 0) ofMark[static_cast<std::size_t>(labels(y, x))] = true;
        }
    }
    for (int y = 0; y < labels.rows; ++y) {
        for (int x = 0; x < labels.cols; ++x) {
            if (labels(y, x) > 0 && ofMark[static_cast<std::size_t>(labels(y, x))]) patches(y, x) = 255;
        }
    }
    // The lens spreads a white patch by a pixel or two.
    cv::dilate(patches, patches, cv::Mat1b::ones(5, 5));
    region.marks = patches;
    return region;
}

UpturnedTones upturnedTones(const Reduced& coarse, const PlateRegion& region) {
    const cv::Mat1b ground = groundOf(region);
    cv::Mat1f smooth;
    cv::blur(coarse.light, smooth, {3, 3});
    double lightest = 0.0;
    cv::minMaxLoc(smooth, nullptr, &lightest, nullptr, nullptr, ground);
    const float plate = quantileWhere(coarse.light, ground, 0.5);
    const float span = std::max({static_cast<float>(lightest), kLeastOverPlate * plate, plate + kLeastSpan});
    const float floor = std::max(kFloorShare * plate, 1e-4F);
    const float whole = std::log((span + floor) / floor);
    UpturnedTones tones;
    const auto& light = photoTone().lightOf;
    std::transform(light.begin(), light.end(), tones.difference.lightOf.begin(),
                   [span](float l) { return std::max(0.0F, 1.0F - l / span); });
    std::transform(light.begin(), light.end(), tones.ratio.lightOf.begin(), [floor, whole](float l) {
        return std::max(0.0F, 1.0F - std::log((l + floor) / floor) / whole);
    });
    return tones;
}

}  // namespace ringrule
