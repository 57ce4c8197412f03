// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/judgement_commands.h"
#include "ringrule/error.h"
#include "ringrule/judge/body_condition.h"
#include "ringrule/records/species_copy.h"
#include "ringrule/workflow/species_file.h"

namespace ringrule::cli {
namespace {

struct SpeciesOptions {
    std::string store;
    std::string file;
    std::string write;
    std::string put;
    std::string keeper;
    std::string species;
    double lengthMm = 0.0;
    double weightG = 0.0;
};

std::string textOf(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// Writes the collection's own file, or else the shipped one.
void write(const SpeciesOptions& options) {
    if (std::filesystem::exists(options.write))
        throw Error(ErrorKind::BadUse, "the file is already there; name another, or move it away first", options.write);
    std::string text = shippedSpeciesText();
    if (!options.store.empty()) {
        const auto own = Store::open(options.store).folder() / "species.json";
        if (std::filesystem::exists(own)) text = textOf(own.string());
    }
    std::ofstream out(options.write, std::ios::binary);
    if (!out) throw Error(ErrorKind::BadUse, "the file cannot be made; see that its folder is there", options.write);
    out << text;
    out.close();
    if (!out) throw Error(ErrorKind::NoSpace, "the species file could not be written", options.write);
    std::cout << "Wrote " << options.write << ". Change it, check it with: ringrule species --file " << options.write
              << "; then put it into a collection with: ringrule species --store DIR --put " << options.write << '\n';
}

/// Makes a checked file, or the shipped one, the collection's own.
void put(const SpeciesOptions& options) {
    const bool shipped = options.put == "shipped";
    if (!shipped) static_cast<void>(readSpeciesFile(options.put));
    Store store = Store::open(options.store);
    const auto former = keepSpeciesText(store, shipped ? shippedSpeciesText() : textOf(options.put), options.keeper);
    std::cout << "The collection's own species file is now " << (store.folder() / "species.json").string();
    if (!former.empty()) std::cout << "; the former one is kept as " << former.string();
    std::cout << '\n';
}

void printThresholds(const SpeciesFile& file) {
    std::cout << "Thresholds (a star: set in the file)\n";
    for (const Threshold& threshold : thresholds()) {
        const auto set = std::find_if(file.set.begin(), file.set.end(), [&](const SetThreshold& one) {
            return one.species.empty() && one.name == threshold.name;
        });
        std::cout << (set == file.set.end() ? "    " : "  * ") << threshold.name << " "
                  << threshold.get(file.rules.usual);
        if (set != file.set.end()) std::cout << "  (" << set->source << ")";
        std::cout << '\n';
    }
}

void printSpecies(const SpeciesFile& file, const SpeciesFacts& facts) {
    std::cout << '\n' << (facts.species.empty() ? "Every species, unless told below" : facts.species) << '\n';
    if (!facts.protocol.empty()) std::cout << "  standard length by " << facts.protocol << '\n';
    for (const SpeciesMilestone& one : facts.milestones) {
        std::cout << "  " << one.name << " at ";
        if (one.lengthMm) std::cout << *one.lengthMm << " mm";
        if (one.ageDays) std::cout << *one.ageDays << " days";
        std::cout << "  (" << one.source << ")\n";
    }
    for (const UsualRange& one : facts.usual) {
        std::cout << "  usual " << one.what << ": " << one.low;
        if (one.high > one.low) std::cout << " to " << one.high;
        std::cout << ' ' << one.unit << "  (" << one.source << ")\n";
    }
    for (const GrowthReference& one : facts.growth)
        std::cout << "  a whole tank " << one.fromDays << " to " << one.toDays << " days old"
                  << (one.sex.empty() ? "" : " (" + one.sex + "s)") << " grows " << one.mmPerDay
                  << " mm/day, slow below " << one.lowMmPerDay << "  (" << one.source << ")\n";
    if (facts.lengthWeight)
        std::cout << "  mass (g) = " << facts.lengthWeight->a << " x length (mm) ^ " << facts.lengthWeight->b << "  ("
                  << facts.lengthWeight->source << ")\n";
    for (const SetThreshold& one : file.set)
        if (!one.species.empty() && one.species == facts.species)
            std::cout << "  * " << one.name << " " << one.value << "  (" << one.source << ")\n";
}

/// Mass from length, and condition from a weight, by the species' published law.
void printBody(const SpeciesFile& file, const SpeciesOptions& options) {
    const SpeciesFacts facts = factsOf(file.facts, options.species);
    const Estimate length{options.lengthMm, 0.0, 0.0};
    if (options.weightG > 0.0) {
        const Estimate weight{options.weightG, 0.0, 0.0};
        std::cout << "Fulton's K " << fultonK(weight, length).value
                  << " (compare only animals of like length; not while carrying)\n";
        if (facts.lengthWeight)
            std::cout << "Relative condition (Le Cren) " << relativeCondition(weight, length, *facts.lengthWeight).value
                      << " (1 is as the law expects)\n";
    }
    if (!facts.lengthWeight) {
        std::cout << "No law of mass on length is known for " << options.species
                  << "; add \"length_weight\" to a species file of your own.\n";
        return;
    }
    std::cout << "Mass expected at " << options.lengthMm << " mm: " << massFromLength(*facts.lengthWeight, length).value
              << " g, by " << facts.lengthWeight->source << '\n'
              << "Animals of one length differ in mass by tens of percent: this judges none of them.\n";
}

void requireKnown(const SpeciesFile& file, const std::string& species) {
    std::string known;
    for (const SpeciesFacts& facts : file.facts) {
        if (facts.species == species) return;
        if (!facts.species.empty()) known += (known.empty() ? "" : ", ") + facts.species;
    }
    throw Error(ErrorKind::BadUse, "nothing is known of a species \"" + species + "\"; those known: " + known +
                                       ". Add it to a species file of your own (ringrule species --write FILE)");
}

ExitStatus species(const SpeciesOptions& options) {
    if (!options.write.empty()) {
        write(options);
        return ExitStatus::Done;
    }
    if (!options.put.empty()) {
        put(options);
        return ExitStatus::Done;
    }
    const SpeciesFile file = !options.file.empty()    ? readSpeciesFile(options.file)
                             : !options.store.empty() ? speciesOfCollection(Store::open(options.store).folder())
                                                      : shippedSpecies();
    if (!options.species.empty()) requireKnown(file, options.species);
    if (options.lengthMm > 0.0) {
        printBody(file, options);
        return ExitStatus::Done;
    }
    std::cout << "Species and thresholds: " << file.from << '\n';
    printThresholds(file);
    for (const SpeciesFacts& facts : file.facts)
        if (options.species.empty() || facts.species == options.species) printSpecies(file, facts);
    return ExitStatus::Done;
}

}  // namespace

void addSpeciesCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<SpeciesOptions>();
    CLI::App* command = app.add_subcommand(
        "species", "Shows and checks what is known of species and by which thresholds animals are judged");
    auto* store = command->add_option("--store", options->store, "Those of this collection");
    command->add_option("--file", options->file, "Those of this file: read, checked and shown")->excludes(store);
    auto* written = command->add_option("--write", options->write,
                                        "Writes the shipped file, or the collection's own, here, to be changed");
    auto* putting = command->add_option(
        "--put", options->put, "Checks this file and makes it the collection's own; \"shipped\": the shipped one");
    putting->needs(store)->excludes(written);
    command->add_option("--keeper", options->keeper, "Initials of who puts it there")->needs(putting);
    auto* named = command->add_option("--species", options->species, "Only this species (scientific name)");
    auto* length = command->add_option("--length-mm", options->lengthMm, "Mass that this length lets expect")
                       ->check(CLI::Range(0.1, 2000.0))
                       ->needs(named);
    command->add_option("--weight-g", options->weightG, "Condition of an animal of this weight and length")
        ->check(CLI::Range(1e-6, 1e5))
        ->needs(length);
    command->callback([&chosen, options] { chosen = [options] { return species(*options); }; });
}

}  // namespace ringrule::cli
