// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "judge/tell.h"
#include "judge/words.h"
#include "ringrule/judge/tankmates.h"
#include "ringrule/statistics/propagate.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

/// A sentence on the belly line when it is hollower than the tankmates' beyond error; a supporting sign only.
std::string bellyText(const Telling& telling, const ThinnessVerdict& verdict) {
    const Observation* own = inSession(telling.book->file(telling.of), telling.on, telling.options().group);
    std::vector<double> others;
    for (std::size_t i : verdict.mates) {
        const Observation* seen = inSession(telling.book->file(i), telling.on, telling.options().group);
        if (seen != nullptr && seen->bellyHollowPercent.known()) {
            others.push_back(seen->bellyHollowPercent.value);
        }
    }
    if (own == nullptr || !own->bellyHollowPercent.known() || others.size() < 2) {
        return {};
    }
    const RobustSpread spread = robustSpread(others);
    const double sd = std::hypot(spread.spread, own->bellyHollowPercent.sd());
    if (own->bellyHollowPercent.value - spread.centre < 1.96 * sd) {
        return {};
    }
    const double hollow = own->bellyHollowPercent.value;
    return std::string(hollow > 0.0 ? " Its belly line is hollow as well: " : " Its belly line bulges less as well: ") +
           numberText(std::abs(hollow), 1) + " % of its depth against " +
           (spread.centre < 0.0 && hollow > 0.0 ? "a bulge of " : "") + numberText(std::abs(spread.centre), 1) + " %.";
}

/// How it goes since the last session and since a change of food, when that exceeds error.
std::string courseText(const Telling& telling, const ThinnessVerdict& verdict) {
    if (!verdict.sinceLastPercent.known() ||
        std::abs(verdict.sinceLastPercent.value) < verdict.sinceLastPercent.u95()) {
        return {};
    }
    std::string text = verdict.sinceLastPercent.value > 0.0 ? " Its condition index has risen by "
                                                             : " Its condition index has fallen by another ";
    text += sizeWithInterval(verdict.sinceLastPercent) + " since the session before";
    const DietSpell* latest = nullptr;
    for (const DietSpell& spell : telling.animal().dietSpells) {
        if (spell.from <= telling.on && (latest == nullptr || spell.from > latest->from)) {
            latest = &spell;
        }
    }
    const bool changed = latest != nullptr && telling.animal().dietSpells.size() > 1 &&
                         telling.on - latest->from < std::chrono::days(100);
    return text + (changed ? "; its food was changed on " + formatDate(latest->from) + "." : ".");
}

std::vector<std::string> otherReasons(const Telling& telling, const ThinnessVerdict& verdict) {
    std::vector<std::string> reasons;
    if (telling.animal().animal.sex != Sex::Male) {
        reasons.emplace_back("a female that has just passed her eggs looks pinched for a while");
    }
    reasons.emplace_back("before this a brood, eggs or a full gut that was not on record");
    reasons.emplace_back("the body bent or turned toward the camera");
    reasons.emplace_back("a wrong animal card");
    if (verdict.lengthCarried) {
        reasons.emplace_back("no standard length this session: its last known length was used");
    }
    if (const std::string missed = missedSessions(telling); !missed.empty()) {
        reasons.push_back(missed);
    }
    return reasons;
}

std::string sinceText(const ThinnessVerdict& verdict) {
    return verdict.since ? ", since " + formatDate(*verdict.since) : std::string();
}

}  // namespace

Finding tellThinness(const Telling& telling, const ThinnessVerdict& verdict) {
    Finding finding = findingOn(telling, verdict.thin ? FindingKind::Thin : FindingKind::GettingThinner);
    finding.since = verdict.since;
    finding.measure = verdict.measure == ConditionMeasure::Depth ? "condition index" : "condition index by trunk width";
    finding.unit = "%";
    const std::string shape = verdict.measure == ConditionMeasure::Depth ? " thinner" : " narrower from above";
    const auto codes = codesOf(telling, verdict.mates);
    if (verdict.thin) {
        finding.by = verdict.gapPercent;
        finding.comparedWith = codes;
        finding.sentence = finding.animalCode + " is " + sizeWithInterval(finding.by) + shape +
                           " for its length than " + tankmatesText(codes);
        if (verdict.changePercent.known() && verdict.changePercent.value < -verdict.changePercent.u95()) {
            finding.sentence += " and " + sizeWithInterval(verdict.changePercent) + " below its own earlier sessions";
        }
    } else {
        finding.by = verdict.changePercent;
        finding.comparedWith = codes;
        finding.sentence = finding.animalCode + " is " + sizeWithInterval(finding.by) + shape +
                           " for its length than in its own earlier sessions" +
                           (codes.empty() ? std::string() : ", set against " + tankmatesText(codes) + " each time");
    }
    finding.sentence += sinceText(verdict) + ".";
    finding.sentence += bellyText(telling, verdict) + courseText(telling, verdict);
    if (verdict.few && !codes.empty()) {
        finding.sentence += " This is weakly told: so few tankmates show no spread.";
    }
    if (verdict.oneSessionOnly) {
        finding.sentence += " This rests on one session whose photos agree; the next will confirm it or not.";
    }
    finding.otherReasons = otherReasons(telling, verdict);
    finding.nextStep =
        "Photograph it again within the week, side on and from above; watch whether it takes food at the next feeds; "
        "offer another food. If it stays thin, refuses food or is listless, call the veterinarian.";
    return finding;
}

}  // namespace ringrule
