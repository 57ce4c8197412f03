// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// Random boxes as they truly are, with what their files say of them, and rods before their plates.

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

#include "optics.h"
#include "ringrule/optics/plate.h"

namespace rods {

using namespace ringrule;

constexpr int kWidthPx = 4000, kHeightPx = 3000;
constexpr double kPlateWidthMm = 200.0, kPlateHeightMm = 120.0;

// A box as it truly is, and what its file says of it.
struct TrueBox {
    render::Lens lens;
    render::Media media;
    render::CameraPose pose;
    double heightMm = 0.0;  // of the animal's plane before the plate
    Box stated;

    [[nodiscard]] render::Camera camera() const {
        return {lens, media, render::seaWaterIndex(media.salinityPpt, media.temperatureC), pose};
    }
};

using Random = std::mt19937_64;

inline double between(Random& random, double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
}

inline PlateLayout plateLayout() {
    PlateLayout plate{"DICT_4X4_50", kPlateWidthMm, kPlateHeightMm, {}};
    int id = 0;
    for (const double y : {12.0, 108.0})
        for (const double x : {12.0, 70.0, 130.0, 188.0}) plate.markers.push_back({id++, {x, y}, 12.0});
    return plate;
}

// Whether the whole plate is in the photo, a little inside its edge.
inline bool plateInFrame(const render::Camera& camera) {
    return std::all_of(std::begin({0, 1, 2, 3}), std::end({0, 1, 2, 3}), [&](int k) {
        const cv::Point2d px = camera.pxFromPlate({k % 2 * kPlateWidthMm, k / 2 * kPlateHeightMm}, 0.0);
        return px.x > 20 && px.y > 20 && px.x < kWidthPx - 20 && px.y < kHeightPx - 20;
    });
}

// Distance 200–900 mm from camera to plate, tilt to 12°, animal plane 0–40 mm before the plate, distortion to 6 % at
// the corner of the photo, fresh to sea water. The distance in the file is wrong by 1 % (one standard deviation), as by
// a rule held to the barrel.
inline TrueBox randomBox(Random& random) {
    TrueBox box;
    const double distanceMm = between(random, 200.0, 900.0);
    box.heightMm = between(random, 0.0, 40.0);
    box.media.waterToPlateMm = between(random, box.heightMm + 5.0, std::min(150.0, 0.5 * distanceMm));
    box.media.windowThicknessMm = between(random, 0.0, 15.0);
    box.media.windowIndex = between(random, 0.0, 1.0) < 0.5 ? 1.4917 : 1.52;
    box.media.cameraToWindowMm = distanceMm - box.media.waterToPlateMm - box.media.windowThicknessMm;
    box.media.salinityPpt = between(random, 0.0, 35.0);
    box.media.temperatureC = between(random, 15.0, 30.0);
    const double tilt = between(random, 0.0, 12.0), way = between(random, 0.0, 2.0 * render::kPi);
    box.pose = {{kPlateWidthMm / 2, kPlateHeightMm / 2},
                tilt * std::cos(way),
                tilt * std::sin(way),
                between(random, -8.0, 8.0)};
    double focal = 0.95 * kWidthPx * distanceMm / kPlateWidthMm;
    const double atCorner = between(random, -0.06, 0.06), share = between(random, -0.3, 0.3);
    do {
        focal *= 0.97;
        const double corner2 = 0.25 * (kWidthPx * kWidthPx + kHeightPx * kHeightPx) / (focal * focal);
        box.lens = {focal, focal * 1.0008, 0.5 * kWidthPx + 15.0, 0.5 * kHeightPx - 11.0, {}, kWidthPx, kHeightPx};
        box.lens.distortion = {atCorner * (1.0 - share) / corner2, atCorner * share / (corner2 * corner2), 2e-4, -3e-4,
                               0.0};
    } while (!plateInFrame(box.camera()));
    box.stated.name = "rods";
    box.stated.plate = plateLayout();
    box.stated.cardDictionary = "DICT_5X5_1000";
    box.stated.animalPlane = {box.heightMm, 1.0};
    const auto& m = box.media;
    box.stated.media = Media{m.cameraToWindowMm * (1.0 + 0.01 * std::normal_distribution<double>()(random)),
                             m.windowThicknessMm,
                             m.windowIndex,
                             m.waterToPlateMm,
                             m.salinityPpt,
                             m.temperatureC};
    const auto& l = box.lens;
    box.stated.lens = Lens{l.fxPx, l.fyPx, l.cxPx, l.cyPx, l.distortion, l.widthPx, l.heightPx};
    return box;
}

constexpr std::array<std::array<int, 2>, 4> kTurns{{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}};

// The plate as a detector finds it: corners with an error of `noisePx` in each direction.
inline FoundPlate seenPlate(const TrueBox& box, double noisePx, Random& random) {
    const render::Camera camera = box.camera();
    std::normal_distribution<double> noise(0.0, noisePx);
    FoundPlate plate;
    plate.expectedMarkers = static_cast<int>(box.stated.plate.markers.size());
    const auto at = [&camera](double x, double y) {
        const cv::Point2d px = camera.pxFromPlate({x, y}, 0.0);
        return PixelPoint{px.x, px.y};
    };
    for (const PlateMarker& marker : box.stated.plate.markers) {
        FoundMarker found{marker.id, {}};
        const double h = 0.5 * marker.sideMm;
        for (std::size_t k = 0; k < 4; ++k) {
            const auto [sx, sy] = kTurns[k];
            const PixelPoint px = at(marker.centreMm.x + sx * h, marker.centreMm.y + sy * h);
            found.cornersPx[k] = px + PixelPoint{noise(random), noise(random)};
        }
        plate.markers.push_back(found);
    }
    plate.cornersPx = {at(0, 0), at(kPlateWidthMm, 0), at(kPlateWidthMm, kPlateHeightMm), at(0, kPlateHeightMm)};
    return plate;
}

struct Rod {
    cv::Point2d from;
    cv::Point2d to;
};

// A rod of 30–150 mm somewhere before the plate, both ends over it.
inline Rod randomRod(Random& random) {
    const auto inside = [](cv::Point2d p) {
        return p.x > 5 && p.y > 5 && p.x < kPlateWidthMm - 5 && p.y < kPlateHeightMm - 5;
    };
    while (true) {
        const double length = between(random, 30.0, 150.0), angle = between(random, 0.0, render::kPi);
        const cv::Point2d from(between(random, 5.0, 195.0), between(random, 5.0, 115.0));
        const cv::Point2d to = from + length * cv::Point2d(std::cos(angle), std::sin(angle));
        if (inside(from) && inside(to)) return {from, to};
    }
}

}  // namespace rods
