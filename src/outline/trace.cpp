// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/outline/trace.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include <opencv2/imgproc.hpp>
#include <opencv2/imgproc/segmentation.hpp>

#include "outline/edge_path.h"
#include "outline/loop.h"
#include "outline/refine.h"
#include "outline/tone.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

constexpr int kMapSidePx = 340;       ///< side of the picture in which paths are searched: some tens of milliseconds
constexpr double kSmoothing = 1.0;    ///< sigma before gradients are taken, in pixels of that picture
constexpr double kClearEdge = 0.985;  ///< quantile of the gradients nearby that counts as a full edge
constexpr float kFaintEdge = 0.12F;   ///< share of it below which there is no edge
constexpr double kLongestSpurPx = 80.0;
constexpr double kLeastAreaPx2 = 100.0;

float quantileOf(const cv::Mat1f& values, double share) {
    std::vector<float> all(values.begin(), values.end());
    const auto at = all.begin() + static_cast<std::ptrdiff_t>(share * static_cast<double>(all.size() - 1));
    std::nth_element(all.begin(), at, all.end());
    return *at;
}

/// A window of the photo, its corner on a whole multiple of the factor by which it is reduced, so that stretches of one
/// trace share one grid.
struct Window {
    cv::Point originPx;
    int factor = 1;
    cv::Mat grey;

    [[nodiscard]] PixelPoint photoFromWindow(cv::Point at) const {
        return {originPx.x + (at.x + 0.5) * factor - 0.5, originPx.y + (at.y + 0.5) * factor - 0.5};
    }
    [[nodiscard]] cv::Point windowFromPhoto(PixelPoint at) const {
        return {static_cast<int>(std::floor((at.x + 0.5 - originPx.x) / factor)),
                static_cast<int>(std::floor((at.y + 0.5 - originPx.y) / factor))};
    }
};

Window windowAround(const cv::Mat& grey, PixelPoint at, double reachPx) {
    Window window;
    window.factor = std::max(1, static_cast<int>(std::ceil(2.0 * reachPx / kMapSidePx)));
    const int f = window.factor;
    const auto lowest = [&](double value) { return static_cast<int>(std::max(0.0, value - reachPx)) / f * f; };
    window.originPx = {lowest(at.x), lowest(at.y)};
    const int blocksX =
        std::min(static_cast<int>(std::ceil(at.x + reachPx)) - window.originPx.x, grey.cols - window.originPx.x) / f;
    const int blocksY =
        std::min(static_cast<int>(std::ceil(at.y + reachPx)) - window.originPx.y, grey.rows - window.originPx.y) / f;
    const cv::Size size(std::max(1, blocksX), std::max(1, blocksY));
    const cv::Rect part = cv::Rect(window.originPx, size * f) & cv::Rect({0, 0}, grey.size());
    cv::resize(grey(part), window.grey, size, 0.0, 0.0, cv::INTER_AREA);
    return window;
}

/// What the search for paths runs on.
struct Gradients {
    cv::Mat1f strength;  ///< 1 for a clear edge
    cv::Mat direction;   ///< CV_32FC2, unit vectors
    cv::Mat1b nonEdge;   ///< 0 on the crests of the strength
};

Gradients gradientsOf(const cv::Mat& grey) {
    cv::Mat1f smooth;
    grey.convertTo(smooth, CV_32F);
    cv::GaussianBlur(smooth, smooth, {}, kSmoothing);
    cv::Mat1f dx;
    cv::Mat1f dy;
    cv::Scharr(smooth, dx, CV_32F, 1, 0);
    cv::Scharr(smooth, dy, CV_32F, 0, 1);
    Gradients gradients;
    cv::magnitude(dx, dy, gradients.strength);
    const float clear = std::max(quantileOf(gradients.strength, kClearEdge), 1.0F);
    cv::Mat safe = cv::max(gradients.strength, 1e-6);
    cv::divide(dx, safe, dx);
    cv::divide(dy, safe, dy);
    cv::merge(std::vector<cv::Mat>{dx, dy}, gradients.direction);
    gradients.strength = cv::min(gradients.strength / clear, 1.0);
    gradients.nonEdge = cv::Mat1b(grey.size(), static_cast<unsigned char>(1));
    for (int y = 1; y + 1 < grey.rows; ++y) {
        for (int x = 1; x + 1 < grey.cols; ++x) {
            const float here = gradients.strength(y, x);
            const int stepX = cvRound(dx(y, x));
            const int stepY = cvRound(dy(y, x));
            if (here > kFaintEdge && here >= gradients.strength(y + stepY, x + stepX) &&
                here >= gradients.strength(y - stepY, x - stepX))
                gradients.nonEdge(y, x) = 0;
        }
    }
    return gradients;
}

/// The path without places that it visits twice within a short walk: a stretch that doubles back to a stray click.
std::vector<PixelPoint> withoutSpurs(const std::vector<PixelPoint>& path) {
    std::vector<PixelPoint> clean;
    for (const PixelPoint at : path) {
        double back = 0.0;
        for (std::size_t i = clean.size(); i-- > 0 && back < kLongestSpurPx;) {
            if (distance(clean[i], at) < 1e-6) {
                clean.resize(i);
                break;
            }
            if (i > 0) back += distance(clean[i - 1], clean[i]);
        }
        clean.push_back(at);
    }
    return clean;
}

std::vector<PixelPoint> roughThrough(const Photo& photo, std::span<const PixelPoint> clicks,
                                     const TraceOptions& options, bool closed) {
    std::vector<PixelPoint> path;
    PixelPoint from = clicks[0];
    PixelPoint first = from;
    TraceOptions leg = options;
    for (std::size_t i = 1; i < clicks.size() + (closed ? 1 : 0); ++i) {
        const EdgeTrace trace(photo, from, leg);
        if (i == 1) first = trace.from();
        const std::vector<PixelPoint> stretch = trace.to(i < clicks.size() ? clicks[i] : first);
        path.insert(path.end(), stretch.begin() + (path.empty() ? 0 : 1), stretch.end());
        from = stretch.back();
    }
    if (closed && path.size() > 1) path.pop_back();
    return withoutSpurs(path);
}

int factorOf(const TraceOptions& options) {
    return std::max(1, static_cast<int>(std::ceil(2.0 * options.reachPx / kMapSidePx)));
}

EdgePathOptions edgeOptions(const TraceOptions& options) {
    EdgePathOptions edge;
    edge.reachPx = 3.5 + 1.5 * factorOf(options);
    return edge;
}

}  // namespace

struct EdgeTrace::State {
    Window window;
    cv::Mat1f strength;
    cv::segmentation::IntelligentScissorsMB scissors;
    double snapPx = 0.0;
    PixelPoint from;

    [[nodiscard]] bool inReach(PixelPoint at) const {
        return cv::Rect({1, 1}, strength.size() - cv::Size(2, 2)).contains(window.windowFromPhoto(at));
    }

    /// The clearest edge near a click: strength counts less the farther it is.
    [[nodiscard]] cv::Point clearest(PixelPoint near) const {
        const cv::Point middle = window.windowFromPhoto(near);
        const int reach = static_cast<int>(snapPx / window.factor);
        cv::Point best = middle;
        float most = 0.0F;
        for (int y = std::max(1, middle.y - reach); y <= std::min(strength.rows - 2, middle.y + reach); ++y) {
            for (int x = std::max(1, middle.x - reach); x <= std::min(strength.cols - 2, middle.x + reach); ++x) {
                const double away = std::hypot(x - middle.x, y - middle.y) / (reach + 1.0);
                if (away > 1.0) continue;
                const float worth = strength(y, x) * static_cast<float>(1.0 - 0.6 * away);
                if (worth > most) most = worth, best = {x, y};
            }
        }
        return best;
    }
};

EdgeTrace::EdgeTrace(const Photo& photo, PixelPoint fromPx, const TraceOptions& options) {
    auto state = std::make_shared<State>();
    state->window = windowAround(photo.grey, fromPx, options.reachPx);
    Gradients gradients = gradientsOf(state->window.grey);
    state->strength = gradients.strength;
    state->snapPx = options.snapPx;
    state->from = fromPx;
    if (state->inReach(fromPx)) {
        const cv::Point start = state->clearest(fromPx);
        state->from = state->window.photoFromWindow(start);
        cv::Mat1f cost;
        cv::subtract(1.0, gradients.strength, cost);
        state->scissors.applyImageFeatures(gradients.nonEdge, gradients.direction, cost);
        state->scissors.buildMap(start);
    }
    state_ = std::move(state);
}

PixelPoint EdgeTrace::from() const {
    return state_->from;
}

PixelPoint EdgeTrace::snapped(PixelPoint targetPx) const {
    if (!state_->inReach(targetPx)) return targetPx;
    return state_->window.photoFromWindow(state_->clearest(targetPx));
}

std::vector<PixelPoint> EdgeTrace::to(PixelPoint targetPx) const {
    if (!state_->inReach(targetPx) || !state_->inReach(state_->from)) return {state_->from, targetPx};
    std::vector<cv::Point> contour;
    state_->scissors.getContour(state_->clearest(targetPx), contour);
    std::vector<PixelPoint> path;
    path.reserve(contour.size());
    for (const cv::Point at : contour) path.push_back(state_->window.photoFromWindow(at));
    if (path.size() < 2) path = {state_->from, snapped(targetPx)};
    return path;
}

std::vector<PixelPoint> traceThrough(const Photo& photo, std::span<const PixelPoint> clicksPx,
                                     const TraceOptions& options) {
    assert(clicksPx.size() >= 2);
    return onEdge(photo.grey, photoTone(), roughThrough(photo, clicksPx, options, false), edgeOptions(options));
}

Outcome<Outline> traceOutline(const Photo& photo, std::span<const PixelPoint> clicksPx, const TraceOptions& options) {
    const Refusal open{"trace-not-closed",
                       "The clicks do not go round an animal. Click along its whole edge, in order, and end where you "
                       "began."};
    if (clicksPx.size() < 3) return open;
    std::vector<PixelPoint> rough = roughThrough(photo, clicksPx, options, true);
    if (rough.size() < 8 || std::abs(signedArea<PixelFrame>(rough)) < kLeastAreaPx2) return open;
    if (signedArea<PixelFrame>(rough) < 0.0) std::reverse(rough.begin(), rough.end());
    std::vector<PixelPoint> near = onEdge(photo.grey, photoTone(), rough, edgeOptions(options));
    if (crossesItself(near)) return open;
    const SidesOfPath sides = sidesOf(photo.grey, photoTone(), near, 3.0);
    RefineOptions refine;
    refine.contourLagPx = 0.0;
    refine.inside = std::min(sides.right, sides.left);
    refine.outside = std::max(sides.right, sides.left);
    Outline outline;
    outline.boundaryPx = std::move(near);
    if (sides.right < sides.left) {
        const RefinedBoundary refined = refineBoundary(photo.grey, photoTone(), outline.boundaryPx, refine);
        if (refined.foundShare > 0.5 && !crossesItself(refined.pointsPx)) {
            outline.boundaryPx = refined.pointsPx;
            outline.edgeBlurPx = refined.blurPx;
            outline.edgeSdPx = refined.sdPx;
        }
    }
    return drawnByHand(std::move(outline), 0.5 * perimeter<PixelFrame>(outline.boundaryPx));
}

}  // namespace ringrule
