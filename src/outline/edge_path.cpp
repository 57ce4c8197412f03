// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/edge_path.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "outline/edge.h"
#include "outline/loop.h"

namespace ringrule {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
constexpr double kSampleStepPx = 0.5;
constexpr std::ptrdiff_t kLevelsAround = 8;  ///< points whose levels are taken together
constexpr std::ptrdiff_t kPlacesAround = 4;  ///< points among which a place may be a stray
constexpr double kStrayPx = 1.0;

/// The middle of the finite values; not a number of fewer than `least`.
double medianOf(std::vector<double> values, std::size_t least) {
    std::erase_if(values, [](double value) { return !std::isfinite(value); });
    if (values.size() < least) return kNone;
    const auto middle = values.begin() + std::ssize(values) / 2;
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

double medianAround(const std::vector<double>& values, std::size_t i, std::ptrdiff_t reach) {
    const auto at = static_cast<std::ptrdiff_t>(i);
    const auto from = values.begin() + std::max<std::ptrdiff_t>(0, at - reach);
    const auto to = values.begin() + std::min(std::ssize(values), at + reach + 1);
    return medianOf({from, to}, 3);
}

/// Unit vectors to the right hand of the walk as seen on the photo.
std::vector<PixelPoint> rightOf(std::span<const PixelPoint> path) {
    // At its ends a path of pixels runs any way: its direction is taken over as many steps as elsewhere.
    const std::size_t span = std::min<std::size_t>(6, path.size() - 1);
    std::vector<PixelPoint> right(path.size());
    for (std::size_t i = 0; i < path.size(); ++i) {
        const std::size_t before = std::min(i < span / 2 ? 0 : i - span / 2, path.size() - 1 - span);
        const std::size_t after = before + span;
        const PixelPoint step = path[after] - path[before];
        const double length = std::max(norm(step), 1e-9);
        right[i] = {-step.y / length, step.x / length};
    }
    return right;
}

/// Where the profile rises through `half`, nearest to its zero.
double risesThrough(const Profile& profile, double half) {
    double best = kNone;
    for (std::size_t i = 1; i < profile.light.size(); ++i) {
        const double a = static_cast<double>(profile.light[i - 1]) - half;
        const double b = static_cast<double>(profile.light[i]) - half;
        if (a >= 0.0 || b < 0.0) continue;
        const double at = profile.at(i - 1) + profile.stepPx * a / (a - b);
        if (!(std::abs(at) >= std::abs(best))) best = at;
    }
    return best;
}

struct Across {
    std::vector<Profile> profiles;  ///< from the dark side to the light one
    std::vector<double> dark, light;
};

Across lookAcross(const cv::Mat& grey, const Tone& tone, const std::vector<PixelPoint>& points,
                  const std::vector<PixelPoint>& toLight, double reachPx) {
    Across across;
    const int reach = static_cast<int>(std::ceil(reachPx / kSampleStepPx));
    for (std::size_t i = 0; i < points.size(); ++i) {
        Profile profile = sampleProfile(grey, tone, points[i], toLight[i], kSampleStepPx, reach);
        const auto middle = profile.light.begin() + profile.inner;
        across.dark.push_back(static_cast<double>(*std::min_element(profile.light.begin(), middle + 1)));
        across.light.push_back(static_cast<double>(*std::max_element(middle, profile.light.end())));
        across.profiles.push_back(std::move(profile));
    }
    return across;
}

std::vector<double> placesIn(const Across& across, double leastContrast) {
    std::vector<double> places(across.profiles.size(), kNone);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const double dark = medianAround(across.dark, i, kLevelsAround);
        const double light = medianAround(across.light, i, kLevelsAround);
        if (light - dark >= leastContrast) places[i] = risesThrough(across.profiles[i], 0.5 * (dark + light));
    }
    return places;
}

}  // namespace

SidesOfPath sidesOf(const cv::Mat& grey, const Tone& tone, std::span<const PixelPoint> path, double offPx) {
    const std::vector<PixelPoint> right = rightOf(path);
    std::vector<double> ofRight;
    std::vector<double> ofLeft;
    for (std::size_t i = 0; i < path.size(); ++i) {
        ofRight.push_back(static_cast<double>(lightAt(grey, tone, path[i] + right[i] * offPx)));
        ofLeft.push_back(static_cast<double>(lightAt(grey, tone, path[i] - right[i] * offPx)));
    }
    return {medianOf(std::move(ofRight), 1), medianOf(std::move(ofLeft), 1)};
}

std::vector<PixelPoint> onEdge(const cv::Mat& grey, const Tone& tone, std::span<const PixelPoint> path,
                               const EdgePathOptions& options) {
    std::vector<PixelPoint> points = evenPath(path, options.stepPx);
    if (points.size() < 5) return points;
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
        points[i] = points[i] * 0.5 + (points[i - 1] + points[i + 1]) * 0.25;
    }
    std::vector<PixelPoint> toLight = rightOf(points);
    const SidesOfPath sides = sidesOf(grey, tone, points, std::min(options.reachPx, 3.0));
    if (sides.right < sides.left) {
        for (PixelPoint& normal : toLight) normal = normal * -1.0;
    }
    const Across across = lookAcross(grey, tone, points, toLight, options.reachPx);
    std::vector<double> places = placesIn(across, options.leastContrast);
    std::vector<double> settled(places.size(), 0.0);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const double middle = medianAround(places, i, kPlacesAround);
        if (!std::isfinite(middle)) continue;
        settled[i] = std::abs(places[i] - middle) < kStrayPx ? places[i] : middle;
    }
    for (std::size_t i = 0; i < points.size(); ++i) points[i] = points[i] + toLight[i] * settled[i];
    return points;
}

}  // namespace ringrule
