// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace ringrule {

enum class BoxVerdict { Holds, Fails, CannotTell };

[[nodiscard]] std::string_view boxVerdictName(BoxVerdict verdict);  ///< "holds", "fails", "cannot-tell"

/// One check of a measuring box, as the collection keeps it.
struct BoxCheckRecord {
    std::string at;  ///< ISO 8601: when the photo was taken, or else when it was checked
    std::string boxName;
    std::string keeper;
    bool withRod = false;  ///< a rod of known length was measured; else the plate alone was looked at
    BoxVerdict verdict = BoxVerdict::CannotTell;
    std::string sentences;  ///< what was found, for a keeper
    std::optional<double> markerRmsPx;
    std::optional<double> tiltDegrees;
    std::optional<double> cameraToWindowMm;
    std::optional<double> rodMm;      ///< stated
    std::optional<double> readMm;     ///< as read
    std::optional<double> readU95Mm;  ///< half-width of its 95 % interval
    std::string photoName;
    std::string photoHash;
    std::string boxFingerprint;        ///< of the box file as it was then; see `boxFingerprint` of the optics
    std::optional<double> trueWithin;  ///< relative: error and what one reading leaves open, 95 %
    std::string cameraMake;            ///< as the photo's EXIF tells it; empty: it does not
    std::string cameraModel;
    std::optional<double> focalLengthMm;
};

}  // namespace ringrule
