// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/outcome.h"

namespace ringrule {

/// A chessboard as OpenCV counts it: corners where four squares meet, along its rows and down its columns.
struct Chessboard {
    int columns = 0;
    int rows = 0;
    double squareMm = 0.0;
};

/// What one photo shows of a flat pattern of known points. Pixels are those of the photo **as the camera stored it**,
/// before any turning by EXIF: a lens belongs to the sensor.
struct BoardView {
    std::filesystem::path path;
    int widthPx = 0;
    int heightPx = 0;
    std::string cameraMake;
    std::string cameraModel;
    std::optional<double> focalLengthMm{};
    std::optional<std::string> takenAt;
    std::vector<PixelPoint> seenPx;     ///< empty when the board was not found
    std::vector<PlatePoint> printedMm;  ///< the same points on the board
    double blurPx = 0.0;                ///< sigma of its edges, median; 0 when none could be judged
    std::string notFound;               ///< what to do when the board was not found
};

/// The chessboard in a photo, its corners refined to a few hundredths of a pixel. Precondition: at least 3 × 3 corners,
/// squareMm > 0.
[[nodiscard]] BoardView viewChessboard(const Photo& photo, const Chessboard& board);

/// The box's own plate in a photo taken in air: corners of its markers. `lens`, when a first one is known, lets the
/// markers' edges be fitted where they are straight.
[[nodiscard]] BoardView viewPlate(const Photo& photo, const Box& box, const std::optional<Lens>& lens = {});

/// What became of a lens photo.
enum class LensPhotoState {
    Used,
    TooSimilar,  ///< used, but its pose repeats that of another: it adds little
    Blurred,     ///< used, but its edges are soft against the others'
    Outlier,     ///< not used: its corners do not fit what all others say
    BoardNotFound,
    OtherSize,    ///< another size in pixels than most of the photos
    OtherCamera,  ///< EXIF names another camera or focal length than most of the photos
};

struct LensPhoto {
    std::filesystem::path path;
    LensPhotoState state = LensPhotoState::BoardNotFound;
    double rmsPx = 0.0;        ///< of its corners about the fit; 0 when there is no fit
    double tiltDegrees = 0.0;  ///< of the board against the camera's view
    double blurPx = 0.0;
    int points = 0;
    std::string advice;                  ///< what to do about it; empty when nothing
    std::vector<PixelPoint> seenPx{};    ///< its corners
    std::vector<PixelPoint> missesPx{};  ///< of each corner, seen less fitted; empty when there is no fit
};

/// A lens with how surely it is known. Standard deviations are those of the least-squares fit, for the scatter it
/// leaves.
struct FittedLens {
    Lens lens;
    LensOrigin origin;
    double rmsPx = 0.0;       ///< root mean square distance of all corners from where the fit puts them
    double focalSdPx = 0.0;   ///< the larger of both directions
    double centreSdPx = 0.0;  ///< the larger of both directions
    std::array<double, 5> distortionSd{};
    bool thirdRadialFixed = false;  ///< k3 could not be told from zero and was left out
    bool tangentialFixed = false;   ///< so p1 and p2
    LensCovariance covariance{};
};

/// A calibration and the photos it rests on. Either `fitted` or `refusal` is set.
struct LensReport {
    std::vector<LensPhoto> photos;  ///< in the order given
    double coverage = 0.0;          ///< share of the frame's cells that hold corners of a used photo
    int cellColumns = 0;
    int cellRows = 0;
    std::vector<int> cornersInCell;  ///< row by row
    std::optional<FittedLens> fitted;
    std::optional<Refusal> refusal;
};

struct LensCalibrationOptions {
    int leastPhotos = 5;           ///< that show the board in poses of their own
    double leastCoverage = 0.5;    ///< below, the lens's edge would be a guess
    double mostFocalSd = 0.005;    ///< relative; above, the angles do not tell focal length from distance
    double leastTiltDegrees = 10;  ///< of the most oblique photo
    double mostRmsPx = 1.5;        ///< above, the board is not flat or not the one that was named
};

/// The lens by which all views are told best (Zhang 2000, IEEE PAMI 22:1330–1334, with the distortion of Brown 1971),
/// by OpenCV's `calibrateCamera`. Photos that do not fit are left out once. k3, and p1 with p2, are left out when they
/// do not differ from zero by two standard errors: a coefficient that the photos do not hold bends the frame's corners
/// at random. Refuses with "too-few-lens-photos", "poor-coverage", "poor-angles" or "lens-not-determined".
[[nodiscard]] LensReport calibrateLens(const std::vector<BoardView>& views, const LensCalibrationOptions& options = {});

}  // namespace ringrule
