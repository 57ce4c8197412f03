// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <string>

#include "judge/case_file.h"
#include "judge/lagging.h"
#include "judge/thinness.h"
#include "ringrule/judge/finding.h"

namespace ringrule {

/// What a finding is told from: all animals, and which one it is about.
struct Telling {
    std::span<const AnimalHistory> animals;
    std::span<const CaseFile> files;
    std::size_t of = 0;
    Date on;
    const JudgeOptions* options = nullptr;

    [[nodiscard]] const AnimalHistory& animal() const { return animals[of]; }
};

/// A finding with its animal, day and kind filled in.
[[nodiscard]] Finding findingOn(const Telling& telling, FindingKind kind);

/// Words and numbers of a verdict that flags. Precondition: thin or thinner.
[[nodiscard]] Finding tellThinness(const Telling& telling, const ThinnessVerdict& verdict);
/// Precondition: behind, small or stalled.
[[nodiscard]] Finding tellLagging(const Telling& telling, const LaggingVerdict& verdict);
[[nodiscard]] Finding tellDoubt(const Telling& telling, const Doubt& doubt);
[[nodiscard]] Finding tellJump(const Telling& telling, const Estimate& logExcess);
[[nodiscard]] Finding tellCannot(const Telling& telling, const std::string& why, const std::string& nextStep);

/// Codes of some of the animals.
[[nodiscard]] std::vector<std::string> codesOf(const Telling& telling, const std::vector<std::size_t>& indices);

/// "no session between 2031-03-04 and 2031-06-03", for the gap before the last session if it is long; else empty.
[[nodiscard]] std::string missedSessions(const Telling& telling);

}  // namespace ringrule
