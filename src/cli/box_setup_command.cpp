// SPDX-License-Identifier: GPL-3.0-or-later
#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/box_command.h"
#include "cli/day_option.h"
#include "cli/today.h"
#include "ringrule/error.h"
#include "ringrule/husbandry/date.h"
#include "ringrule/optics/box_setup.h"
#include "ringrule/workflow/box_checks.h"

namespace ringrule::cli {
namespace {

struct SetupCommandOptions {
    std::string box;
    std::string store;
    std::string photo;
    double rodMm = 0.0;
    bool flat = false;
    std::string on;
};

const char* signOf(SetupState state) {
    switch (state) {
        case SetupState::Done:
            return "[done]       ";
        case SetupState::Wrong:
            return "[wrong]      ";
        case SetupState::ToDo:
            return "[to do]      ";
        case SetupState::CannotTell:
            break;
    }
    return "[cannot tell]";
}

// What a keeper at a terminal types once the hands have done what the advice says.
std::string commandOf(SetupStepKind kind) {
    switch (kind) {
        case SetupStepKind::Print:
            return "ringrule plate";
        case SetupStepKind::Rule:
            return "ringrule box rescale";
        case SetupStepKind::Lens:
            return "ringrule lens";
        case SetupStepKind::Water:
            return "ringrule box water";
        case SetupStepKind::AnimalPlane:
            return "ringrule box plane";
        case SetupStepKind::Rod:
            break;
    }
    return "ringrule check --rod-mm";
}

// What to do about a step, with the command for it; empty when there is nothing.
std::string adviceOf(const SetupStep& step) {
    if (step.advice.empty()) return {};
    return textOf(step.advice) + (step.state == SetupState::Done ? "" : " Type: " + commandOf(step.kind));
}

// Text broken at spaces so that it stands under the titles.
std::string wrapped(const std::string& text) {
    constexpr std::size_t kWidth = 84;
    const std::string indent(17, ' ');
    std::string lines, line;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::string word = text.substr(at, end - at);
        if (!line.empty() && line.size() + 1 + word.size() > kWidth) {
            lines += indent + line + '\n';
            line.clear();
        }
        line += (line.empty() ? "" : " ") + word;
        at = end + 1;
    }
    return lines + indent + line + '\n';
}

std::vector<PastBoxCheck> historyOf(const SetupCommandOptions& options, const Box& box, const std::string& day) {
    std::vector<PastBoxCheck> history;
    if (!options.store.empty()) history = boxHistory(Store::open(options.store), box.name);
    if (!options.photo.empty()) {
        BoxCheckOptions how;
        if (options.rodMm > 0.0) how.rodMm = options.rodMm;
        how.rodShape = options.flat ? RodShape::Flat : RodShape::Round;
        PastBoxCheck now = pastBoxCheck(checkBox(options.photo, box, how), box, day);
        if (!now.refusalSentence.empty())
            std::cerr << "ringrule: " << options.photo << ": " << now.refusalSentence << '\n';
        history.push_back(std::move(now));
    }
    return history;
}

ExitStatus showSetup(const SetupCommandOptions& options) {
    const std::string day = options.on.empty() ? today() : options.on;
    static_cast<void>(dayOption("--on", day));
    std::optional<Box> box;
    std::vector<PastBoxCheck> history;
    if (!options.box.empty()) {
        box = readBox(options.box);
        history = historyOf(options, *box, day);
        // What was found later is not known on that day.
        std::erase_if(history, [&](const PastBoxCheck& check) { return check.checkedOn > day; });
    }
    const auto steps = boxSetup(box, history, day);
    int number = 0;
    for (const SetupStep& step : steps) {
        std::cout << ++number << ' ' << signOf(step.state) << "  " << step.title << '\n' << wrapped(textOf(step.found));
        if (!step.advice.empty()) std::cout << wrapped(adviceOf(step));
    }
    const auto next = nextSetupStep(steps);
    if (next) std::cout << "\nNext: " << next->title << ". " << adviceOf(*next) << '\n';
    return next ? ExitStatus::NotMeasured : ExitStatus::Done;
}

}  // namespace

void addBoxSetupCommand(CLI::App& box, Run& chosen) {
    auto options = std::make_shared<SetupCommandOptions>();
    CLI::App* command = box.add_subcommand("setup", "Says step by step what is left to do until a box measures true");
    CLI::Option* file = command->add_option("--box", options->box, "Box file (none yet: begin with the plate)");
    command->add_option("--store", options->store, "Folder of the collection that keeps the checks of this box")
        ->needs(file);
    CLI::Option* photo =
        command->add_option("--check", options->photo, "Photo of the plate alone, or of a rod, to be judged now");
    photo->needs(file);
    CLI::Option* rod = command->add_option("--rod-mm", options->rodMm, "Length of the rod in that photo in mm");
    rod->check(CLI::Range(10.0, 1000.0))->needs(photo);
    command->add_flag("--flat", options->flat, "The rod is a flat strip, not round")->needs(rod);
    command->add_option("--on", options->on, "Day on which it is asked (default: today)");
    command->footer("Exit status: 0 all steps are done, 1 something is left to do or wrong, 2 bad use or box file.");
    command->callback([&chosen, options] { chosen = [options] { return showSetup(*options); }; });
}

}  // namespace ringrule::cli
