// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.h"

namespace ringrule::cli {

/// Adds `check`: whether a box still measures true, by one photo.
void addCheckCommand(CLI::App& app, Run& chosen);

}  // namespace ringrule::cli
