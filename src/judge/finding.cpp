// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/finding.h"

namespace ringrule {

std::string_view findingName(FindingKind kind) {
    switch (kind) {
        case FindingKind::BehindTankmates:
            return "behind-tankmates";
        case FindingKind::Stalled:
            return "stalled";
        case FindingKind::Thin:
            return "thin";
        case FindingKind::GettingThinner:
            return "getting-thinner";
        case FindingKind::NotFeeding:
            return "not-feeding";
        case FindingKind::TankLow:
            return "tank-low";
        case FindingKind::MeasureDoubtful:
            return "measure-doubtful";
        case FindingKind::CannotTell:
            return "cannot-tell";
    }
    return "";
}

}  // namespace ringrule
