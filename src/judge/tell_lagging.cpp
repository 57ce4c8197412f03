// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "judge/tell.h"
#include "judge/words.h"
#include "ringrule/statistics/propagate.h"

namespace ringrule {

namespace {

std::vector<std::string> otherReasons(const Telling& telling) {
    std::vector<std::string> reasons{"a bent body or closed tail in the latest photos",
                                     "a wrong animal card in this session or an earlier one",
                                     "growth slows at maturity, in some animals sooner than in others"};
    if (const std::string state = stateOn(telling.animal(), telling.on); !state.empty()) {
        reasons.push_back("its state on record: " + state);
    }
    if (const std::string missed = missedSessions(telling); !missed.empty()) {
        reasons.push_back(missed);
    }
    return reasons;
}

std::string daysText(double days) {
    return numberText(days, 0) + " days";
}

void tellBehind(Finding& finding, const LaggingVerdict& verdict) {
    finding.measure = "growth in length";
    finding.unit = "%";
    finding.by = verdict.lagPercent;
    finding.sentence = finding.animalCode + " grew " + sizeWithInterval(finding.by) + " less than " +
                       tankmatesText(finding.comparedWith) + " over the last " + daysText(verdict.windowDays) + ": " +
                       rateText(verdict.ownMmPerDay) + " where " + numberText(verdict.expectedMmPerDay.value, 2) +
                       " was to be expected, since " + formatDate(*finding.since) + ".";
}

void tellSmall(Finding& finding, const LaggingVerdict& verdict) {
    finding.measure = "standard length";
    finding.unit = "%";
    finding.by = verdict.lengthPercent;
    finding.sentence = finding.animalCode + " is " + sizeWithInterval(finding.by) + " shorter than " +
                       tankmatesText(finding.comparedWith) + ", in at least two sessions since " +
                       formatDate(*finding.since) + ", though it grows in step.";
}

void tellStalled(Finding& finding, const LaggingVerdict& verdict) {
    finding.measure = "growth rate";
    finding.unit = "mm/day";
    finding.by = difference(verdict.ownMmPerDay, verdict.expectedMmPerDay, SharedPart::Separate);
    finding.sentence =
        finding.animalCode + " did not grow beyond measuring error over the last " + daysText(verdict.windowDays) +
        ": " + rateText(verdict.ownMmPerDay) + " where " + rateText(verdict.expectedMmPerDay) + " was to be expected " +
        (verdict.expectedFromPast ? "from its own past" : "from " + tankmatesText(finding.comparedWith)) + ", since " +
        formatDate(*finding.since) + ".";
}

}  // namespace

Finding tellLagging(const Telling& telling, const LaggingVerdict& verdict) {
    Finding finding = findingOn(telling, verdict.stalled ? FindingKind::Stalled : FindingKind::BehindTankmates);
    finding.since = verdict.since;
    finding.comparedWith = codesOf(telling, verdict.mates);
    if (verdict.stalled) {
        tellStalled(finding, verdict);
    } else if (verdict.behind) {
        tellBehind(finding, verdict);
    } else {
        tellSmall(finding, verdict);
    }
    if (verdict.few) {
        finding.sentence += " This is weakly told: so few tankmates show no spread.";
    }
    if (verdict.oneIntervalOnly) {
        finding.sentence += " This rests on one session whose photos agree; the next will confirm it or not.";
    }
    finding.otherReasons = otherReasons(telling);
    finding.nextStep =
        "Look at its latest photos for a bent body or closed tail and measure it again; watch whether it gets its "
        "share at "
        "the feeds; offer another food or feed it apart. If it also thins or refuses food, call the veterinarian.";
    return finding;
}

}  // namespace ringrule
