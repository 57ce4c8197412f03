// SPDX-License-Identifier: GPL-3.0-or-later
#include "midline/trunk_taper.h"

#include <algorithm>
#include <cmath>

namespace ringrule {
namespace {

constexpr double kPouchBulge = 0.05;   ///< of the greatest depth: what bulges more is a pouch
constexpr double kPouchBegins = 0.04;  ///< of the greatest bulge: where the pouch begins and ends
constexpr double kTailShare = 0.9;     ///< of the body: behind it no pouch is looked for

/// Widths bridged from below between two stations, ends included.
std::vector<double> bridged(const std::vector<double>& widths, std::size_t from, std::size_t to) {
    std::vector<std::size_t> hull;
    const auto above = [&](std::size_t a, std::size_t b, std::size_t c) {
        const double slope = (widths[c] - widths[a]) / static_cast<double>(c - a);
        return widths[b] >= widths[a] + slope * static_cast<double>(b - a);
    };
    for (std::size_t i = from; i <= to; ++i) {
        while (hull.size() >= 2 && above(hull[hull.size() - 2], hull.back(), i)) hull.pop_back();
        hull.push_back(i);
    }
    std::vector<double> result = widths;
    for (std::size_t k = 1; k < hull.size(); ++k) {
        const auto span = static_cast<double>(hull[k] - hull[k - 1]);
        for (std::size_t i = hull[k - 1]; i < hull[k]; ++i) {
            const double t = static_cast<double>(i - hull[k - 1]) / span;
            result[i] = widths[hull[k - 1]] * (1.0 - t) + widths[hull[k]] * t;
        }
    }
    return result;
}

/// The first station behind `from`, between stations, where the width has fallen to `widthPx`; 0 when it does not.
double firstBelow(const std::vector<double>& widths, std::size_t from, std::size_t to, double widthPx) {
    for (std::size_t i = from + 1; i < to; ++i) {
        if (widths[i] > widthPx) continue;
        const double t = (widths[i - 1] - widthPx) / std::max(widths[i - 1] - widths[i], 1e-9);
        return static_cast<double>(i - 1) + std::clamp(t, 0.0, 1.0);
    }
    return 0.0;
}

PixelPoint leftOf(const Midline& midline, std::size_t i) {
    const std::size_t before = i < 3 ? 0 : i - 3;
    const std::size_t after = std::min(i + 3, midline.spinePx.size() - 1);
    const PixelPoint step = midline.spinePx[after] - midline.spinePx[before];
    const double length = std::max(norm(step), 1e-12);
    return {step.y / length, -step.x / length};
}

}  // namespace

TrunkTaper trunkTaper(const WidthProfile& profile, std::size_t thickest, double endWidthPx) {
    TrunkTaper taper;
    const std::vector<double>& widths = profile.widthPx;
    taper.bodyWidthPx = widths;
    const auto last = static_cast<std::size_t>(kTailShare * static_cast<double>(widths.size() - 1));
    if (last < thickest + 12) return taper;
    const std::vector<double> hull = bridged(widths, thickest, last);
    const double greatest = widths[thickest];
    taper.trunkEndStation = firstBelow(hull, thickest, last, endWidthPx);
    std::size_t most = thickest;
    // The trunk's own round shoulder lies before its end: a pouch bulges behind it.
    for (auto i = static_cast<std::size_t>(std::max(taper.trunkEndStation, 1.0)); i < last; ++i) {
        if (widths[i] - hull[i] > widths[most] - hull[most]) most = i;
    }
    const double bulge = widths[most] - hull[most];
    if (taper.trunkEndStation <= 0.0 || bulge < kPouchBulge * greatest) {
        // Nothing to bridge: the trunk's round shoulder counts, which the hull cuts off.
        taper.trunkEndStation = firstBelow(widths, thickest, last, endWidthPx);
        return taper;
    }
    taper.pouchFrom = taper.pouchTo = most;
    while (taper.pouchFrom > thickest + 1 && widths[taper.pouchFrom] - hull[taper.pouchFrom] > kPouchBegins * bulge)
        --taper.pouchFrom;
    while (taper.pouchTo + 1 < last && widths[taper.pouchTo] - hull[taper.pouchTo] > kPouchBegins * bulge)
        ++taper.pouchTo;
    for (std::size_t i = taper.pouchFrom; i <= taper.pouchTo; ++i) taper.bodyWidthPx[i] = hull[i];
    return taper;
}

Midline withoutPouch(Midline midline, const TrunkTaper& taper, bool ventralOnLeft) {
    if (!taper.pouch()) return midline;
    const Midline before = midline;
    for (std::size_t i = taper.pouchFrom; i <= taper.pouchTo; ++i) {
        const double width = before.leftHalfWidthPx[i] + before.rightHalfWidthPx[i];
        const double bulge = std::max(0.0, width - taper.bodyWidthPx[i]);
        if (width <= 0.0) continue;
        const PixelPoint toBack = leftOf(before, i) * (ventralOnLeft ? -1.0 : 1.0);
        const double back = ventralOnLeft ? before.rightHalfWidthPx[i] : before.leftHalfWidthPx[i];
        const double half = 0.5 * (width - bulge);
        midline.spinePx[i] = before.spinePx[i] + toBack * (back - half);
        midline.leftHalfWidthPx[i] = midline.rightHalfWidthPx[i] = half;
    }
    return midline;
}

std::vector<PixelPoint> pouchOutline(const Midline& withPouch, const TrunkTaper& taper, bool ventralOnLeft) {
    std::vector<PixelPoint> outline;
    if (!taper.pouch()) return outline;
    std::vector<PixelPoint> rim;
    for (std::size_t i = taper.pouchFrom; i <= taper.pouchTo; ++i) {
        const double width = withPouch.leftHalfWidthPx[i] + withPouch.rightHalfWidthPx[i];
        if (width <= 0.0) continue;
        const PixelPoint toBelly = leftOf(withPouch, i) * (ventralOnLeft ? 1.0 : -1.0);
        const double belly = ventralOnLeft ? withPouch.leftHalfWidthPx[i] : withPouch.rightHalfWidthPx[i];
        rim.push_back(withPouch.spinePx[i] + toBelly * belly);
        outline.push_back(withPouch.spinePx[i] + toBelly * (belly - std::max(0.0, width - taper.bodyWidthPx[i])));
    }
    outline.insert(outline.end(), rim.rbegin(), rim.rend());
    return outline;
}

}  // namespace ringrule
