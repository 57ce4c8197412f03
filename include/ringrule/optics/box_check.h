// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/scale.h"
#include "ringrule/outcome.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// What can be wrong with a box.
enum class BoxFault {
    MarkersMissing,   ///< markers of the plate are hidden or dirty
    MarkerOff,        ///< one marker lies elsewhere than the others say
    PlateUneven,      ///< the corners scatter: the plate is bent, the print uneven, or the lens another
    PlateTilted,      ///< the camera stands oblique to the plate
    PlateUpsideDown,  ///< the plate's top is at the bottom of the photo
    DistanceOff,      ///< the plate looks as from another distance than the box file states
    NotThisCamera,    ///< the lens in the box file is not of this camera or setting, or there is none
    LengthOff,        ///< a rod of known length reads wrong
};

/// Stable id of a fault, e.g. "distance-off".
[[nodiscard]] std::string_view boxFaultId(BoxFault fault);

/// Every fault, in the order above.
[[nodiscard]] std::vector<BoxFault> allBoxFaults();

struct BoxFinding {
    BoxFault fault{};
    bool fails = false;    ///< measures taken now would be wrong; else it is only to be known
    std::string sentence;  ///< what is off and how to mend it
};

struct MarkerResidual {
    int id = -1;
    double rmsPx = 0.0;
};

/// What one photo of the plate says of its box.
struct PlateCheck {
    std::vector<MarkerResidual> markers;  ///< of each marker found
    int expectedMarkers = 0;
    double cornerRmsPx = 0.0;
    double cornerRmsMm = 0.0;
    std::optional<double> tiltDegrees;             ///< with a lens
    std::optional<double> cameraToWindowMm;        ///< as seen; with lens and media
    std::optional<double> statedCameraToWindowMm;  ///< as the box file says
    std::vector<BoxFinding> findings;

    [[nodiscard]] bool holds() const;
};

/// The box by its plate alone. A print at a wrong scale shows only as a wrong distance, like a camera that was moved: a
/// rod or a steel rule tells them apart.
[[nodiscard]] PlateCheck checkPlate(const Box& box, const FoundPlate& plate, const Scale& scale);

/// The same where `Scale::fromPlate` refuses: says whether one marker is at fault or the plate as a whole. Never holds.
[[nodiscard]] PlateCheck checkMisfit(const Box& box, const FoundPlate& plate, int imageWidthPx, int imageHeightPx);

enum class RodShape { Round, Flat };

/// A straight rod on the animal's plane as measured.
struct RodReading {
    Estimate lengthMm;
    double thicknessMm = 0.0;  ///< across, as seen
    double bendMm = 0.0;       ///< how far its sides depart from straight lines
};

/// The length of the rod whose outline is `boundaryPx` (closed), between its ends on its axis. The silhouette of a
/// round rod's flat end reaches beyond the end by radius · tan of the slant at which it is seen, which is taken off.
/// Refuses with "no-rod" when the outline is no straight rod.
[[nodiscard]] Outcome<RodReading> readRod(const std::vector<PixelPoint>& boundaryPx, const Box& box, const Scale& scale,
                                          RodShape shape = RodShape::Round);

/// What a rod of known length says of the box.
struct RodCheck {
    double statedMm = 0.0;
    RodReading reading;
    double relativeError = 0.0;  ///< read over stated, less 1
    double trueWithin = 0.0;     ///< relative: the error and what one reading leaves open, 95 %
    std::optional<BoxFinding> finding;
};

/// Compares a reading with the rod's stated length. It fails when the stated length lies outside the reading's own 95 %
/// interval, the one that measures of animals claim. Precondition: statedMm > 0.
[[nodiscard]] RodCheck checkRod(const Box& box, const PlateCheck& plate, const RodReading& reading, double statedMm);

}  // namespace ringrule
