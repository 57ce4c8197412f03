// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/workflow/measure_session.h"

namespace ringrule::cli {

/// Makes an interrupt (Ctrl+C) stop a run cleanly; a second one ends the program at once.
void listenForInterrupt();

/// Progress that stops when the user interrupted and, on a terminal, shows how far the run is on standard error.
[[nodiscard]] Progress terminalProgress();

}  // namespace ringrule::cli
