// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <span>
#include <string>
#include <string_view>

#include "ringrule/optics/box_file.h"
#include "ringrule/sheets/paper.h"

namespace ringrule {

/// A plate's width and height. Animals lie along the width; a seahorse that stands wants a plate taller than wide.
struct PlateSize {
    double widthMm = 0.0;
    double heightMm = 0.0;
};

/// A size that has a name.
struct NamedPlateSize {
    std::string_view name;
    PlateSize size;
    std::string_view use;  ///< for which animals
};

/// From trays of fry to the longest pipefish.
[[nodiscard]] std::span<const NamedPlateSize> namedPlateSizes();

/// Sides of 60 to 1000 mm.
inline constexpr double kShortestPlateMm = 60.0;
inline constexpr double kLongestPlateMm = 1000.0;

/// The size of that name, or as "200x120". Throws `Error(BadUse)` for what is neither, or out of bounds.
[[nodiscard]] PlateSize plateSizeOf(std::string_view text);

/// Markers of DICT_4X4_50 along the two longer rims, at least six, a tenth of the shorter side each (7 to 18 mm), at
/// steps of about half the shorter side: several may be hidden, and the middle is free. The left and the lower rim
/// leave room for the millimetre scales. Precondition: sides within bounds.
[[nodiscard]] PlateLayout plateLayout(const PlateSize& size);

/// A box with that plate and nothing measured yet: no lens, no media, and an animal's plane with a tolerance so wide
/// that it holds wherever the animal swims near the plate.
[[nodiscard]] Box boxForPlate(const PlateLayout& plate, const std::string& name);

enum class PlateTone {
    Pale,  ///< white ground
    Dark,  ///< dark ground for pale and transparent animals; markers stand on white patches
};

struct PlateSheetOptions {
    Paper paper = Paper::A4;
    PlateTone tone = PlateTone::Pale;
    std::string boxFile = "FILE";  ///< name of the box file, for what the sheet tells the keeper to type
};

/// Writes the plate as PDF at true scale and its box file, both or neither. A plate larger than the paper goes over
/// several sheets with marks for joining. Check bars across and down are to be measured with a steel rule; the last
/// page tells how to make the plate. Returns the number of sheets that make the plate. Throws `Error(BadUse)` when the
/// box file is there already (it may hold a lens and media), `Error(NoSpace)`.
int writePlate(const Box& box, const std::filesystem::path& pdf, const std::filesystem::path& boxFile,
               const PlateSheetOptions& options = {});

}  // namespace ringrule
