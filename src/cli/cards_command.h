// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.h"

namespace ringrule::cli {

/// Adds `cards`: animal cards as PDF.
void addCardsCommand(CLI::App& app, Run& chosen);

}  // namespace ringrule::cli
