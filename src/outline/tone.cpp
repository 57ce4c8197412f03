// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/tone.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "outline/edge.h"

namespace ringrule {
namespace {

/// Median grey value by distance across the pooled marker edges, black side first.
struct PooledEdge {
    std::vector<double> value;
    double stepPx = 0.25;
    int reach = 0;
};

struct Sample {
    double t, value;
};

/// Place of the middle value on a rising profile, or nothing.
bool crossingOf(const std::vector<double>& profile, double stepPx, int reach, double& at) {
    const double low = std::min(profile.front(), profile[1]);
    const double high = std::max(profile.back(), profile[profile.size() - 2]);
    if (high - low < 50.0) return false;
    const double middle = 0.5 * (low + high);
    for (std::size_t i = 1; i < profile.size(); ++i) {
        if (profile[i - 1] < middle && profile[i] >= middle) {
            const double t = (middle - profile[i - 1]) / (profile[i] - profile[i - 1]);
            at = (static_cast<double>(i - 1) + t - reach) * stepPx;
            return true;
        }
    }
    return false;
}

double greyAt(const cv::Mat& grey, PixelPoint at) {
    static const Tone kPlain = [] {
        Tone tone;
        for (std::size_t i = 0; i < 256; ++i) tone.lightOf[i] = static_cast<float>(i);
        return tone;
    }();
    return static_cast<double>(lightAt(grey, kPlain, at));
}

/// Adds the samples across one side of a marker, each at its distance from the straight line fitted to the side.
void addSide(const cv::Mat& grey, PixelPoint from, PixelPoint to, PixelPoint centre, std::vector<Sample>& samples) {
    const double length = distance(from, to);
    if (length < 12.0) return;
    const PixelPoint along = (to - from) * (1.0 / length);
    PixelPoint outward{-along.y, along.x};
    if (dot(outward, from - centre) < 0.0) outward = outward * -1.0;
    constexpr double kStep = 0.5;
    const int reach = static_cast<int>(std::clamp(length / 12.0, 3.0, 8.0) / kStep);
    std::vector<std::array<double, 2>> places;
    std::vector<std::vector<double>> profiles;
    for (double s = 0.12 * length; s < 0.88 * length; s += 1.37) {
        std::vector<double> profile;
        for (int i = -reach; i <= reach; ++i) {
            profile.push_back(greyAt(grey, from + along * s + outward * (i * kStep)));
        }
        if (double at = 0.0; crossingOf(profile, kStep, reach, at)) {
            places.push_back({s, at});
            profiles.push_back(std::move(profile));
        }
    }
    if (places.size() < 8) return;
    std::vector<double> offsets;
    for (const auto& place : places) offsets.push_back(place[1]);
    std::nth_element(offsets.begin(), offsets.begin() + std::ssize(offsets) / 2, offsets.end());
    const double middle = offsets[offsets.size() / 2];
    double n = 0.0, sx = 0.0, sy = 0.0, sxx = 0.0, sxy = 0.0;
    for (const auto& [s, at] : places) {
        if (std::abs(at - middle) > 1.0) continue;
        n += 1.0, sx += s, sy += at, sxx += s * s, sxy += s * at;
    }
    const double det = n * sxx - sx * sx;
    if (n < 8.0 || det <= 0.0) return;
    const double slope = (n * sxy - sx * sy) / det;
    const double base = (sy - slope * sx) / n;
    for (std::size_t k = 0; k < profiles.size(); ++k) {
        if (std::abs(places[k][1] - base - slope * places[k][0]) > 0.5) continue;
        for (int i = -reach; i <= reach; ++i) {
            samples.push_back({i * kStep - base - slope * places[k][0], profiles[k][static_cast<std::size_t>(i + reach)]});
        }
    }
}

PooledEdge pooled(const std::vector<Sample>& samples) {
    constexpr int kHalf = 24;
    PooledEdge edge;
    std::vector<std::vector<double>> bins(2 * kHalf + 1);
    for (const Sample& sample : samples) {
        const long bin = std::lround(sample.t / edge.stepPx) + kHalf;
        if (bin >= 0 && bin <= 2 * kHalf) bins[static_cast<std::size_t>(bin)].push_back(sample.value);
    }
    const auto enough = [&](int i) { return bins[static_cast<std::size_t>(kHalf + i)].size() >= 20; };
    while (edge.reach < kHalf && enough(edge.reach + 1) && enough(-edge.reach - 1)) ++edge.reach;
    for (int i = kHalf - edge.reach; i <= kHalf + edge.reach; ++i) {
        double sum = 0.0;
        for (const double value : bins[static_cast<std::size_t>(i)]) sum += value;
        edge.value.push_back(sum / static_cast<double>(bins[static_cast<std::size_t>(i)].size()));
    }
    return edge;
}

float lightOfValue(const Tone& tone, double value) {
    const double bounded = std::clamp(value, 0.0, 254.999);
    const auto k = static_cast<std::size_t>(bounded);
    const float t = static_cast<float>(bounded - static_cast<double>(k));
    return tone.lightOf[k] * (1.0F - t) + tone.lightOf[k + 1] * t;
}

/// Misfit of a blurred step under a tone, in grey values, with the blur that fits best.
struct Misfit {
    double squares = 1e18;
    double sigmaPx = 0.0;
};

Misfit misfitOf(const PooledEdge& edge, const Tone& tone) {
    Profile profile;
    profile.stepPx = edge.stepPx;
    profile.inner = edge.reach;
    for (const double value : edge.value) profile.light.push_back(lightOfValue(tone, value));
    Misfit best;
    for (double sigma = 0.35; sigma < 4.0; sigma *= 1.05) {
        const StepEdge step = fitStep(profile, {.sigmaPx = sigma, .leastContrast = 0.05});
        if (!step.found) continue;
        double squares = 0.0;
        for (std::size_t i = 0; i < profile.light.size(); ++i) {
            const double t = (static_cast<double>(i) - edge.reach) * edge.stepPx - step.atPx;
            const double share = 0.5 * std::erfc(-t / sigma / std::sqrt(2.0));
            const double light = step.inside + (step.outside - step.inside) * share;
            const auto above = std::lower_bound(tone.lightOf.begin(), tone.lightOf.end(), static_cast<float>(light));
            const auto k = std::clamp<std::ptrdiff_t>(above - tone.lightOf.begin(), 1, 255);
            const auto i1 = static_cast<std::size_t>(k);
            const double gap = static_cast<double>(tone.lightOf[i1] - tone.lightOf[i1 - 1]);
            const double value = static_cast<double>(k - 1) + (light - static_cast<double>(tone.lightOf[i1 - 1])) / gap;
            squares += (value - edge.value[i]) * (value - edge.value[i]);
        }
        if (squares < best.squares) best = {squares, sigma};
    }
    return best;
}

}  // namespace

Tone toneOfCurve(double curve) {
    Tone tone;
    tone.curve = curve;
    for (std::size_t i = 0; i < 256; ++i) {
        const double value = static_cast<double>(i) / 255.0;
        const double srgb = value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
        tone.lightOf[i] = static_cast<float>(curve * srgb + (1.0 - curve) * value);
    }
    return tone;
}

Tone measureTone(const cv::Mat& grey, std::span<const FoundMarker> markers) {
    std::vector<Sample> samples;
    for (const FoundMarker& marker : markers) {
        PixelPoint centre;
        for (const PixelPoint corner : marker.cornersPx) centre = centre + corner * 0.25;
        for (std::size_t i = 0; i < 4; ++i) {
            addSide(grey, marker.cornersPx[i], marker.cornersPx[(i + 1) % 4], centre, samples);
        }
    }
    const PooledEdge edge = pooled(samples);
    if (edge.reach < 8) return toneOfCurve(1.0);
    Misfit best;
    double bestCurve = 1.0;
    for (int i = 0; i <= 6; ++i) {
        const double curve = i / 6.0;
        const Misfit misfit = misfitOf(edge, toneOfCurve(curve));
        if (misfit.squares < best.squares) best = misfit, bestCurve = curve;
    }
    Tone tone = toneOfCurve(bestCurve);
    tone.markerBlurPx = best.sigmaPx;
    return tone;
}

}  // namespace ringrule
