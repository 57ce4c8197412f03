// SPDX-License-Identifier: GPL-3.0-or-later
#include <ostream>
#include <set>

#include "cli/session_report.h"
#include "ringrule/optics/box_judgement.h"

namespace ringrule::cli {

void printBoxNotes(std::ostream& out, const Store& store, Date on) {
    std::set<std::string> boxes;
    for (const Session& session : store.sessions()) {
        if (session.on == on) boxes.insert(session.boxName);
    }
    for (const std::string& box : boxes) {
        const BoxJudgement judgement = store.boxJudgementOn(box, on);
        if (judgement.state == BoxState::Passed) continue;
        out << "Box \"" << box << "\": " << judgement.sentence.text() << " (ringrule check --rod-mm --store)\n";
    }
}

}  // namespace ringrule::cli
