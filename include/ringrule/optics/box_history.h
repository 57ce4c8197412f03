// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/optics/box_check.h"
#include "ringrule/optics/box_file.h"

namespace ringrule {

/// The camera that took a photo, as its EXIF tells it; what is not told is empty and contradicts nothing.
struct CameraSeen {
    std::string make{};
    std::string model{};
    std::optional<double> focalLengthMm{};
};

/// Whether the two name different cameras, or focal lengths that differ by more than 2 %.
[[nodiscard]] bool differ(const CameraSeen& a, const CameraSeen& b);

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

/// What the checks so far say of measures taken on a day.
enum class BoxState {
    NeverChecked,  ///< no check on or before that day
    Passed,
    Failed,  ///< the last check says that the box does not measure true
    Stale,   ///< it did once: too long ago, or something was changed since
};

/// Stable id of a state, e.g. "never-checked".
[[nodiscard]] std::string_view boxStateId(BoxState state);
[[nodiscard]] std::optional<BoxState> boxStateFromId(std::string_view id);

struct BoxJudgement {
    BoxState state = BoxState::NeverChecked;
    /// Stable id of why: "never-checked", "checked", "check-failed", "rod-check-missing", "check-old", "camera-changed"
    /// or "box-changed".
    std::string reason = "never-checked";
    std::string sentence{};        ///< for a keeper: what is so, and what to do
    std::optional<int> ageDays{};  ///< since the check it rests on
};

struct BoxJudgementOptions {
    int mostRodAgeDays = 62;  ///< sessions are monthly: two of them
};

/// The state of a box on `day` ("YYYY-MM-DD"; a time after it is passed over) for photos of `camera`: only checks on
/// or before that day count. A failure stands until a check of the same kind passes: what a rod found wrong no photo of
/// the plate alone can mend. Only a rod tells true to scale, so without one that passed the box never passes.
[[nodiscard]] BoxJudgement judgeBox(const Box& box, const std::vector<PastBoxCheck>& history, std::string_view day,
                                    const CameraSeen& camera = {}, const BoxJudgementOptions& options = {});

}  // namespace ringrule
