// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/notch.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace ringrule {
namespace {

constexpr double kWidestMouth = 1.5;  ///< of the body's half-width: mouth of the widest notch; eyes are at most as wide
constexpr double kLongestRound = 4.6;  ///< of the body's half-width: the way round it, along nine tenths of such an eye
constexpr double kDeepness = 1.45;     ///< the way round over the mouth: half a circle has 1.57
constexpr double kLeastMouthPx = 3.0;
constexpr std::size_t kMostNotches = 12;

/// The part of a closed outline from one point to another, and how much longer it is than the straight way.
struct Notch {
    std::size_t from = 0, points = 0;  ///< on from there
    double gain = 0.0;
};

/// For each point the best notch that begins there; those that bend into the body only.
std::vector<Notch> bestNotches(const std::vector<cv::Point>& outline, double halfWidthPx) {
    const std::size_t n = outline.size();
    const double turn = cv::contourArea(outline, true) < 0.0 ? -1.0 : 1.0;
    std::vector<Notch> notches;
    for (std::size_t i = 0; i < n; ++i) {
        Notch best{i, 0, 0.0};
        double way = 0.0;
        double area = 0.0;  // twice that between the outline and the straight way back, with its sign
        for (std::size_t k = 1; k < n / 2; ++k) {
            const cv::Point last = outline[(i + k - 1) % n] - outline[i];
            const cv::Point here = outline[(i + k) % n] - outline[i];
            way += cv::norm(here - last);
            area += last.cross(here);
            if (way > kLongestRound * halfWidthPx) break;
            const double mouth = cv::norm(here);
            if (mouth < kLeastMouthPx || mouth > kWidestMouth * halfWidthPx || turn * area >= 0.0) continue;
            if (const double gain = way - kDeepness * mouth; gain > best.gain) best = {i, k, gain};
        }
        if (best.points > 0) notches.push_back(best);
    }
    return notches;
}

bool overlap(const Notch& a, const Notch& b, std::size_t n) {
    return (b.from + n - a.from) % n <= a.points || (a.from + n - b.from) % n <= b.points;
}

}  // namespace

std::vector<std::vector<cv::Point>> notchesOf(const std::vector<cv::Point>& outline, double halfWidthPx) {
    const std::size_t n = outline.size();
    std::vector<Notch> notches = bestNotches(outline, halfWidthPx);
    std::sort(notches.begin(), notches.end(), [](const Notch& a, const Notch& b) { return a.gain > b.gain; });
    std::vector<Notch> kept;
    for (const Notch& notch : notches) {
        if (kept.size() == kMostNotches) break;
        if (std::none_of(kept.begin(), kept.end(), [&](const Notch& other) { return overlap(notch, other, n); }))
            kept.push_back(notch);
    }
    std::vector<std::vector<cv::Point>> rims;
    for (const Notch& notch : kept) {
        std::vector<cv::Point> rim;
        for (std::size_t k = 0; k <= notch.points; ++k) rim.push_back(outline[(notch.from + k) % n]);
        rims.push_back(std::move(rim));
    }
    return rims;
}

}  // namespace ringrule
