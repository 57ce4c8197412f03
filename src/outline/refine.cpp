// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/refine.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <span>

#include "outline/edge.h"
#include "ringrule/geometry/polygon.h"

namespace ringrule {
namespace {

constexpr double kFirstPassStep = 2.0;
constexpr int kWidestReach = 12;
constexpr std::size_t kShown = 300;
/// Steps: normals that cross in a notch between fin rays leave loops that small.
constexpr std::size_t kLongestCurl = 16;
constexpr double kLeastOfStep = 0.25;    ///< of the body's contrast: a step as high is its edge …
constexpr double kLeastOfShaded = 0.12;  ///< … and where its rim is in the shade
/// Light where body and plate part, of the way from the plate to the body, where the rim is in the shade: half-way to a
/// rim turned from the lamp, which has about 0.28 of the light of the flank (0.25 to 0.3 on rendered round bodies).
constexpr double kShadedLevel = 0.14;
constexpr double kShadowShare = 0.4;  ///< of the way from half-way to the plate: a shadow no lighter hides half-way
constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

std::size_t wrapped(std::ptrdiff_t i, std::size_t count) {
    const auto n = static_cast<std::ptrdiff_t>(count);
    return static_cast<std::size_t>((i % n + n) % n);
}

std::vector<PixelPoint> smoothedClosed(const std::vector<PixelPoint>& points, std::span<const double> kernel) {
    std::vector<PixelPoint> smooth(points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
        PixelPoint sum = points[i] * kernel[0];
        for (std::size_t k = 1; k < kernel.size(); ++k) {
            const auto at = static_cast<std::ptrdiff_t>(i);
            const auto off = static_cast<std::ptrdiff_t>(k);
            sum =
                sum + (points[wrapped(at - off, points.size())] + points[wrapped(at + off, points.size())]) * kernel[k];
        }
        smooth[i] = sum;
    }
    return smooth;
}

/// Outward unit normals: the body lies on the right hand of the walk.
std::vector<PixelPoint> normalsOf(const std::vector<PixelPoint>& points) {
    std::vector<PixelPoint> normals(points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
        const auto at = static_cast<std::ptrdiff_t>(i);
        const PixelPoint step = points[wrapped(at + 2, points.size())] - points[wrapped(at - 2, points.size())];
        const double length = std::max(norm(step), 1e-9);
        normals[i] = {step.y / length, -step.x / length};
    }
    return normals;
}

double medianOf(std::vector<double> values) {
    std::erase_if(values, [](double value) { return !std::isfinite(value); });
    if (values.empty()) return 0.0;
    const auto middle = values.begin() + std::ssize(values) / 2;
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

/// Median of the finite values up to `reach` places away round the boundary; nothing of fewer than three.
double medianAround(const std::vector<double>& values, std::size_t i, int reach) {
    std::array<double, 2 * kWidestReach + 1> near{};
    std::size_t count = 0;
    for (int k = -reach; k <= reach; ++k) {
        const double value = values[wrapped(static_cast<std::ptrdiff_t>(i) + k, values.size())];
        if (!std::isfinite(value)) continue;
        std::size_t at = count++;
        for (; at > 0 && near[at - 1] > value; --at) near[at] = near[at - 1];
        near[at] = value;
    }
    return count < 3 ? kNone : near[count / 2];
}

/// Samples across the boundary, cut where another edge begins: half-way through a thin body, and where light falls
/// again outside (the next turn of a coil).
struct CutProfile {
    Profile profile;
    double oppositePx = -1e9;
};

CutProfile cut(Profile profile, double halfLight) {
    CutProfile result;
    const auto middle = static_cast<std::ptrdiff_t>(profile.inner);
    const auto count = std::ssize(profile.light);
    std::ptrdiff_t from = 0;
    std::ptrdiff_t to = count;
    const auto lightOf = [&](std::ptrdiff_t i) {
        return static_cast<double>(profile.light[static_cast<std::size_t>(i)]);
    };
    bool inBody = false;
    for (std::ptrdiff_t i = middle + 2; i >= 0; --i) {
        if (lightOf(i) < halfLight) inBody = true;
        if (inBody && lightOf(i) > halfLight) {
            const double high = lightOf(i) - halfLight;
            const double t = high / std::max(high + halfLight - lightOf(i + 1), 1e-6);
            result.oppositePx = (static_cast<double>(i - middle) + t) * profile.stepPx;
            from = std::min(middle - 2, i + (middle - i) / 2);
            break;
        }
    }
    bool onPlate = false;
    for (std::ptrdiff_t i = middle - 2; i < count; ++i) {
        if (i < 0) continue;
        if (lightOf(i) > halfLight) onPlate = true;
        if (onPlate && i > middle + 2 && lightOf(i) < halfLight) {
            const auto lightest = std::max_element(profile.light.begin() + middle, profile.light.begin() + i);
            to = std::max(middle + 3, lightest - profile.light.begin() + 1);
            break;
        }
    }
    profile.light.erase(profile.light.begin() + std::min(to, count), profile.light.end());
    profile.light.erase(profile.light.begin(), profile.light.begin() + from);
    profile.inner -= static_cast<int>(from);
    result.profile = std::move(profile);
    return result;
}

/// Where the profile passes the half-way light, nearest to its zero; nothing if it does not.
double crossingNear(const Profile& profile, double halfLight) {
    double best = kNone;
    double nearest = 1e9;
    for (std::size_t i = 1; i < profile.light.size(); ++i) {
        const double a = static_cast<double>(profile.light[i - 1]) - halfLight;
        const double b = static_cast<double>(profile.light[i]) - halfLight;
        if (a < 0.0 && b >= 0.0) {
            const double at = profile.at(i - 1) + profile.stepPx * a / (a - b);
            if (std::abs(at) < nearest) nearest = std::abs(at), best = at;
        }
    }
    return best;
}

/// The half-way light across one profile: that of the whole boundary, but where a shadow beside the body is about as
/// dark as that, half-way from the body to the lightest place in the profile.
double halfLightOf(const Profile& profile, double inside, double halfLight) {
    const auto from = profile.light.begin() + profile.inner;
    const auto lightest = static_cast<double>(*std::max_element(from, profile.light.end()));
    return lightest < halfLight + kShadowShare * (halfLight - inside) ? 0.5 * (inside + lightest) : halfLight;
}

struct Pass {
    std::vector<double> placePx;       ///< of the edge along each normal; nothing where none was seen
    std::vector<StepEdge> edges;       ///< where a step was fitted …
    std::vector<Profile> shown;        ///< … some hundreds of their profiles …
    std::vector<StepEdge> shownEdges;  ///< … and their edges: plenty for the blur, which is one number
};

struct PassOptions {
    double sigmaPx = 1.0;
    double startPx = 0.0;
    double reachPx = 5.0;
    double halfLight = 0.0;
    double contrast = 0.1;
    double insideLight = -1.0;
    bool shadedRim = false;
    bool rough = false;  ///< steps are fitted only where they are shown; elsewhere the half-way light will do
};

StepEdge fittedAcross(const CutProfile& across, double crossingPx, double halfLight, const PassOptions& options) {
    StepPrior prior;
    prior.inShadow = halfLight < options.halfLight;
    prior.sigmaPx = options.sigmaPx;
    prior.startPx = std::isfinite(crossingPx) ? crossingPx : 0.0;
    prior.leastContrast = (options.shadedRim ? kLeastOfShaded : kLeastOfStep) * options.contrast;
    prior.shadedRim = options.shadedRim;
    prior.oppositePx = across.oppositePx;
    prior.insideLight = options.insideLight;
    return fitStep(across.profile, prior);
}

Pass lookAcross(const cv::Mat& grey, const Tone& tone, const std::vector<PixelPoint>& points,
                const std::vector<PixelPoint>& normals, const PassOptions& options) {
    const double step = std::max(0.5, 0.45 * options.sigmaPx);
    const int reach = static_cast<int>(std::ceil(options.reachPx / step));
    const std::size_t stride = std::max<std::size_t>(1, points.size() / kShown);
    Pass pass;
    pass.placePx.reserve(points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
        Profile whole = sampleProfile(grey, tone, points[i] + normals[i] * options.startPx, normals[i], step, reach);
        const double halfLight = halfLightOf(whole, options.insideLight, options.halfLight);
        CutProfile across = cut(std::move(whole), halfLight);
        double placePx = crossingNear(across.profile, halfLight);
        const bool shown = i % stride == 0;
        if (shown || !options.rough) {
            const StepEdge edge = fittedAcross(across, placePx, halfLight, options);
            placePx = edge.found ? edge.atPx : kNone;
            pass.edges.push_back(edge);
            if (shown) pass.shown.push_back(std::move(across.profile)), pass.shownEdges.push_back(edge);
        }
        pass.placePx.push_back(placePx + options.startPx);
    }
    return pass;
}

/// Edge places with strays replaced by their neighbourhood's median and lightly smoothed; the scatter is that of the
/// unsmoothed places.
std::vector<double> settled(std::vector<double> raw, double& scatter) {
    std::vector<double> off;
    off.reserve(raw.size());
    std::vector<double> middle(raw.size());
    for (std::size_t i = 0; i < raw.size(); ++i) {
        middle[i] = medianAround(raw, i, 4);
        if (!std::isfinite(middle[i])) middle[i] = medianAround(raw, i, kWidestReach);
        off.push_back(std::isfinite(raw[i]) ? std::abs(raw[i] - middle[i]) : kNone);
    }
    scatter = medianOf(off) / 0.6745;
    const double limit = std::max(0.5, 4.0 * scatter);
    for (std::size_t i = 0; i < raw.size(); ++i) {
        if (!(std::abs(raw[i] - middle[i]) < limit)) raw[i] = std::isfinite(middle[i]) ? middle[i] : 0.0;
    }
    std::vector<double> smooth(raw.size());
    for (std::size_t i = 0; i < raw.size(); ++i) {
        const auto at = static_cast<std::ptrdiff_t>(i);
        smooth[i] = 0.5 * raw[i] + 0.25 * (raw[wrapped(at - 1, raw.size())] + raw[wrapped(at + 1, raw.size())]);
    }
    return smooth;
}

double medianLight(const Pass& pass, bool inside) {
    std::vector<double> values;
    for (const StepEdge& edge : pass.edges) {
        if (edge.found) values.push_back(inside ? edge.inside : edge.outside);
    }
    return medianOf(std::move(values));
}

/// The light that parts body and plate: half-way, and nearer to the plate where the body's rim is in the shade.
double levelBetween(double inside, double outside, bool shadedRim) {
    return outside + (shadedRim ? kShadedLevel : 0.5) * (inside - outside);
}

/// One pass over a boundary: fitted, moved, and what was seen of the edge put into `refined`.
std::vector<PixelPoint> moved(const cv::Mat& grey, const Tone& tone, std::vector<PixelPoint> points, PassOptions& pass,
                              RefinedBoundary& refined) {
    const std::vector<PixelPoint> normals = normalsOf(points);
    const Pass result = lookAcross(grey, tone, points, normals, pass);
    const std::vector<double> moves = settled(result.placePx, refined.sdPx);
    for (std::size_t i = 0; i < points.size(); ++i) points[i] = points[i] + normals[i] * moves[i];
    refined.inside = medianLight(result, true);
    refined.outside = medianLight(result, false);
    const auto found =
        std::count_if(result.edges.begin(), result.edges.end(), [](const StepEdge& e) { return e.found; });
    refined.foundShare = static_cast<double>(found) / static_cast<double>(result.edges.size());
    if (const double blur = pooledBlur(result.shown, result.shownEdges); blur > 0.0) pass.sigmaPx = blur;
    pass.halfLight = levelBetween(refined.inside, refined.outside, pass.shadedRim);
    pass.insideLight = refined.inside;
    pass.startPx = 0.0;
    return points;
}

}  // namespace

RefinedBoundary refineBoundary(const cv::Mat& grey, const Tone& tone, const std::vector<PixelPoint>& contour,
                               const RefineOptions& options) {
    constexpr std::array kSmooth{0.36, 0.24, 0.08};
    // Where the contour is coarse against the step, a first pass over every second point brings it near the edge.
    const double firstStep = options.stepPx * kFirstPassStep;
    RefinedBoundary refined;
    PassOptions pass;
    pass.sigmaPx = options.startBlurPx;
    pass.startPx = options.contourLagPx;
    pass.contrast = options.outside - options.inside;
    pass.halfLight = levelBetween(options.inside, options.outside, options.shadedRim);
    pass.insideLight = options.inside;
    pass.reachPx = 3.2 * pass.sigmaPx + 1.0 + options.stepPx;
    pass.shadedRim = options.shadedRim;
    pass.rough = !options.shadedRim;
    std::vector<PixelPoint> points = smoothedClosed(resampledClosed<PixelFrame>(contour, firstStep), kSmooth);
    points = moved(grey, tone, std::move(points), pass, refined);
    points = smoothedClosed(resampledClosed<PixelFrame>(points, options.stepPx), kSmooth);
    pass.reachPx = 3.2 * pass.sigmaPx + 1.0;
    pass.rough = false;
    refined.pointsPx = withoutCurls<PixelFrame>(moved(grey, tone, std::move(points), pass, refined), kLongestCurl);
    refined.blurPx = pass.sigmaPx;
    return refined;
}

}  // namespace ringrule
