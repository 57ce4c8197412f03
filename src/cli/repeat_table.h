// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <iosfwd>
#include <string>

#include "ringrule/workflow/repeat_report.h"

namespace ringrule::cli {

/// A table of how well repeats agree under a title, then the photos that disagree; nothing when nothing was repeated.
void printRepeats(std::ostream& out, const std::string& title, const RepeatReport& report, bool nameOdd);

}  // namespace ringrule::cli
