// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/plate_homography.h"

#include <cmath>
#include <cstddef>

#include "optics/plate_markers.h"

namespace ringrule {

AnimalPoint PlateHomography::animalFromPixel(PixelPoint pixel) const {
    const PlatePoint at = footMm + (plateFromPixel(pixel) - footMm) * animalFromPlate;
    return {at.x, at.y};
}

PixelPoint PlateHomography::pixelFromAnimal(AnimalPoint point) const {
    return pixelFromPlate(footMm + (PlatePoint{point.x, point.y} - footMm) * (1.0 / animalFromPlate));
}

std::optional<PlateHomography> fitPlateHomography(const PlateLayout& plate, const std::vector<FoundMarker>& markers,
                                                  int imageWidthPx, int imageHeightPx) {
    std::vector<Eigen::Vector2d> pixels, platesMm;
    for (const FoundMarker& marker : markers) {
        const PlateMarker* printed = markerOfPlate(plate, marker.id);
        if (printed == nullptr) continue;
        const auto cornersMm = markerCornersMm(*printed);
        for (std::size_t k = 0; k < 4; ++k) {
            pixels.emplace_back(marker.cornersPx[k].x, marker.cornersPx[k].y);
            platesMm.emplace_back(cornersMm[k].x, cornersMm[k].y);
        }
    }
    const auto matrix = fitHomography(platesMm, pixels);
    if (pixels.size() < 8 || !matrix) return std::nullopt;

    PlateHomography result;
    result.pixelFromPlate = PlaneMap<PlateFrame, PixelFrame>(*matrix);
    result.plateFromPixel = result.pixelFromPlate.inverse();
    result.footMm = result.plateFromPixel({0.5 * (imageWidthPx - 1), 0.5 * (imageHeightPx - 1)});
    Eigen::Vector2d mean = Eigen::Vector2d::Zero();
    for (const auto& p : pixels) mean += p / static_cast<double>(pixels.size());
    double misses = 0.0, spread = 0.0;
    for (std::size_t i = 0; i < pixels.size(); ++i) {
        const PixelPoint at = result.pixelFromPlate({platesMm[i].x(), platesMm[i].y()});
        misses += (Eigen::Vector2d(at.x, at.y) - pixels[i]).squaredNorm();
        spread += (pixels[i] - mean).squaredNorm();
    }
    const auto count = static_cast<double>(pixels.size());
    result.rmsPx = std::sqrt(misses / count);
    // A similarity's scale has variance sd² / spread; the homography's six other parameters share the corners with it,
    // which costs up to a factor of two in the plate's middle.
    const double cornerSdPx = std::sqrt(misses / (2.0 * count - 8.0));
    result.relativeSd = 2.0 * cornerSdPx / std::sqrt(spread);
    return result;
}

}  // namespace ringrule
