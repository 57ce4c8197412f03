// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "ringrule/sentence.h"

namespace ringrule {

/// The camera that took a photo, as its EXIF tells it; what is not told is empty and contradicts nothing.
struct CameraSeen {
    std::string make{};
    std::string model{};
    std::optional<double> focalLengthMm{};
};

/// Whether the two name different cameras, or focal lengths that differ by more than 2 %.
[[nodiscard]] bool differ(const CameraSeen& a, const CameraSeen& b);

/// What the checks of a box say of measures taken on a day.
enum class BoxState {
    NeverChecked,  ///< no check on or before that day
    Passed,
    Failed,  ///< the last check, or the next one after that day, says that the box does not measure true
    Stale,   ///< it did once: too long ago, or something was changed since
};

/// Stable id of a state, e.g. "never-checked".
[[nodiscard]] std::string_view boxStateId(BoxState state);
[[nodiscard]] std::optional<BoxState> boxStateFromId(std::string_view id);

struct BoxJudgement {
    BoxState state = BoxState::NeverChecked;
    /// Stable id of why: "never-checked", "checked", "check-failed", "next-check-failed", "rod-check-missing",
    /// "check-old", "camera-changed" or "box-changed".
    std::string reason = "never-checked";
    Sentence sentence{};           ///< for a keeper: what is so, and what to do
    std::optional<int> ageDays{};  ///< since the check it rests on
};

struct BoxJudgementOptions {
    int mostRodAgeDays = 62;  ///< sessions are monthly: two of them
};

}  // namespace ringrule
