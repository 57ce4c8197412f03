// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.h"

namespace ringrule::cli {

/// `species`: what is known of species and which thresholds hold; checks a species file.
void addSpeciesCommand(CLI::App& app, Run& chosen);
/// `notice`: how soon trouble would be noticed in a group, and how often an alarm would be false.
void addNoticeCommand(CLI::App& app, Run& chosen);
/// `milestones`: when each animal reaches the milestones of its species.
void addMilestonesCommand(CLI::App& app, Run& chosen);

/// `diets`: animals before and after a change of food, and diets side by side.
void addDietsCommand(CLI::App& app, Run& chosen);

}  // namespace ringrule::cli
