// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/tell.h"

#include <cmath>

#include "judge/likely_card.h"
#include "judge/words.h"

namespace ringrule {

namespace {

/// Longer between two sessions than this, a monthly session was missed.
constexpr std::chrono::days kMissed{45};

std::string change(double percent, const char* less, const char* more) {
    return percentText(std::abs(percent)) + " " + (percent < 0.0 ? less : more);
}

}  // namespace

std::vector<std::string> codesOf(const Telling& telling, const std::vector<std::size_t>& indices) {
    std::vector<std::string> codes;
    codes.reserve(indices.size());
    for (std::size_t i : indices) {
        codes.push_back(telling.book->animal(i).animal.code);
    }
    return codes;
}

std::string missedSessions(const Telling& telling) {
    const Observation* previous = nullptr;
    std::string text;
    for (const Observation& seen : telling.animal().observations) {
        if (seen.on > telling.on) {
            break;
        }
        text.clear();
        if (previous != nullptr && seen.on - previous->on > kMissed) {
            text = "no session between " + formatDate(previous->on) + " and " + formatDate(seen.on);
        }
        previous = &seen;
    }
    return text;
}

Finding findingOn(const Telling& telling, FindingKind kind) {
    Finding finding;
    finding.kind = kind;
    finding.animal = telling.animal().animal.id;
    finding.animalCode = telling.animal().animal.code;
    finding.on = telling.on;
    return finding;
}

namespace {

/// Says of a doubted length whose animal was likely under the card, where the session tells it.
void tellCard(const Telling& telling, Finding& finding) {
    const auto likely = likelyCard(*telling.book, telling.of, telling.on);
    if (!likely) {
        return;
    }
    const std::string other = telling.book->animal(likely->whose).animal.code;
    const std::string fits = numberText(likely->measuredMm, 1) + " mm fits " + other + ", of which " +
                             numberText(likely->expectedMm, 1) + " ± " + numberText(likely->expectedU95, 1) +
                             " mm was to be expected";
    finding.sentence += " Likely a wrong card: " + fits +
                        (likely->swapped ? ", and the " + numberText(likely->otherMm, 1) + " mm told for " + other +
                                               " fit " + finding.animalCode + ". The two were likely exchanged."
                                         : ", and " + other + " has no photo of this session.");
    finding.comparedWith = {other};
    finding.nextStep =
        "Lay the photos beside earlier ones of both animals. If it is so, give them to the right animal; if not, "
        "photograph both again within the week.";
}

}  // namespace

Finding tellDoubt(const Telling& telling, const Doubt& doubt) {
    Finding finding = findingOn(telling, FindingKind::MeasureDoubtful);
    finding.since = telling.on;
    finding.unit = "%";
    const double ratio = std::exp(doubt.logChange.value);
    finding.by = {100.0 * (ratio - 1.0), 100.0 * ratio * doubt.logChange.sd(), 0.0};
    const std::string earlier = formatDate(doubt.against->on);
    if (doubt.ofLength) {
        finding.measure = "standard length";
        finding.sentence =
            finding.animalCode + " measures " + sizeWithInterval(finding.by) + " shorter than on " + earlier +
            "; fish do not shrink, so one of the two measures is doubted and this session is not judged.";
        finding.otherReasons = {"a wrong animal card", "the body bent or turned toward the camera",
                                "a closed tail that hides length", "a landmark in the wrong place"};
    } else {
        finding.measure = "trunk depth for length";
        finding.sentence = finding.animalCode + "'s trunk is " + change(finding.by.value, "shallower", "deeper") +
                           " for its length than on " + earlier +
                           "; so large a change in one session is doubted and the session is not judged.";
        finding.otherReasons = {"a wrong animal card", "shadow or a fin taken for body",
                                "a brood, eggs or a full gut that is not on record",
                                "the animal seen from above rather than from the side"};
    }
    finding.nextStep = "Look at the photo's outline, landmarks and card; photograph the animal again within the week.";
    if (doubt.ofLength) {
        tellCard(telling, finding);
    }
    return finding;
}

Finding tellJump(const Telling& telling, const Estimate& logExcess) {
    Finding finding = findingOn(telling, FindingKind::MeasureDoubtful);
    finding.since = telling.on;
    finding.measure = "standard length";
    finding.unit = "%";
    const double ratio = std::exp(logExcess.value);
    finding.by = {100.0 * (ratio - 1.0), 100.0 * ratio * logExcess.sd(), 0.0};
    finding.sentence =
        finding.animalCode + " measures " + sizeWithInterval(finding.by) +
        " longer than its tankmates' growth since its last session explains; the measure is doubted and the "
        "session is not judged.";
    finding.otherReasons = {"a wrong animal card", "the last session's length was too short (bent body, closed tail)",
                            "something joined to the tail in the outline"};
    finding.nextStep =
        "Look at the photos and cards of this session and the last; photograph the animal again within the week.";
    tellCard(telling, finding);
    return finding;
}

Finding tellImpossible(const Telling& telling, const std::string& why) {
    Finding finding = findingOn(telling, FindingKind::MeasureDoubtful);
    finding.since = telling.on;
    finding.measure = "standard length";
    finding.sentence = finding.animalCode + ": the record of " + formatDate(telling.on) + " has " + why +
                       "; it is left out, and this session is not judged.";
    finding.otherReasons = {"a slip of the pen", "a hatch date that is not right", "a wrong animal card"};
    finding.nextStep = "Correct the record, or take it out.";
    return finding;
}

Finding tellCannot(const Telling& telling, const std::string& why, const std::string& nextStep) {
    Finding finding = findingOn(telling, FindingKind::CannotTell);
    finding.sentence = finding.animalCode + ": " + why;
    finding.nextStep = nextStep;
    return finding;
}

}  // namespace ringrule
