// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "ringrule/optics/box_file.h"

namespace ringrule {

/// The text of a box file that `parseBox` reads back as the same box.
[[nodiscard]] std::string boxText(const Box& box);

/// Writes the box file whole or not at all, over one that is there. Throws `Error(NoSpace)`.
void writeBox(const Box& box, const std::filesystem::path& path);

// The following put one part into a box file, in place of what is there. All else in the file stays, also what Ringrule
// does not know. They throw `Error(BadBox)` when the file, before or after, is no box file, `Error(NoSpace)`; the file
// is then as it was.

/// A lens, where it comes from, and how surely it is known.
void writeLens(const Lens& lens, const LensOrigin& origin, const std::filesystem::path& path,
               const std::optional<LensCovariance>& covariance = {});

/// What lies between camera and plate.
void writeMedia(const Media& media, const std::filesystem::path& path);

/// Where the animal is.
void writeAnimalPlane(const AnimalPlane& plane, const std::filesystem::path& path);

/// Markers are square in a box file: a plate whose two scales differ by more cannot be described well.
inline constexpr double kMostPrintSkew = 0.01;

/// What a correction for the print did.
struct RescaledPlate {
    double widthMm = 0.0;  ///< of the plate as printed
    double heightMm = 0.0;
    PrintScale before;  ///< scale the file had been corrected for already; 1 when it had not
};

/// Corrects the plate's millimetres in a box file for the print: places and size by the scale of their direction, sides
/// of markers by the mean of both. The scale is kept in the file as `plate.print_scale`, and replaces one that is
/// there: the same correction twice changes nothing. `checkedOn` ("YYYY-MM-DD"), when given, is kept beside it. Fields
/// that Ringrule does not know stay. Throws `Error(BadUse)`
/// for a scale beyond `kMostPrintError` or `kMostPrintSkew`, `Error(BadBox)`, `Error(NoSpace)`; the file is then as it
/// was.
RescaledPlate rescaleBoxFile(const std::filesystem::path& path, const PrintScale& scale,
                             const std::string& checkedOn = {});

}  // namespace ringrule
