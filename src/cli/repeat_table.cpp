// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/repeat_table.h"

#include <cstdio>
#include <ostream>

namespace ringrule::cli {

void printRepeats(std::ostream& out, const std::string& title, const RepeatReport& report, bool nameOdd) {
    if (report.lines.empty()) return;
    out << title << "\n  measure          error (TEM), mm  of the mean  reliability  smallest real change, mm  "
        << "animals  photos\n";
    for (const RepeatLine& line : report.lines) {
        const Repeatability& r = line.repeats;
        // Reliability compares with the spread among animals: one animal has none.
        char reliability[16] = "cannot tell";
        if (r.groups > 1) std::snprintf(reliability, sizeof reliability, "%.4f", r.reliability);
        char text[160];
        std::snprintf(text, sizeof text, "  %-15s  %15.3f  %9.2f %%  %11s  %24.3f  %7d  %6d\n", line.measure.c_str(),
                      r.tem, r.relativeTemPercent, reliability, r.smallestRealChange, r.groups, r.readings);
        out << text;
    }
    if (!nameOdd) return;
    for (const std::string& odd : report.odd) out << "  " << odd << '\n';
}

}  // namespace ringrule::cli
