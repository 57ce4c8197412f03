// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.h"

namespace ringrule::cli {

/// Adds `plate`: the scale plate as PDF with its box file.
void addPlateCommand(CLI::App& app, Run& chosen);

}  // namespace ringrule::cli
