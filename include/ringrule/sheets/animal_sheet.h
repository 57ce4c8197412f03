// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/sheets/growth_chart.h"
#include "ringrule/sheets/overlay.h"

namespace ringrule {

/// What one page for a curator or veterinarian says of one animal.
struct AnimalSheet {
    AnimalHistory history;
    std::string tank;                    ///< where it lives now; may be empty
    std::string diet;                    ///< what it is fed now; may be empty
    Date asOf;                           ///< the session after which this was told
    std::vector<GrowthLine> lines;       ///< the animal, highlighted, among its tankmates
    std::vector<Finding> findings;       ///< of this animal
    std::filesystem::path photo;         ///< its newest side photo, or empty
    std::optional<OverlayAnimal> drawn;  ///< the animal in that photo
};

/// Writes the sheet as one A4 page of PDF: photo, findings with their other reasons and next steps, charts of length
/// and depth ratio, the newest sessions with their 95 % intervals, and what the numbers are not. Throws
/// `Error(BadPhoto)`, `Error(NoSpace)`.
void writeAnimalSheetPdf(const AnimalSheet& sheet, const std::filesystem::path& pdf);

}  // namespace ringrule
