// SPDX-License-Identifier: GPL-3.0-or-later
#include <ostream>
#include <set>

#include "cli/session_report.h"

namespace ringrule::cli {

void printBoxNotes(std::ostream& out, const Store& store, Date on) {
    std::set<std::string> boxes;
    for (const Session& session : store.sessions()) {
        if (session.on == on) boxes.insert(session.boxName);
    }
    for (const std::string& box : boxes) {
        switch (store.boxStandingOn(box, on)) {
            case BoxStanding::Good:
                continue;
            case BoxStanding::NeverChecked:
                out << "Box \"" << box
                    << "\" had not been checked by that day: whether its lengths are true nobody knows. "
                       "Check it with a rod (ringrule check --store).\n";
                break;
            case BoxStanding::Stale:
                out << "Box \"" << box
                    << "\" was last checked too long before: its measures carry a remark. Check it with "
                       "a rod (ringrule check --store).\n";
                break;
            case BoxStanding::Failed:
                out << "Box \"" << box
                    << "\" did not measure true in the check before or after: its measures carry a "
                       "remark. Mend it, check it, and measure again.\n";
                break;
        }
    }
}

}  // namespace ringrule::cli
