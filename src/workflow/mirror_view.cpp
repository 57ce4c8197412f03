// SPDX-License-Identifier: GPL-3.0-or-later
#include "workflow/mirror_view.h"

#include <algorithm>
#include <cmath>

#include "ringrule/midline/midline.h"

namespace ringrule {
namespace {

struct Extent {
    double left = 1e300, right = -1e300, top = 1e300, bottom = -1e300;
};

/// Extent of an outline on the plate.
Extent extentOf(const Outline& outline, const Scale& scale) {
    Extent extent;
    for (const PixelPoint at : outline.boundaryPx) {
        const PlatePoint mm = scale.plateFromPixel(at);
        extent.left = std::min(extent.left, mm.x), extent.right = std::max(extent.right, mm.x);
        extent.top = std::min(extent.top, mm.y), extent.bottom = std::max(extent.bottom, mm.y);
    }
    return extent;
}

/// The image of the animal: the one that shares most of its reach across the plate; at least half of it.
const Outline* imageOf(const Outline& animal, const std::vector<Outline>& mirrored, const Scale& scale) {
    const Extent own = extentOf(animal, scale);
    const Outline* best = nullptr;
    double most = 0.5 * (own.right - own.left);
    for (const Outline& image : mirrored) {
        const Extent other = extentOf(image, scale);
        const double shared = std::min(own.right, other.right) - std::max(own.left, other.left);
        if (shared > most) most = shared, best = &image;
    }
    return best;
}

/// How high on the plate the animal's trunk hangs.
double heightOnPlateMm(const AnimalReading& animal, const Scale& scale) {
    double sum = 0.0;
    double weights = 0.0;
    const Midline& midline = animal.anatomy.midline;
    for (std::size_t i = 0; i < midline.spinePx.size(); ++i) {
        const double width = midline.leftHalfWidthPx[i] + midline.rightHalfWidthPx[i];
        sum += width * scale.animalFromPixel(midline.spinePx[i]).y;
        weights += width;
    }
    return weights > 0.0 ? sum / weights : std::nan("");
}

}  // namespace

MirroredOutlines partedByMirror(const std::vector<Outline>& outlines, const Box& box, const Scale& scale) {
    MirroredOutlines parted;
    const Mirror& mirror = *box.mirror;
    const double far = mirror.meetsPlateAtMm + (mirror.aboveAnimal ? -mirror.reachMm : mirror.reachMm);
    const auto [low, high] = std::minmax(mirror.meetsPlateAtMm, far);
    for (const Outline& outline : outlines) {
        const Extent extent = extentOf(outline, scale);
        const double middle = 0.5 * (extent.top + extent.bottom);
        (middle >= low && middle <= high ? parted.mirrored : parted.direct).push_back(outline);
    }
    return parted;
}

AnimalReading withMirroredWidth(const Photo& photo, const Box& box, const FoundPlate& plate,
                                const PhotoReading& reading, AnimalReading animal,
                                const std::vector<Outline>& mirrored) {
    const Outline* image = imageOf(animal.outline, mirrored, *reading.scale);
    const double hangsMm = heightOnPlateMm(animal, *reading.scale);
    if (image == nullptr || !std::isfinite(hangsMm)) return animal;
    Box unfolded = box;
    unfolded.animalPlane = {-std::abs(hangsMm - box.mirror->meetsPlateAtMm), box.mirror->toleranceMm};
    const auto scale = Scale::fromPlate(unfolded, plate, reading.widthPx, reading.heightPx);
    const auto midline = findMidline(photo, *image);
    if (!scale || !midline) return animal;
    const View view = animal.measurement.shape == Shape::Seahorse ? View::Front : View::Above;
    const auto anatomy = findLandmarks(photo, *image, midline.value(), {animal.measurement.shape, view});
    if (!anatomy) return animal;
    const Measurement second = measureAnimal(*image, anatomy.value(), scale.value(), {view, 0.0});
    animal.measurement = withSecondView(animal.measurement, second.trunkWidthMm, *reading.scale);
    return animal;
}

}  // namespace ringrule
