// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/optics/box_file.h"
#include "ringrule/optics/box_history.h"
#include "ringrule/sentence.h"

namespace ringrule {

/// What a keeper does to set a box up, in this order.
enum class SetupStepKind {
    Print,        ///< make and mount the plate
    Rule,         ///< measure the print with a steel rule
    Lens,         ///< lens photos
    Water,        ///< window, water and distances
    AnimalPlane,  ///< where the animal hangs
    Rod,          ///< a rod of known length
};

/// Stable id of a step: "print", "rule", "lens", "water", "animal-plane" or "rod".
[[nodiscard]] std::string_view setupStepId(SetupStepKind kind);

enum class SetupState {
    CannotTell,  ///< something must be known first
    ToDo,
    Wrong,
    Done,
};

/// Stable id of a state: "cannot-tell", "to-do", "wrong" or "done".
[[nodiscard]] std::string_view setupStateId(SetupState state);

struct SetupStep {
    SetupStepKind kind{};
    SetupState state = SetupState::CannotTell;
    std::string title{};             ///< e.g. "Lens photos"
    std::vector<Sentence> found{};   ///< what is known
    std::vector<Sentence> advice{};  ///< what a keeper's hands do, or how they mend it; which button or command does
                                     ///< the rest is for the front end to say. None when there is nothing to do
};

struct SetupOptions {
    int mostRuleAgeDays = 92;  ///< paper stretches in heat and damp: look again every three months
    BoxJudgementOptions judgement;
};

/// All steps in order, from a box file (none yet: only printing can be done) and the checks so far. `today` is
/// "YYYY-MM-DD". Never empty.
[[nodiscard]] std::vector<SetupStep> boxSetup(const std::optional<Box>& box, const std::vector<PastBoxCheck>& history,
                                              std::string_view today, const SetupOptions& options = {});

/// The first step that is not done; nothing when all are.
[[nodiscard]] std::optional<SetupStep> nextSetupStep(const std::vector<SetupStep>& steps);

}  // namespace ringrule
