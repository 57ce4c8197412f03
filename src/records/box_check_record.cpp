// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/box_check_record.h"

namespace ringrule {

std::string_view boxVerdictName(BoxVerdict verdict) {
    switch (verdict) {
        case BoxVerdict::Holds:
            return "holds";
        case BoxVerdict::Fails:
            return "fails";
        case BoxVerdict::CannotTell:
            break;
    }
    return "cannot-tell";
}

BoxStanding boxStanding(std::span<const BoxCheckRecord> checks, Date on, int goodForDays) {
    const BoxCheckRecord* last = nullptr;
    const BoxCheckRecord* next = nullptr;
    for (const BoxCheckRecord& check : checks) {
        const auto day = parseDate(check.at);
        if (!day || check.verdict == BoxVerdict::CannotTell) continue;
        if (*day <= on) {
            last = &check;
        } else {
            next = &check;
            break;
        }
    }
    if (last != nullptr && last->verdict == BoxVerdict::Fails) return BoxStanding::Failed;
    if (next != nullptr && next->verdict == BoxVerdict::Fails) return BoxStanding::Failed;
    if (last == nullptr) return BoxStanding::NeverChecked;
    return (on - *parseDate(last->at)).count() > goodForDays ? BoxStanding::Stale : BoxStanding::Good;
}

}  // namespace ringrule
