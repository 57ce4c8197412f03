// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/optics/box_check.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/optics/box_judgement.h"

namespace ringrule {

/// How a rod of known length read.
struct PastRodReading {
    double statedMm = 0.0;
    double readMm = 0.0;
    double u95Mm = 0.0;       ///< half-width of the reading's 95 % interval
    double trueWithin = 0.0;  ///< relative, 95 %
};

/// What one check of a box found, as a collection keeps it.
struct PastBoxCheck {
    std::string checkedOn{};  ///< "YYYY-MM-DD", the photo's own day
    bool passed = false;
    std::optional<PastRodReading> rod{};  ///< none: the plate alone, or no rod was found
    std::vector<BoxFinding> findings{};   ///< of plate and rod
    std::string refusalReason{};          ///< why the photo could not tell; empty when it could
    std::string refusalSentence{};
    CameraSeen camera{};
    std::string boxFingerprint{};  ///< of the box file as it was then
};

/// Short text that is the same for boxes by which a photo is measured alike, and changes when plate, animal's plane,
/// distances, window or lens do. Name, salinity and temperature do not count: water changes from day to day, and the
/// index with it by parts in a thousand.
[[nodiscard]] std::string boxFingerprint(const Box& box);

/// What the checks of a box say of photos of `camera` measured on `day` ("YYYY-MM-DD"; a time after it is passed over)
/// with the box file of that fingerprint (empty: not known, and nothing is told from it). A failure stands until a
/// check of the same kind passes: what a rod found wrong no photo of the plate alone can mend. Only a rod tells true to
/// scale, so without one that passed the box never passes. When the next check after that day fails, the box may have
/// been off that day already and counts as failed: nobody knows when it went off.
[[nodiscard]] BoxJudgement judgeBox(std::string_view fingerprint, const std::vector<PastBoxCheck>& history,
                                    std::string_view day, const CameraSeen& camera = {},
                                    const BoxJudgementOptions& options = {});

}  // namespace ringrule
