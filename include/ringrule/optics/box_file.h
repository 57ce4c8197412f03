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
    double flatnessMm = 0.5;  ///< how far its face may bow, half-width of the 95 % interval
};

/// How large a plate was printed: measured over stated length, across the plate (x) and down it (y).
struct PrintScale {
    double across = 1.0;
    double down = 1.0;
};

/// Printers are a few per cent off at most: beyond this the page was fitted or cropped, or the reading is a slip.
inline constexpr double kMostPrintError = 0.1;

/// That the print was measured with a steel rule; the layout's millimetres are those after the correction.
struct RuleCheck {
    PrintScale scale;
    std::string checkedOn{};  ///< "YYYY-MM-DD", empty when the file does not say
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
    std::optional<double> focalLengthMm{};  ///< as EXIF tells it
    std::optional<double> rmsPx{};          ///< of the corners about the fit
};

/// Covariance of a fitted lens: rows and columns are focalX, focalY, centreX, centreY (px) and k1 k2 p1 p2 k3. What was
/// held fixed has zeros.
using LensCovariance = std::array<std::array<double, 9>, 9>;

/// A flat mirror at 45° in the box, along the plate: one photo shows the animal from the side and, in the mirror, from
/// above or below. Its plane meets the plate in a line across it.
struct Mirror {
    bool aboveAnimal = true;      ///< above the animal on the photo, or below it
    double meetsPlateAtMm = 0.0;  ///< y of that line, plate frame
    double reachMm = 0.0;         ///< how much of the plate's height, from the line on, the mirror covers on the photo
    double toleranceMm = 1.0;     ///< of the mirrored path's length, half-width of the 95 % interval
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
    std::optional<LensCovariance> lensCovariance{};  ///< how surely the lens is known
    std::optional<RuleCheck> ruleCheck{};
    std::optional<Mirror> mirror{};
};

/// The box in `path`. Throws `Error(BadBox)`, one sentence that names the field, for anything that cannot be used.
[[nodiscard]] Box readBox(const std::filesystem::path& path);

/// The same from text; `path` is for messages only.
[[nodiscard]] Box parseBox(std::string_view text, const std::filesystem::path& path = {});

}  // namespace ringrule
