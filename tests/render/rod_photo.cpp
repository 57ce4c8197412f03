// SPDX-License-Identifier: GPL-3.0-or-later
#include "rod_photo.h"

#include "optics.h"
#include "photo_file.h"
#include "plate_drawing.h"
#include "random.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace render {

namespace {

constexpr int kRaysAcross = 4;
constexpr double kStripTone = 22.0, kWallTone = 40.0;
constexpr double kNoiseTone = 1.2;  // standard deviation

// Whether a point on the strip's plane lies on it.
bool onStrip(const RodScene& scene, cv::Point2d mm) {
    const cv::Point2d whole = scene.toMm - scene.fromMm;
    const double length = std::hypot(whole.x, whole.y);
    const cv::Point2d along = whole / length;
    const cv::Point2d from = mm - scene.fromMm;
    const double s = from.dot(along);
    return s >= 0.0 && s <= length && std::abs(from.cross(along)) <= 0.5 * scene.widthMm;
}

double plateTone(const PlatePicture& plate, cv::Point2d printedMm) {
    const cv::Point texel(static_cast<int>(std::floor(printedMm.x * plate.pxPerMm)),
                          static_cast<int>(std::floor(printedMm.y * plate.pxPerMm)));
    const bool inside = cv::Rect({0, 0}, plate.reflectance.size()).contains(texel);
    return inside ? 0.85 * plate.reflectance(texel) : kWallTone;
}

}  // namespace

void photographRod(const RodScene& scene, const std::filesystem::path& file) {
    if (!scene.box.media || !scene.box.lens) throw std::invalid_argument("a rod's box needs media and lens");
    const Media& media = *scene.box.media;
    const Lens& lens = *scene.box.lens;
    const Camera camera(lens, media, seaWaterIndex(media.salinityPpt, media.temperatureC), scene.camera);
    const PlatePicture plate = drawPlate(scene.box, {}, {}, scene.seed);
    Random noise(seedOf(scene.seed, 77));
    cv::Mat3b photo(lens.heightPx, lens.widthPx);
    for (int row = 0; row < photo.rows; ++row) {
        for (int column = 0; column < photo.cols; ++column) {
            double sum = 0.0;
            for (int k = 0; k < kRaysAcross * kRaysAcross; ++k) {
                const cv::Point2d px(column + (k % kRaysAcross + 0.5) / kRaysAcross - 0.5,
                                     row + (k / kRaysAcross + 0.5) / kRaysAcross - 0.5);
                const bool strip = onStrip(scene, camera.plateFromPx(px, scene.box.animalDistanceMm));
                sum += strip ? kStripTone : plateTone(plate, camera.plateFromPx(px, 0.0) / scene.printScale);
            }
            const double tone = sum / (kRaysAcross * kRaysAcross) + noise.normal(0.0, kNoiseTone);
            const auto grey = static_cast<unsigned char>(std::clamp(std::lround(tone), 0L, 255L));
            photo(row, column) = {grey, grey, grey};
        }
    }
    writePhoto(photo, {"", 1, 95}, file);
}

}  // namespace render
