// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.h"

namespace ringrule::cli {

/// Adds `box`, with `box rescale`: a box file corrected for the printer's scale.
void addBoxCommand(CLI::App& app, Run& chosen);

/// `box setup`, added to `box`.
void addBoxSetupCommand(CLI::App& box, Run& chosen);

}  // namespace ringrule::cli
