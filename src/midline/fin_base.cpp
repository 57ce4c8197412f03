// SPDX-License-Identifier: GPL-3.0-or-later
#include "midline/fin_base.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "outline/edge.h"
#include "outline/tone.h"
#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

constexpr double kAlike = 0.12;        ///< of the body's and the fin's light together: nearer, they are not told apart
constexpr double kBodyInWidths = 5.0;  ///< the body's light is that of so many tail widths before the flare
constexpr double kStepPx = 0.5;

/// Light along a midline, averaged over a band across it.
struct Band {
    const cv::Mat& grey;
    const std::vector<PixelPoint>& spine;
    std::vector<double> alongs;
    double halfPx;

    [[nodiscard]] double at(double along) const {
        const PixelPoint here = pointAt<PixelFrame>(spine, alongs, along);
        const PixelPoint step =
            pointAt<PixelFrame>(spine, alongs, along + 3.0) - pointAt<PixelFrame>(spine, alongs, along - 3.0);
        const PixelPoint across = PixelPoint{-step.y, step.x} * (halfPx / std::max(norm(step), 1e-9));
        double sum = 0.0;
        for (const double t : {-1.0, -0.5, 0.0, 0.5, 1.0})
            sum += static_cast<double>(lightAt(grey, photoTone(), here + across * t));
        return 0.2 * sum;
    }
    [[nodiscard]] double median(double from, double to) const {
        std::vector<double> values;
        for (double along = from; along <= to; along += kStepPx) values.push_back(at(along));
        if (values.empty()) return at(from);
        std::nth_element(values.begin(), values.begin() + std::ssize(values) / 2, values.end());
        return values[values.size() / 2];
    }
};

}  // namespace

std::optional<double> bodyEndInFin(const Photo& photo, const Midline& midline, const WidthProfile& profile,
                                   double flareShare, double endShare) {
    if (photo.grey.empty()) return std::nullopt;
    const double tailPx = std::max(2.0, profile.at(flareShare - 0.01));
    const Band band{photo.grey, midline.spinePx, arcLengths<PixelFrame>(midline.spinePx), 0.2 * tailPx};
    const double whole = band.alongs.back();
    const double flare = flareShare * whole;
    const double end = endShare * whole;
    if (end - flare < 4.0) return std::nullopt;
    const double body = band.median(std::max(0.0, flare - kBodyInWidths * tailPx), flare - 0.5 * tailPx);
    // The fin's outer half, without its own soft edge.
    const double fin = band.median(0.5 * (flare + end), end - 0.12 * (end - flare) - 2.0);
    if (std::abs(fin - body) < kAlike * (fin + body)) return std::nullopt;
    const double half = 0.5 * (fin + body);
    const double sign = fin > body ? 1.0 : -1.0;
    double last = sign * (band.at(flare - 0.5 * tailPx) - half);
    for (double along = flare - 0.5 * tailPx + kStepPx; along < end; along += kStepPx) {
        const double now = sign * (band.at(along) - half);
        const bool stays = sign * (band.at(along + 2.0) - half) > 0.0;
        if (last <= 0.0 && now > 0.0 && stays) return (along - kStepPx * now / (now - last)) / whole;
        last = now;
    }
    return std::nullopt;
}

}  // namespace ringrule
