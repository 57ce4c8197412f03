// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "ringrule/husbandry/date.h"

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
};

/// What the checks of a box say of measures taken with it on a day.
enum class BoxStanding {
    Good,          ///< the last check that told anything holds and is not too old
    NeverChecked,  ///< no check told anything before that day
    Stale,         ///< the last check holds, but is older than the limit
    Failed,        ///< the last check before failed, or the next one after it did: the box may have been off
};

/// The standing of one box on a day. `checks` are those of that box in order of time; checks that could not tell count
/// for nothing. A measure between a check that holds and the next one that fails is told as failed, because nobody
/// knows when the box went off.
[[nodiscard]] BoxStanding boxStanding(std::span<const BoxCheckRecord> checks, Date on, int goodForDays);

/// How long a check is good for unless the collection says otherwise: a session is monthly, so two sessions.
inline constexpr int kBoxCheckGoodForDays = 62;

}  // namespace ringrule
