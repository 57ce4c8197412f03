// SPDX-License-Identifier: GPL-3.0-or-later
#include <map>

#include "judge/tell.h"

namespace ringrule {

namespace {

struct Meals {
    bool taken = false;
    bool refused = false;
    std::string food;
};

std::map<Date, Meals> mealsUpTo(const AnimalHistory& animal, Date on) {
    std::map<Date, Meals> days;
    for (const FeedingNote& note : animal.feedingNotes) {
        if (note.on > on || (note.outcome != "taken" && note.outcome != "refused")) {
            continue;
        }
        Meals& meals = days[note.on];
        meals.taken = meals.taken || note.outcome == "taken";
        meals.refused = meals.refused || note.outcome == "refused";
        meals.food = note.outcome == "refused" ? note.food : meals.food;
    }
    return days;
}

/// The days running at the end of the notes on which all was refused.
struct Run {
    int days = 0;
    Date first;
    Date last;
    std::string food;
};

Run refusedRun(const std::map<Date, Meals>& days) {
    Run run;
    for (auto day = days.rbegin(); day != days.rend() && day->second.refused && !day->second.taken; ++day) {
        if (run.days > 0 && run.first - day->first > std::chrono::days(1)) {
            break;
        }
        run.last = run.days == 0 ? day->first : run.last;
        run.food = run.days == 0 ? day->second.food : run.food;
        run.first = day->first;
        ++run.days;
    }
    return run;
}

}  // namespace

std::optional<Finding> tellNotFeeding(const Telling& telling) {
    const GroupOptions& options = telling.options().group;
    const Run run = refusedRun(mealsUpTo(telling.animal(), telling.on));
    if (run.days < options.refusedDays || telling.on - run.last > std::chrono::days(options.refusalToldDays)) {
        return std::nullopt;
    }
    Finding finding = findingOn(telling, FindingKind::NotFeeding);
    finding.since = run.first;
    finding.measure = "days without food taken";
    finding.unit = "days";
    finding.by = {static_cast<double>(run.days), 0.0, 0.0};  // counted, not measured
    finding.sentence = finding.animalCode + " refused its food on " + std::to_string(run.days) +
                       " days running, from " + formatDate(run.first) + " to " + formatDate(run.last) +
                       (run.food.empty() ? std::string() : ", last " + run.food) + ".";
    finding.otherReasons = {"it ate what nobody saw, between the noted feeds", "a new food that it does not know yet"};
    if (const std::string state = stateOn(telling.animal(), telling.on); !state.empty()) {
        finding.otherReasons.push_back("its state on record: " + state);
    }
    finding.nextStep =
        "Offer a food that it took before, live if need be, and watch it alone at the feed; look at water and "
        "tankmates. "
        "If it refuses for another day or is listless, call the veterinarian.";
    return finding;
}

}  // namespace ringrule
