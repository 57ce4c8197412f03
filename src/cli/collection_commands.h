// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.h"

namespace ringrule::cli {

/// `add`, `change`, `remove`, `list`: the records of a collection.
void addRecordCommands(CLI::App& app, Run& chosen);
/// `log`, `undo`: what was changed, and taking it back.
void addLogCommands(CLI::App& app, Run& chosen);
/// `verify`, `backup`, `restore`, `archive`, `unpack`: that nothing is lost.
void addSafetyCommands(CLI::App& app, Run& chosen);
/// `export`, `import`: tables out and in.
void addExchangeCommands(CLI::App& app, Run& chosen);
/// `who`: what a keeper asks of a collection.
void addWhoCommand(CLI::App& app, Run& chosen);

/// Reads a collection's database and every original; says what is missing or altered.
ExitStatus verify(const std::string& store);

}  // namespace ringrule::cli
