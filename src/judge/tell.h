// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "judge/case_file.h"
#include "judge/lagging.h"
#include "judge/thinness.h"
#include "ringrule/judge/finding.h"

namespace ringrule {

/// What a finding is told from: all animals, and which one it is about.
struct Telling {
    const Casebook* book = nullptr;
    std::size_t of = 0;
    Date on;

    [[nodiscard]] const AnimalHistory& animal() const { return book->animal(of); }
    [[nodiscard]] const JudgeOptions& options() const { return book->options(); }
};

/// A finding with its animal, day and kind filled in.
[[nodiscard]] Finding findingOn(const Telling& telling, FindingKind kind);

/// Words and numbers of a verdict that flags. Precondition: thin or thinner.
[[nodiscard]] Finding tellThinness(const Telling& telling, const ThinnessVerdict& verdict);
/// Precondition: behind, small or stalled.
[[nodiscard]] Finding tellLagging(const Telling& telling, const LaggingVerdict& verdict);
[[nodiscard]] Finding tellDoubt(const Telling& telling, const Doubt& doubt);
[[nodiscard]] Finding tellJump(const Telling& telling, const Estimate& logExcess);
/// A record that cannot be true, in the words of `impossible`.
[[nodiscard]] Finding tellImpossible(const Telling& telling, const std::string& why);
[[nodiscard]] Finding tellCannot(const Telling& telling, const std::string& why, const std::string& nextStep);

/// Food refused on days running up to the last note, when that is recent: a finding, or nothing.
[[nodiscard]] std::optional<Finding> tellNotFeeding(const Telling& telling);

/// Codes of some of the animals.
[[nodiscard]] std::vector<std::string> codesOf(const Telling& telling, const std::vector<std::size_t>& indices);

/// "no session between 2031-03-04 and 2031-06-03", for the gap before the last session if it is long; else empty.
[[nodiscard]] std::string missedSessions(const Telling& telling);

}  // namespace ringrule
