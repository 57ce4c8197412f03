// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/eye_gap.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <limits>
#include <utility>
#include <vector>

#include <opencv2/imgproc.hpp>

#include "outline/notch.h"

namespace ringrule {
namespace {

constexpr double kRimReach = 0.4;         ///< of the body's half-width: half of the widest break in the rim of an eye
constexpr double kWidest = 0.65;          ///< of the body's half-width: radius of the largest eye
constexpr double kRoundness = 2.2;        ///< area over that of its inscribed circle: an eye and the shade round it
constexpr double kPartedRoundness = 3.0;  // where it parts the head, the shade on both sides is in it too
constexpr double kOpenShare = 0.35;       ///< of its border: how far an eye may open to the plate …
constexpr double kPartedShare = 0.65;     ///< … and where it parts the snout from the head
constexpr double kNotchRoundness = 2.6;   ///< of half an eye: half a disc has 2
constexpr double kWidestNotch = 0.8;      ///< of the body's half-width: an eye as wide as the head of a pipefish
constexpr double kLeastNotchPx = 2.0;     ///< smaller ones are the mask's own steps
constexpr double kNeckReach = 0.15;       ///< of the body's half-width: half of the widest break beside such an eye
constexpr double kNearest = 1.3;          ///< of the filled body's half-width at the eye: from here …
constexpr double kFarthest = 2.2;         ///< … to here along the body the body must go on …
constexpr double kGoesOn = 0.6;           ///< … with this share of that half-width

/// A gap that may be an eye, in the mask's own pixels.
struct Gap {
    cv::Mat1b mask;
    cv::Point middle;
    double radiusPx = 0.0;  ///< of its inscribed circle
    bool parts = false;     ///< it parts the body
};

bool looksLikeEye(const Gap& gap, const cv::Mat1b& outside, double halfWidthPx) {
    if (gap.radiusPx > kWidest * halfWidthPx) return false;
    const double area = cv::countNonZero(gap.mask);
    if (area > (gap.parts ? kPartedRoundness : kRoundness) * CV_PI * gap.radiusPx * gap.radiusPx) return false;
    cv::Mat1b border;
    cv::dilate(gap.mask, border, cv::Mat1b::ones(3, 3));
    border.setTo(0, gap.mask);
    const double whole = cv::countNonZero(border);
    border &= outside;
    return cv::countNonZero(border) <= (gap.parts ? kPartedShare : kOpenShare) * whole;
}

/// Whether the gap, widened by `reachPx`, meets the mask.
bool meets(const cv::Mat1b& gap, const cv::Mat1b& mask, int reachPx) {
    cv::Mat1b both;
    cv::dilate(gap, both, cv::Mat1b::ones(2 * reachPx + 1, 2 * reachPx + 1));
    cv::bitwise_and(both, mask, both);
    return cv::countNonZero(both) > 0;
}

/// Whether the gap lies between two parts of the body.
bool partsBody(const cv::Mat1i& bodyParts, const cv::Mat1b& gap) {
    cv::Mat1b border;
    cv::dilate(gap, border, cv::Mat1b::ones(3, 3));
    int first = 0;
    for (int y = 0; y < border.rows; ++y) {
        for (int x = 0; x < border.cols; ++x) {
            if (border(y, x) == 0 || bodyParts(y, x) == 0) continue;
            if (first == 0) first = bodyParts(y, x);
            if (bodyParts(y, x) != first) return true;
        }
    }
    return false;
}

/// Whether the body, with the gap filled, goes on beside it about as stout as it is there.
bool bodyGoesOn(const cv::Mat1b& body, const Gap& gap) {
    cv::Mat1b filled;
    cv::bitwise_or(body, gap.mask, filled);
    cv::Mat1f depth;
    cv::distanceTransform(filled, depth, cv::DIST_L2, 3);
    const double here = static_cast<double>(depth(gap.middle));
    // Steps inside the body, counted along rows, columns and diagonals by turns: a circle comes out nearly round.
    cv::Mat1i steps(filled.size(), -1);
    std::deque<cv::Point> open{gap.middle};
    steps(gap.middle) = 0;
    const double farthest = kFarthest * here;
    while (!open.empty()) {
        const cv::Point at = open.front();
        open.pop_front();
        const double away = steps(at) * 1.1;
        if (away > farthest) return false;
        if (away > kNearest * here && static_cast<double>(depth(at)) >= kGoesOn * here) return true;
        const int reach = steps(at) % 2 == 0 ? 1 : 2;
        for (int dy = -1; dy <= 1; ++dy) {
            for (int dx = -1; dx <= 1; ++dx) {
                if (std::abs(dx) + std::abs(dy) > reach) continue;
                const cv::Point next = at + cv::Point(dx, dy);
                if (!cv::Rect({0, 0}, filled.size()).contains(next) || filled(next) == 0 || steps(next) >= 0) continue;
                steps(next) = steps(at) + 1;
                open.push_back(next);
            }
        }
    }
    return false;
}

/// What can be reached from the mask's border without crossing the body.
cv::Mat1b outsideOf(const cv::Mat1b& body) {
    cv::Mat1b framed;
    cv::copyMakeBorder(body, framed, 1, 1, 1, 1, cv::BORDER_CONSTANT, cv::Scalar(0));
    cv::floodFill(framed, {0, 0}, cv::Scalar(128));
    cv::Mat1b outside;
    cv::compare(framed(cv::Rect({1, 1}, body.size())), 128, outside, cv::CMP_EQ);
    return outside;
}

}  // namespace

cv::Mat1b fillEyes(cv::Mat1b& body, const cv::Mat1b& others, double halfWidthPx, double leastRadiusPx) {
    cv::Mat1b eyes(body.size(), static_cast<unsigned char>(0));
    const int reach = static_cast<int>(std::lround(std::max(kRimReach * halfWidthPx, leastRadiusPx + 0.5)));
    const cv::Mat disc = cv::getStructuringElement(cv::MORPH_ELLIPSE, {2 * reach + 1, 2 * reach + 1});
    cv::Mat1b closed;
    cv::morphologyEx(body, closed, cv::MORPH_CLOSE, disc);
    closed |= body;
    const cv::Mat1b outside = outsideOf(closed);
    cv::Mat1b taken;
    cv::bitwise_or(body, outside, taken);
    cv::Mat1b gaps;
    cv::compare(taken, 0, gaps, cv::CMP_EQ);
    // An iris, or a spark in the pupil, may be lighter than the threshold.
    const int spark = std::max(1, reach / 3);
    cv::morphologyEx(gaps, gaps, cv::MORPH_CLOSE,
                     cv::getStructuringElement(cv::MORPH_ELLIPSE, {2 * spark + 1, 2 * spark + 1}));
    gaps.setTo(0, outside);
    cv::Mat1i bodyParts;
    cv::connectedComponents(body, bodyParts, 8, CV_32S);
    cv::Mat1i labels;
    cv::Mat stats;
    cv::Mat centroids;
    const int count = cv::connectedComponentsWithStats(gaps, labels, stats, centroids, 8, CV_32S);
    for (int label = 1; label < count; ++label) {
        if (stats.at<int>(label, cv::CC_STAT_AREA) < CV_PI * leastRadiusPx * leastRadiusPx) continue;
        Gap gap;
        cv::compare(labels, label, gap.mask, cv::CMP_EQ);
        cv::Mat1f depth;
        cv::distanceTransform(gap.mask, depth, cv::DIST_L2, 3);
        cv::minMaxLoc(depth, nullptr, &gap.radiusPx, nullptr, &gap.middle);
        if (gap.radiusPx < leastRadiusPx || meets(gap.mask, others, reach)) continue;
        gap.parts = partsBody(bodyParts, gap.mask);
        if (looksLikeEye(gap, outside, halfWidthPx) && bodyGoesOn(body, gap)) eyes |= gap.mask;
    }
    body |= eyes;
    return eyes;
}

cv::Mat1b eyeNotches(const cv::Mat1b& body, const cv::Mat1b& others, double halfWidthPx) {
    cv::Mat1b eyes(body.size(), static_cast<unsigned char>(0));
    // Beside an eye as wide as the head, what is left of the head is a thin line and may be broken.
    const int neck = 2 * static_cast<int>(std::max(1.0, kNeckReach * halfWidthPx)) + 1;
    cv::Mat1b whole;
    cv::morphologyEx(body, whole, cv::MORPH_CLOSE, cv::getStructuringElement(cv::MORPH_ELLIPSE, {neck, neck}));
    std::vector<std::vector<cv::Point>> contours;
    cv::findContours(whole, contours, cv::RETR_EXTERNAL, cv::CHAIN_APPROX_NONE);
    if (contours.empty()) return eyes;
    const auto longest = std::max_element(contours.begin(), contours.end(),
                                          [](const auto& a, const auto& b) { return a.size() < b.size(); });
    for (const std::vector<cv::Point>& rim : notchesOf(*longest, halfWidthPx)) {
        Gap gap;
        gap.mask = cv::Mat1b(body.size(), static_cast<unsigned char>(0));
        cv::fillPoly(gap.mask, std::vector<std::vector<cv::Point>>{rim}, cv::Scalar(255));
        gap.mask.setTo(0, body);
        cv::Mat1f depth;
        cv::distanceTransform(gap.mask, depth, cv::DIST_L2, 3);
        cv::minMaxLoc(depth, nullptr, &gap.radiusPx, nullptr, &gap.middle);
        if (gap.radiusPx < kLeastNotchPx || meets(gap.mask, others, static_cast<int>(kRimReach * halfWidthPx)))
            continue;
        const bool round = cv::countNonZero(gap.mask) < kNotchRoundness * CV_PI * gap.radiusPx * gap.radiusPx;
        if (round && gap.radiusPx < kWidestNotch * halfWidthPx && bodyGoesOn(body, gap)) eyes |= gap.mask;
    }
    return eyes;
}

namespace {

constexpr double kSnoutGap = 1.6;     ///< of the body's half-width: the widest gap that an eye makes
constexpr double kSnoutGapPx = 2.0;   ///< and this much more in a coarse mask
constexpr double kLeastSnout = 0.01;  ///< of the body's area …
constexpr double kMostSnout = 0.5;    ///< … a snout has between these
constexpr double kStraight = 0.82;    ///< cosine of the widest angle between a snout and the way across the gap

struct BodyPart {
    std::vector<cv::Point> pixels;
    cv::Point2d middle;
    cv::Point2d along;  ///< unit vector of its length
};

std::vector<BodyPart> partsIn(const cv::Mat1b& body) {
    cv::Mat1i labels;
    const int count = cv::connectedComponents(body, labels, 8, CV_32S);
    std::vector<BodyPart> parts(static_cast<std::size_t>(std::max(0, count - 1)));
    for (int y = 0; y < labels.rows; ++y) {
        for (int x = 0; x < labels.cols; ++x) {
            if (labels(y, x) > 0) parts[static_cast<std::size_t>(labels(y, x) - 1)].pixels.emplace_back(x, y);
        }
    }
    for (BodyPart& part : parts) {
        double xx = 0.0, xy = 0.0, yy = 0.0;
        for (const cv::Point& at : part.pixels) part.middle += cv::Point2d(at);
        part.middle *= 1.0 / static_cast<double>(part.pixels.size());
        for (const cv::Point& at : part.pixels) {
            const cv::Point2d off = cv::Point2d(at) - part.middle;
            xx += off.x * off.x, xy += off.x * off.y, yy += off.y * off.y;
        }
        const double angle = 0.5 * std::atan2(2.0 * xy, xx - yy);
        part.along = {std::cos(angle), std::sin(angle)};
    }
    return parts;
}

/// The end of `snout` and the place of `head` that face each other: the middle of what lies nearest.
std::pair<cv::Point, cv::Point> facingOf(const BodyPart& snout, const BodyPart& head) {
    std::vector<std::pair<double, cv::Point>> nearest;
    nearest.reserve(snout.pixels.size());
    double least = std::numeric_limits<double>::max();
    for (const cv::Point& a : snout.pixels) {
        double here = std::numeric_limits<double>::max();
        cv::Point place;
        for (const cv::Point& b : head.pixels) {
            const double squared = (b - a).dot(b - a);
            if (squared < here) here = squared, place = b;
        }
        nearest.emplace_back(std::sqrt(here), place);
        least = std::min(least, nearest.back().first);
    }
    cv::Point2d from;
    cv::Point2d to;
    double count = 0.0;
    for (std::size_t i = 0; i < nearest.size(); ++i) {
        if (nearest[i].first > least + 1.0) continue;
        from += cv::Point2d(snout.pixels[i]);
        to += cv::Point2d(nearest[i].second);
        count += 1.0;
    }
    return {from * (1.0 / count), to * (1.0 / count)};
}

}  // namespace

cv::Mat1b snoutBridges(const cv::Mat1b& body, double halfWidthPx) {
    cv::Mat1b bridges(body.size(), static_cast<unsigned char>(0));
    const std::vector<BodyPart> parts = partsIn(body);
    const double widest = kSnoutGap * halfWidthPx + kSnoutGapPx;
    for (const BodyPart& head : parts) {
        const auto area = static_cast<double>(head.pixels.size());
        for (const BodyPart& snout : parts) {
            const auto share = static_cast<double>(snout.pixels.size()) / area;
            if (share < kLeastSnout || share > kMostSnout) continue;
            const auto [from, to] = facingOf(snout, head);
            const cv::Point2d across(to - from);
            const double gap = cv::norm(across);
            const cv::Point2d outward = cv::Point2d(from) - snout.middle;
            if (gap > widest || std::abs(outward.dot(snout.along)) < kStraight * cv::norm(outward)) continue;
            const cv::Point2d toHead = head.middle - snout.middle;
            if (std::abs(toHead.dot(snout.along)) < kStraight * cv::norm(toHead)) continue;
            cv::line(bridges, from, to, cv::Scalar(255), std::max(1, static_cast<int>(0.6 * halfWidthPx)));
        }
    }
    return bridges;
}

}  // namespace ringrule
