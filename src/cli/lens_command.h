// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.h"

namespace ringrule::cli {

/// Adds `lens`: a box file's lens from photos of a chessboard or of the box's own plate.
void addLensCommand(CLI::App& app, Run& chosen);

}  // namespace ringrule::cli
