// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/body_in_mm.h"

#include <algorithm>
#include <cmath>

#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

/// Unit vector to the left of the walk along the midline at a station.
PixelPoint leftAt(const std::vector<PixelPoint>& spine, std::size_t i) {
    const std::size_t before = i < 3 ? 0 : i - 3;
    const std::size_t after = std::min(i + 3, spine.size() - 1);
    const PixelPoint step = spine[after] - spine[before];
    const double length = std::max(norm(step), 1e-12);
    return {step.y / length, -step.x / length};
}

}  // namespace

double BodyInMm::alongAt(double px) const {
    const auto above = std::upper_bound(alongPx.begin(), alongPx.end(), px) - alongPx.begin();
    const auto i = static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(above, 1, std::ssize(alongPx) - 1));
    const double step = alongPx[i] - alongPx[i - 1];
    const double t = step > 0.0 ? std::clamp((px - alongPx[i - 1]) / step, 0.0, 1.0) : 0.0;
    return along[i - 1] + t * (along[i] - along[i - 1]);
}

BodyInMm bodyInMm(const Midline& midline, const Scale& scale) {
    BodyInMm body;
    for (std::size_t i = 0; i < midline.spinePx.size(); ++i) {
        const PixelPoint at = midline.spinePx[i];
        const PixelPoint left = leftAt(midline.spinePx, i);
        body.spine.push_back(scale.animalFromPixel(at));
        body.left.push_back(scale.animalFromPixel(at + left * midline.leftHalfWidthPx[i]));
        body.right.push_back(scale.animalFromPixel(at - left * midline.rightHalfWidthPx[i]));
        body.depth.push_back(distance(body.left.back(), body.right.back()));
    }
    body.along = arcLengths<AnimalFrame>(body.spine);
    body.alongPx = arcLengths<PixelFrame>(midline.spinePx);
    return body;
}

std::optional<Place> placeOf(const BodyInMm& body, const Midline& midline, const std::optional<Landmark>& landmark,
                             const Scale& scale) {
    if (!landmark) return std::nullopt;
    const auto onLine = project<PixelFrame>(midline.spinePx, landmark->atPx);
    return Place{body.alongAt(onLine.along), landmark->sdAlongPx * scale.mmPerPx(landmark->atPx), onLine.along};
}

}  // namespace ringrule
