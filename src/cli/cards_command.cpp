// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/cards_command.h"

#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "ringrule/error.h"
#include "ringrule/sheets/card_sheet.h"

namespace ringrule::cli {
namespace {

struct CardsOptions {
    std::string numbers;
    std::string names;
    std::string paper = "a4";
    double markerMm = 10.0;
    std::string pdf;
};

ExitStatus makeCards(const CardsOptions& options) {
    CardSheetOptions sheet;
    sheet.paper = paperNamed(options.paper);
    sheet.markerMm = options.markerMm;
    if (!options.names.empty()) sheet.names = readCardNames(options.names);
    std::vector<int> numbers;
    if (!options.numbers.empty()) {
        numbers = cardNumbersIn(options.numbers);
    } else {
        for (const auto& [number, name] : sheet.names) numbers.push_back(number);
    }
    const int sheets = writeCards(numbers, options.pdf, sheet);
    std::cout << numbers.size() << (numbers.size() == 1 ? " card on " : " cards on ") << sheets
              << (sheets == 1 ? " sheet of " : " sheets of ") << paperName(sheet.paper) << ": " << options.pdf << '\n';
    return ExitStatus::Done;
}

}  // namespace

void addCardsCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<CardsOptions>();
    CLI::App* command = app.add_subcommand("cards", "Makes animal cards to print: marker, number and name");
    CLI::Option* numbers = command->add_option("--numbers", options->numbers,
                                               "Cards 0 to 999 as in 1-12,15 (default: all that --names has)");
    CLI::Option* names = command->add_option("--names", options->names, "Table \"number,name\" as CSV");
    command->add_option("--paper", options->paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
    command->add_option("--marker", options->markerMm, "Side of the marker in mm (6 to 40)")
        ->check(CLI::Range(6.0, 40.0));
    command->add_option("--pdf", options->pdf, "PDF file to write")->required();
    command->callback([&chosen, options, numbers, names] {
        if (numbers->count() == 0 && names->count() == 0) throw CLI::RequiredError("--numbers or --names");
        chosen = [options] { return makeCards(*options); };
    });
}

}  // namespace ringrule::cli
