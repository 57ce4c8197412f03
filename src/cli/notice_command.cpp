// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <iomanip>
#include <iostream>
#include <memory>
#include <sstream>

#include <CLI/CLI.hpp>

#include "cli/judgement_commands.h"
#include "ringrule/error.h"
#include "ringrule/judge/time_to_notice.h"
#include "ringrule/workflow/collection_review.h"
#include "ringrule/workflow/session_table.h"
#include "ringrule/workflow/species_file.h"

namespace ringrule::cli {
namespace {

struct NoticeOptions {
    std::string store;
    std::string tank;
    GroupTrial trial;  ///< what the user gave; the rest is the tank's, or usual
    bool groupsGiven = false;
};

struct Given {
    CLI::Option* option = nullptr;
    void (*copy)(const GroupTrial& from, GroupTrial& to) = nullptr;
};

std::string percent(double part) {
    std::ostringstream text;
    text << std::fixed << std::setprecision(part < 0.0995 ? 1 : 0) << 100.0 * part;
    return text.str();
}

void printFound(const std::string& what, const TrialResult& result) {
    std::cout << "  " << what << ": noticed by the";
    const char* words[] = {"first", "second", "third", "fourth", "fifth", "sixth"};
    for (std::size_t i = 0; i < result.foundBy.size(); ++i) {
        const Share& share = result.foundBy[i];
        std::cout << (i == 0 ? " " : ", ") << words[i] << " session after " << percent(share.value) << " % ("
                  << percent(share.lower) << " to " << percent(share.upper) << ")";
    }
    std::cout << '\n';
}

TrialResult run(const GroupTrial& trial, const JudgeOptions& options) {
    const auto result = timeToNotice(trial, options);
    if (!result) throw Error(ErrorKind::BadUse, result.refusal().sentence);
    return result.value();
}

void printHealthy(GroupTrial trial, const JudgeOptions& options) {
    trial.failing = Failing::Nothing;
    trial.sessionsAfter = 6;
    const TrialResult result = run(trial, options);
    std::cout << std::fixed << std::setprecision(2) << "  A healthy animal is flagged falsely "
              << result.falsePer100Months << " times in 100 animal-months (" << result.falseLower << " to "
              << result.falseUpper << ")";
    const double months = 100.0 / std::max(1e-9, result.falsePer100Months * trial.animals);
    if (result.falseEpisodes > 0)
        std::cout << ": in this group about once in " << std::setprecision(0) << std::max(1.0, months) << " months";
    std::cout << ".\n" << std::defaultfloat;
}

ExitStatus notice(const NoticeOptions& options, const std::vector<Given>& given) {
    GroupTrial trial = options.trial;
    JudgeOptions rules = shippedSpecies().rules.usual;
    if (!options.store.empty()) {
        const Store store = Store::open(options.store);
        const auto histories = historiesFromStore(store);
        const auto days = sessionDays(histories);
        const auto tanks = store.tanks();
        const auto tank =
            std::find_if(tanks.begin(), tanks.end(), [&](const Tank& one) { return one.code == options.tank; });
        if (tank == tanks.end())
            throw Error(ErrorKind::BadUse, "no tank of this collection is called \"" + options.tank + "\"");
        const auto like = days.empty() ? Outcome<GroupTrial>(Refusal{"", "Nothing is measured yet."})
                                       : trialLike(histories, tank->id, days.back());
        if (!like) throw Error(ErrorKind::BadUse, like.refusal().sentence);
        trial = like.value();
        for (const Given& one : given)
            if (one.option->count() > 0) one.copy(options.trial, trial);
        rules = speciesOfCollection(store.folder()).rules.usual;
    }
    trial.groups = options.trial.groups;
    trial.seed = options.trial.seed;
    std::cout << "A group of " << trial.animals << ", " << std::lround(trial.firstLengthMm) << " mm, growing "
              << std::setprecision(2) << trial.mmPerDay << " mm/day, photographed every " << trial.daysBetween
              << " days; trouble after session " << trial.sessionsBefore << ".\nHealthy animals differ in growth by "
              << percent(trial.growthSpread) << " % for good and " << percent(trial.monthlySpread)
              << " % from session to session; a session's length errs by " << percent(trial.lengthError)
              << " %, its depth by " << percent(trial.depthError) << " % and " << percent(trial.depthWander)
              << " % of true change (standard deviations).\n";
    GroupTrial slower = trial;
    slower.failing = Failing::SlowerGrowth;
    printFound("An animal that grows at " + percent(trial.growthPart) + " % of what it would", run(slower, rules));
    slower.growthPart = 0.0;
    printFound("An animal that stops growing", run(slower, rules));
    GroupTrial thins = trial;
    thins.failing = Failing::LosingDepth;
    printFound("An animal that loses " + percent(trial.depthLossPerWeek) + " % of its depth a week", run(thins, rules));
    printHealthy(trial, rules);
    std::cout << "From " << trial.groups << " simulated groups each (seed " << trial.seed
              << "); the intervals say how well so many tell it (95 %). Real animals may differ more: see "
                 "docs/judgement.md.\n";
    return ExitStatus::Done;
}

}  // namespace

void addNoticeCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<NoticeOptions>();
    options->trial.groups = 300;
    GroupTrial& trial = options->trial;
    CLI::App* command = app.add_subcommand(
        "notice", "Simulates how soon trouble in a group would be noticed, and how often an alarm would be false");
    auto* tank = command->add_option("--tank", options->tank, "A group like that of this tank");
    auto* store = command->add_option("--store", options->store, "Folder of the tank's collection")->needs(tank);
    tank->needs(store);
    auto given = std::make_shared<std::vector<Given>>();
    const auto add = [&](const char* name, auto& value, const char* what, double least, double most, auto copy) {
        given->push_back(
            {command->add_option(name, value, what)->check(CLI::Range(least, most))->capture_default_str(), copy});
    };
#define RINGRULE_COPY(field) [](const GroupTrial& from, GroupTrial& to) { to.field = from.field; }
    add("--animals", trial.animals, "Animals in the group", 1, 200, RINGRULE_COPY(animals));
    add("--length-mm", trial.firstLengthMm, "Length at the first session", 1, 2000, RINGRULE_COPY(firstLengthMm));
    add("--mm-per-day", trial.mmPerDay, "Growth", 0, 10, RINGRULE_COPY(mmPerDay));
    add("--days-between", trial.daysBetween, "Days between sessions", 1, 365, RINGRULE_COPY(daysBetween));
    add("--sessions-before", trial.sessionsBefore, "Sessions before the trouble", 1, 36, RINGRULE_COPY(sessionsBefore));
    add("--growth-part", trial.growthPart, "Growth of the slow animal as part of its own", 0, 1,
        RINGRULE_COPY(growthPart));
    add("--depth-loss", trial.depthLossPerWeek, "Part of its depth that the thinning animal loses a week", 0, 0.5,
        RINGRULE_COPY(depthLossPerWeek));
    add("--growth-spread", trial.growthSpread, "Spread of growth between healthy animals, as part", 0, 0.9,
        RINGRULE_COPY(growthSpread));
    add("--monthly-spread", trial.monthlySpread, "The same from session to session", 0, 0.9,
        RINGRULE_COPY(monthlySpread));
    add("--length-error", trial.lengthError, "Error of a session's length, as part", 0, 0.2,
        RINGRULE_COPY(lengthError));
    add("--depth-error", trial.depthError, "Error of a session's depth, as part", 0, 0.2, RINGRULE_COPY(depthError));
#undef RINGRULE_COPY
    command->add_option("--groups", trial.groups, "Groups to simulate")
        ->check(CLI::Range(20, 100000))
        ->capture_default_str();
    command->add_option("--seed", trial.seed, "Another seed, other chances")->capture_default_str();
    command->callback([&chosen, options, given] { chosen = [options, given] { return notice(*options, *given); }; });
}

}  // namespace ringrule::cli
