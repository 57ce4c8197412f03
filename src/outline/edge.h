// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include <opencv2/core.hpp>

#include "outline/tone.h"
#include "ringrule/geometry/point.h"

namespace ringrule {

/// Even samples along a line across an edge, from inside (negative) to outside (positive); sample i lies at
/// (i − inner) · stepPx.
struct Profile {
    std::vector<float> light;
    double stepPx = 0.5;
    int inner = 0;

    [[nodiscard]] double at(std::size_t i) const { return (static_cast<double>(i) - inner) * stepPx; }
    [[nodiscard]] double first() const { return at(0); }
    [[nodiscard]] double last() const { return at(light.size() - 1); }
};

/// What is known of a step before it is fitted.
struct StepPrior {
    double sigmaPx = 1.0;
    double startPx = 0.0;
    double leastContrast = 0.03;
    double oppositePx = -1e9;   ///< place of the body's other edge: a body thinner than the blur is no step but a bar
    double insideLight = -1.0;  ///< light of the body nearby, for bodies too thin to show it; negative: not known
    bool shadedRim = false;     ///< the body is the lighter side and darkens toward its rim
    bool inShadow = false;      ///< a shadow lies close beside the body: the light outside rises steadily
};

/// A blurred step fitted to a profile.
struct StepEdge {
    bool found = false;
    double atPx = 0.0;     ///< from the profile's zero, positive outward
    double inside = 0.0;   ///< light just inside …
    double outside = 0.0;  ///< … and just outside the step
    double rms = 0.0;      ///< residual, in light
};

/// Light at a place between pixels, bilinear; the photo's border is continued.
[[nodiscard]] float lightAt(const cv::Mat& grey, const Tone& tone, PixelPoint at);

/// Samples across an edge at `at` along the outward unit normal.
[[nodiscard]] Profile sampleProfile(const cv::Mat& grey, const Tone& tone, PixelPoint at, PixelPoint outward,
                                    double stepPx, int reach);

/// The step nearest to the prior's start: a Gaussian edge between two sides that may each slope gently (a soft shadow
/// outside, a shaded flank inside), by Gauss–Newton. Not found: no bright-outward step of the least contrast in reach.
[[nodiscard]] StepEdge fitStep(const Profile& profile, const StepPrior& prior);

/// Sigma of a blurred step in profiles whose edges lie at `atPx`: their normalised median, fitted. 0 when it cannot be
/// told.
[[nodiscard]] double pooledBlur(std::span<const Profile> profiles, std::span<const StepEdge> edges);

}  // namespace ringrule
