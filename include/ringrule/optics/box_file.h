// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/geometry/point.h"

namespace ringrule {

struct PlateMarker {
    int id = -1;
    PlatePoint centreMm;
    double sideMm = 0.0;
};

struct PlateLayout {
    std::string dictionary;  ///< OpenCV's name, e.g. "DICT_4X4_50"
    double widthMm = 0.0;
    double heightMm = 0.0;
    std::vector<PlateMarker> markers;
};

/// Where the animal's mid-plane lies: before the plate, toward the camera.
struct AnimalPlane {
    double distanceFromPlateMm = 0.0;
    double toleranceMm = 0.0;  ///< half-width of the 95 % interval
};

/// What lies between the camera and the plate, all surfaces parallel to the plate.
struct Media {
    double cameraToWindowMm = 0.0;   ///< entrance pupil to the window's outer face
    double windowThicknessMm = 0.0;  ///< 0: the water's surface
    double windowIndex = 1.0;        ///< at 589.3 nm
    double waterToPlateMm = 0.0;     ///< window's inner face to the plate
    double salinityPpt = 0.0;
    double temperatureC = 20.0;
};

/// Pinhole with OpenCV's five distortion coefficients k1 k2 p1 p2 k3.
struct Lens {
    double focalXPx = 0.0;
    double focalYPx = 0.0;
    double centreXPx = 0.0;
    double centreYPx = 0.0;
    std::array<double, 5> distortion{};
    int imageWidthPx = 0;
    int imageHeightPx = 0;
};

/// Where a lens comes from; what is not known is empty.
struct LensOrigin {
    std::string calibratedOn;  ///< "YYYY-MM-DD"
    std::string cameraMake;    ///< as EXIF names it
    std::string cameraModel;
};

/// A measuring box as `calibration/NAME.json` describes it (format "ringrule-box/1", see `docs/box-file.md`).
struct Box {
    std::string name;
    PlateLayout plate;
    std::string cardDictionary;
    AnimalPlane animalPlane;
    std::optional<Media> media;
    std::optional<Lens> lens;
    LensOrigin lensOrigin;
};

/// The box in `path`. Throws `Error(BadBox)`, one sentence that names the field, for anything that cannot be used.
[[nodiscard]] Box readBox(const std::filesystem::path& path);

/// The same from text; `path` is for messages only.
[[nodiscard]] Box parseBox(std::string_view text, const std::filesystem::path& path = {});

}  // namespace ringrule
