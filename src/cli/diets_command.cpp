// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <iomanip>
#include <iostream>
#include <map>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/day_option.h"
#include "cli/judgement_commands.h"
#include "cli/measured_collection.h"
#include "ringrule/error.h"
#include "ringrule/judge/diets.h"
#include "ringrule/workflow/collection_review.h"
#include "ringrule/workflow/session_table.h"
#include "ringrule/workflow/species_file.h"

namespace ringrule::cli {
namespace {

struct DietsOptions {
    std::string store;
    std::string from;
    std::string to;
};

void printChanges(const std::vector<AnimalHistory>& histories, Date on, const JudgeRules& rules) {
    std::cout << "After a change of food, as of " << formatDate(on) << '\n';
    bool any = false;
    for (std::size_t i = 0; i < histories.size(); ++i) {
        const auto change = dietChange(histories, i, on, rules.of(histories[i].animal.species));
        if (!change) continue;
        any = true;
        std::cout << "  " << change.value().sentence << '\n';
    }
    if (!any) std::cout << "  No animal with a change of food has two sessions before it.\n";
}

std::string codeOf(const std::vector<Diet>& diets, std::int64_t id) {
    const auto found = std::find_if(diets.begin(), diets.end(), [id](const Diet& one) { return one.id.value == id; });
    return found == diets.end() ? std::to_string(id) : found->code;
}

// The engine knows diets by their place in the comparison; a keeper by name.
std::string named(std::string sentence, const std::string& first, const std::string& second) {
    for (const auto& [words, name] : {std::pair{"the first diet", first}, std::pair{"the second diet", second},
                                      std::pair{"the first", first}, std::pair{"the second", second}}) {
        for (auto at = sentence.find(words); at != std::string::npos; at = sentence.find(words, at + name.size()))
            sentence.replace(at, std::string(words).size(), name);
    }
    return sentence;
}

void printEffects(const DietEffects& effects, const std::vector<Diet>& diets) {
    const char* unit = effects.unit == EffectUnit::MmPerDay ? " mm/day" : " % a day";
    std::cout << std::fixed << std::setprecision(3);
    for (const DietGrowth& group : effects.groups) {
        std::cout << "  " << codeOf(diets, group.diet) << ": " << group.animals
                  << (group.animals == 1 ? " animal, " : " animals, ") << group.tanks
                  << (group.tanks == 1 ? " tank, " : " tanks, ") << group.rate.value << unit;
        if (std::isfinite(group.rate.standardError))
            std::cout << " (" << group.rate.lower95 << " to " << group.rate.upper95 << ")\n";
        else
            std::cout << " (one tank alone tells no interval)\n";
    }
    for (const DietEffect& pair : effects.pairs) {
        const auto& first = effects.groups[pair.first];
        const auto& second = effects.groups[pair.second];
        std::cout << "  " << codeOf(diets, second.diet) << " against " << codeOf(diets, first.diet) << ": "
                  << named(pair.sentence, codeOf(diets, first.diet), codeOf(diets, second.diet)) << '\n';
    }
    for (const std::string& caution : effects.cautions) std::cout << "  " << caution << '\n';
    std::cout << std::defaultfloat;
}

// Species grow each in its own way: diets are compared within one.
void printComparisons(const std::vector<AnimalHistory>& histories, Date from, Date to, const JudgeRules& rules,
                      const std::vector<Diet>& diets) {
    std::map<std::string, std::vector<AnimalHistory>> bySpecies;
    for (const AnimalHistory& history : histories) bySpecies[history.animal.species].push_back(history);
    for (const auto& [species, alike] : bySpecies) {
        std::cout << (species.empty() ? "Species not told" : species) << '\n';
        const auto effects = compareDietEffects(dietAnimals(alike, from, to, rules.of(species)));
        if (effects)
            printEffects(effects.value(), diets);
        else
            std::cout << "  Cannot tell. " << effects.refusal().sentence << '\n';
    }
}

ExitStatus diets(const DietsOptions& options) {
    const auto firstDay = dayOption("--from", options.from);
    const auto lastDay = dayOption("--to", options.to);
    const auto measured = openMeasured(options.store);
    if (!measured) return ExitStatus::Done;
    const auto& [store, histories, days] = *measured;
    const Date from = firstDay.value_or(days.front());
    const Date to = lastDay.value_or(days.back());
    if (to <= from) throw Error(ErrorKind::BadUse, "--to must be a later day than --from");
    const SpeciesFile species = speciesOfCollection(store.folder());
    printChanges(histories, to, species.rules);
    std::cout << "\nDiets side by side, " << formatDate(from) << " to " << formatDate(to)
              << ": animals that kept one diet in one tank throughout\n";
    printComparisons(histories, from, to, species.rules, store.diets());
    return ExitStatus::Done;
}

}  // namespace

void addDietsCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<DietsOptions>();
    CLI::App* command =
        app.add_subcommand("diets", "Tells what changes of food did, against tankmates, and compares diets");
    command->add_option("--store", options->store, "Folder of the collection")->required();
    command->add_option("--from", options->from, "Compare diets from this day (the first session unless told)");
    command->add_option("--to", options->to, "Up to this day (the last session unless told)");
    command->callback([&chosen, options] { chosen = [options] { return diets(*options); }; });
}

}  // namespace ringrule::cli
