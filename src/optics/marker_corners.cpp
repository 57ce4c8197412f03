// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/marker_corners.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <tuple>
#include <utility>
#include <vector>

#include <Eigen/LU>

#include "ringrule/imaging/tone.h"

namespace ringrule {
namespace {

constexpr float kLeastContrast = 0.05F;  // of full light, between ink and paper

float lightAt(const cv::Mat& grey, PixelPoint p) {
    const auto x = static_cast<int>(p.x), y = static_cast<int>(p.y);
    const auto fx = static_cast<float>(p.x - x), fy = static_cast<float>(p.y - y);
    const std::array<float, 256>& light = lightFromCode();
    const unsigned char* upper = grey.ptr<unsigned char>(y) + x;
    const unsigned char* lower = grey.ptr<unsigned char>(y + 1) + x;
    const float above = light[upper[0]] + fx * (light[upper[1]] - light[upper[0]]);
    const float below = light[lower[0]] + fx * (light[lower[1]] - light[lower[0]]);
    return above + fy * (below - above);
}

bool inside(const cv::Mat& grey, PixelPoint p) {
    return p.x >= 0.0 && p.y >= 0.0 && p.x < grey.cols - 1 && p.y < grey.rows - 1;
}

// Light along a line across an edge, from the ink outward.
struct Profile {
    static constexpr int kMost = 129;
    std::array<float, kMost> light{};
    int count = 0;
    double stepPx = 0.0;
    float ink = 0.0F;
    float paper = 0.0F;

    [[nodiscard]] float at(int i) const { return light[static_cast<std::size_t>(i)]; }
};

std::optional<Profile> profileAcross(const cv::Mat& grey, PixelPoint middle, PixelPoint outward, double reachPx) {
    if (!inside(grey, middle - outward * reachPx) || !inside(grey, middle + outward * reachPx)) return std::nullopt;
    Profile profile;
    profile.count = std::min(Profile::kMost, 2 * std::max(3, static_cast<int>(std::lround(1.25 * reachPx))) + 1);
    profile.stepPx = 2.0 * reachPx / (profile.count - 1);
    for (int i = 0; i < profile.count; ++i)
        profile.light[static_cast<std::size_t>(i)] = lightAt(grey, middle + outward * (i * profile.stepPx - reachPx));
    const int flank = std::max(2, profile.count / 5);
    for (int i = 0; i < flank; ++i) {
        profile.ink += profile.at(i) / static_cast<float>(flank);
        profile.paper += profile.at(profile.count - 1 - i) / static_cast<float>(flank);
    }
    if (profile.paper - profile.ink < kLeastContrast) return std::nullopt;
    return profile;
}

// The sample before the rise through half-way that is nearest to the middle, or nothing.
std::optional<int> stepBefore(const Profile& profile) {
    const float half = 0.5F * (profile.ink + profile.paper);
    const int middle = profile.count / 2;
    std::optional<int> nearest;
    for (int i = 0; i + 1 < profile.count; ++i)
        if (profile.at(i) < half && profile.at(i + 1) >= half &&
            (!nearest || std::abs(i - middle) < std::abs(*nearest - middle)))
            nearest = i;
    return nearest;
}

// Offset along the outward normal of the edge; nothing where there is no such step within ±reach. The light missing
// from a full step is summed over the edge: unlike the crossing of half-way between two samples, the sum is not pulled
// toward either of them.
std::optional<double> edgeOffset(const cv::Mat& grey, PixelPoint middle, PixelPoint outward, double reachPx) {
    const auto profile = profileAcross(grey, middle, outward, reachPx);
    const auto before = profile ? stepBefore(*profile) : std::nullopt;
    if (!before) return std::nullopt;
    const int widest = std::max(2, static_cast<int>(std::lround(4.0 / profile->stepPx)));
    const int around = std::min({widest, *before, profile->count - 2 - *before});
    if (around < 1) return std::nullopt;
    double missing = 0.0;
    for (int i = *before - around; i <= *before + 1 + around; ++i)
        missing += static_cast<double>((profile->paper - profile->at(i)) / (profile->paper - profile->ink));
    return (*before - around - 0.5 + missing) * profile->stepPx - reachPx;
}

// Points on the edge from `a` to `b`, the outer tenths left out: there the corner's own blur bends the edge.
std::vector<PixelPoint> edgePoints(const cv::Mat& grey, PixelPoint a, PixelPoint b, double reachPx, int mostProfiles) {
    const double length = distance(a, b);
    const PixelPoint along = (b - a) * (1.0 / length);
    const PixelPoint outward{along.y, -along.x};
    const int profiles = std::clamp(static_cast<int>(0.4 * length), 10, mostProfiles);
    std::vector<PixelPoint> points;
    for (int i = 0; i < profiles; ++i) {
        const PixelPoint middle = a + (b - a) * (0.12 + 0.76 * i / (profiles - 1));
        if (const auto offset = edgeOffset(grey, middle, outward, reachPx))
            points.push_back(middle + outward * *offset);
    }
    if (5 * points.size() < 3 * static_cast<std::size_t>(profiles)) points.clear();
    return points;
}

// A line as normal · p = offset.
struct Line {
    Eigen::Vector2d normal;
    double offset = 0.0;
};

Line leastSquaresLine(const std::vector<Eigen::Vector2d>& points) {
    Eigen::Vector2d mean = Eigen::Vector2d::Zero();
    for (const auto& p : points) mean += p;
    mean /= static_cast<double>(points.size());
    double xx = 0.0, xy = 0.0, yy = 0.0;
    for (const auto& p : points) {
        const Eigen::Vector2d d = p - mean;
        xx += d.x() * d.x();
        xy += d.x() * d.y();
        yy += d.y() * d.y();
    }
    const double angle = 0.5 * std::atan2(2.0 * xy, xx - yy);
    const Eigen::Vector2d normal(-std::sin(angle), std::cos(angle));
    return {normal, normal.dot(mean)};
}

std::vector<double> missesOf(const std::vector<Eigen::Vector2d>& points, const Line& line) {
    std::vector<double> misses;
    misses.reserve(points.size());
    for (const auto& p : points) misses.push_back(std::abs(line.normal.dot(p) - line.offset));
    return misses;
}

double middleOf(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

// The line through two of the points, a third of them apart or more, about which the points' median miss is least
// (Rousseeuw 1984, J. Am. Stat. Assoc. 79:871–880): a drop over one end of the edge does not tilt it.
Line leastMedianLine(const std::vector<Eigen::Vector2d>& points) {
    Line best = leastSquaresLine(points);
    double least = middleOf(missesOf(points, best));
    for (const std::size_t apart : {points.size() / 2, points.size() / 3}) {
        for (std::size_t i = 0; i + apart < points.size(); ++i) {
            const Eigen::Vector2d along = points[i + apart] - points[i];
            if (along.squaredNorm() <= 0.0) continue;
            const Eigen::Vector2d normal = Eigen::Vector2d(-along.y(), along.x()).normalized();
            const Line line{normal, normal.dot(points[i])};
            const double miss = middleOf(missesOf(points, line));
            if (miss < least) std::tie(best, least) = std::pair(line, miss);
        }
    }
    return best;
}

// The line through the points, in order along the edge, those off by more than three robust standard deviations left
// out (glare, dirt, tears).
std::optional<Line> robustLine(std::vector<Eigen::Vector2d> points, double smallestSd) {
    const std::size_t all = points.size();
    if (all < 6) return std::nullopt;
    Line line = leastSquaresLine(points);
    const auto first = missesOf(points, line);
    if (*std::max_element(first.begin(), first.end()) > 25.0 * smallestSd) line = leastMedianLine(points);
    for (int round = 0; round < 3; ++round) {
        const double limit = 3.0 * std::max(1.4826 * middleOf(missesOf(points, line)), smallestSd);
        std::erase_if(points,
                      [&](const Eigen::Vector2d& p) { return std::abs(line.normal.dot(p) - line.offset) > limit; });
        if (points.size() < 6 || 2 * points.size() < all) return std::nullopt;
        line = leastSquaresLine(points);
    }
    return line;
}

std::optional<Eigen::Vector2d> meeting(const Line& a, const Line& b) {
    Eigen::Matrix2d normals;
    normals << a.normal.transpose(), b.normal.transpose();
    if (std::abs(normals.determinant()) < 0.2) return std::nullopt;
    return normals.inverse() * Eigen::Vector2d(a.offset, b.offset);
}

std::optional<FoundMarker> refineOnce(const cv::Mat& grey, const FoundMarker& marker, double reachPx, int mostProfiles,
                                      const std::optional<PhotoLens>& lens) {
    const double unit = lens ? 1.0 / lens->focalPx() : 1.0;
    std::array<Line, 4> lines;
    for (std::size_t k = 0; k < 4; ++k) {
        std::vector<Eigen::Vector2d> points;
        const PixelPoint from = marker.cornersPx[k], to = marker.cornersPx[(k + 1) % 4];
        for (const PixelPoint p : edgePoints(grey, from, to, reachPx, mostProfiles))
            points.push_back(lens ? lens->rayFromPixel(p) : Eigen::Vector2d(p.x, p.y));
        const auto line = robustLine(std::move(points), 0.02 * unit);
        if (!line) return std::nullopt;
        lines[k] = *line;
    }
    FoundMarker refined = marker;
    for (std::size_t k = 0; k < 4; ++k) {
        const auto corner = meeting(lines[(k + 3) % 4], lines[k]);
        if (!corner) return std::nullopt;
        refined.cornersPx[k] = lens ? lens->pixelFromRay(*corner) : PixelPoint{corner->x(), corner->y()};
        if (distance(refined.cornersPx[k], marker.cornersPx[k]) > 2.0 * reachPx) return std::nullopt;
    }
    return refined;
}

}  // namespace

std::optional<FoundMarker> refinedCorners(const cv::Mat& grey, const FoundMarker& marker, int cellsAcross,
                                          const std::optional<PhotoLens>& lens) {
    double shortest = distance(marker.cornersPx[3], marker.cornersPx[0]);
    for (std::size_t k = 0; k < 3; ++k)
        shortest = std::min(shortest, distance(marker.cornersPx[k], marker.cornersPx[k + 1]));
    const double cellPx = shortest / cellsAcross;
    if (cellPx < 1.5) return std::nullopt;
    // First wide enough for corners found on a reduced image, then close to the edge, away from the inner cells.
    const auto first = refineOnce(grey, marker, std::max(2.5, 0.45 * cellPx), 14, lens);
    if (!first) return std::nullopt;
    return refineOnce(grey, *first, std::clamp(0.3 * cellPx, 2.5, 8.0), 64, lens);
}

}  // namespace ringrule
