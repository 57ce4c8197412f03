// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

#include "ringrule/optics/box_file.h"

namespace ringrule {

/// The text of a box file that `parseBox` reads back as the same box.
[[nodiscard]] std::string boxText(const Box& box);

/// Writes the box file whole or not at all, over one that is there. Throws `Error(NoSpace)`.
void writeBox(const Box& box, const std::filesystem::path& path);

/// Puts a lens and where it comes from into a box file, in place of one that is there. All else in the file stays, also
/// what Ringrule does not know. Throws `Error(BadBox)` when the file, before or after, is no box file,
/// `Error(NoSpace)`; the file is then as it was.
void writeLens(const Lens& lens, const LensOrigin& origin, const std::filesystem::path& path);

/// Printers are a few per cent off at most: beyond this the page was fitted or cropped, or the reading is a slip.
inline constexpr double kMostPrintError = 0.1;
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
/// there: the same correction twice changes nothing. Fields that Ringrule does not know stay. Throws `Error(BadUse)`
/// for a scale beyond `kMostPrintError` or `kMostPrintSkew`, `Error(BadBox)`, `Error(NoSpace)`; the file is then as it
/// was.
RescaledPlate rescaleBoxFile(const std::filesystem::path& path, const PrintScale& scale);

}  // namespace ringrule
