// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "cli/exit_status.h"

namespace CLI {
class App;
}

namespace ringrule::cli {

/// What a chosen command does once its options are read.
using Run = std::function<ExitStatus()>;

// Each adds its command to `app` and sets `chosen` when the user chose it.
void addMeasureCommand(CLI::App& app, Run& chosen);
void addCreateCommand(CLI::App& app, Run& chosen);
void addSessionCommand(CLI::App& app, Run& chosen);
void addMeasureAgainCommand(CLI::App& app, Run& chosen);
void addReviewCommand(CLI::App& app, Run& chosen);
void addDemoCommand(CLI::App& app, Run& chosen);

}  // namespace ringrule::cli
