// SPDX-License-Identifier: GPL-3.0-or-later
#include "midline/fading_end.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "outline/edge.h"
#include "outline/tone.h"

namespace ringrule {
namespace {

constexpr double kThinInBlurs = 4.5;  ///< an end this wide in sigmas of the edge shows as an outline
constexpr double kMeanSteps = 8.0;    ///< the dip is compared with its mean over about this many steps
constexpr double kLeastDip = 0.12;    ///< of the body's contrast: below this a thread is not told from the plate
constexpr double kHolds = 0.65;  ///< of the usual dip: a thread goes on; a fin behind it, wide and faint, dips less
constexpr double kWide = 0.45;   ///< of the middle's dip: a thread is not that dark beside it, a fin is
constexpr double kLongestShare = 0.35;  ///< of the outline's length: more is not believed

/// How much darker a thread is than the plate on both sides, and where its middle lies across.
struct Dip {
    double depth = 0.0;
    double beside = 0.0;  ///< the same two sigmas and a pixel off the middle
    double offset = 0.0;
};

struct Follower {
    const cv::Mat& grey;
    const Tone& tone;
    double sigmaPx;

    /// Mean light around a place, over three pixels along the thread.
    [[nodiscard]] double light(PixelPoint at, PixelPoint along) const {
        double sum = 0.0;
        for (const double s : {-1.0, 0.0, 1.0}) sum += static_cast<double>(lightAt(grey, tone, at + along * s));
        return sum / 3.0;
    }

    [[nodiscard]] Dip dipAt(PixelPoint at, PixelPoint along) const {
        const PixelPoint left{along.y, -along.x};
        const double away = 3.5 * sigmaPx + 2.0;
        double plate = 0.0;
        for (const double d : {away, away + 1.0, away + 2.0}) {
            plate += light(at + left * d, along) + light(at - left * d, along);
        }
        plate /= 6.0;
        double weight = 0.0;
        double moment = 0.0;
        Dip dip;
        const double reach = 1.6 * sigmaPx;
        for (int i = -4; i <= 4; ++i) {
            const double t = reach * i / 4.0;
            const double dark = std::max(0.0, plate - light(at + left * t, along));
            weight += dark;
            moment += dark * t;
            if (std::abs(i) <= 1) dip.depth += dark / 3.0;
        }
        const double flank = 2.0 * sigmaPx + 1.0;
        dip.beside = plate - 0.5 * (light(at + left * flank, along) + light(at - left * flank, along));
        dip.offset = weight > 0.0 ? std::clamp(moment / weight, -0.6, 0.6) : 0.0;
        return dip;
    }
};

PixelPoint unit(PixelPoint v) {
    return v * (1.0 / std::max(norm(v), 1e-12));
}

/// Width of the body a little before the end of the line.
double widthBeforeEnd(const Midline& midline, std::size_t back) {
    const std::size_t i = midline.spinePx.size() - 1 - std::min(back, midline.spinePx.size() - 1);
    return midline.leftHalfWidthPx[i] + midline.rightHalfWidthPx[i];
}

/// The midline carried on past its last station.
void carryOn(const Follower& follower, Midline& midline, double contrast, double longestPx) {
    const std::size_t n = midline.spinePx.size();
    const std::size_t back = std::min<std::size_t>(n - 1, static_cast<std::size_t>(6.0 + 3.0 * follower.sigmaPx));
    PixelPoint along = unit(midline.spinePx[n - 1] - midline.spinePx[n - 1 - back]);
    PixelPoint at = midline.spinePx[n - 1] - along * (2.0 + follower.sigmaPx);
    double usual = follower.dipAt(at - along * 3.0, along).depth;
    const PixelPoint tip = midline.spinePx[n - 1];
    std::vector<PixelPoint> thread;
    for (double gone = 0.0; gone < longestPx; gone += 1.0) {
        const PixelPoint ahead = at + along;
        const Dip dip = follower.dipAt(ahead, along);
        if (dip.depth < kHolds * usual || dip.depth < kLeastDip * contrast || dip.beside > kWide * dip.depth) break;
        const PixelPoint left{along.y, -along.x};
        const PixelPoint next = ahead + left * (0.5 * dip.offset);
        along = unit(along * 6.0 + unit(next - at));
        at = next;
        usual += (dip.depth - usual) / kMeanSteps;
        thread.push_back(at);
    }
    // An outline that only lacks a pixel or two is better than its thread.
    std::size_t past = 0;
    while (past < thread.size() && dot(thread[past] - tip, along) < 0.5) ++past;
    if (static_cast<double>(thread.size()) < static_cast<double>(past) + 4.0 + 3.0 * follower.sigmaPx) return;
    for (std::size_t i = past; i < thread.size(); ++i) {
        midline.spinePx.push_back(thread[i]);
        midline.leftHalfWidthPx.push_back(0.0);
        midline.rightHalfWidthPx.push_back(0.0);
    }
}

}  // namespace

Midline withFadingEnds(const Photo& photo, const Outline& outline, Midline midline) {
    if (photo.grey.empty() || midline.spinePx.size() < 20 || outline.edgeBlurPx <= 0.0) return midline;
    const Follower follower{photo.grey, photoTone(), outline.edgeBlurPx};
    const double longest = kLongestShare * midline.lengthPx();
    const PixelPoint middle = midline.spinePx[midline.spinePx.size() / 3];
    const auto body = static_cast<double>(lightAt(photo.grey, photoTone(), middle));
    for (int end = 0; end < 2; ++end) {
        if (widthBeforeEnd(midline, 6) < kThinInBlurs * outline.edgeBlurPx) {
            const double plate = body + follower.dipAt(middle, unit(midline.spinePx[1] - midline.spinePx[0])).depth;
            carryOn(follower, midline, std::max(0.1, plate - body), longest);
        }
        midline = reversed(midline);
    }
    return midline;
}

}  // namespace ringrule
