// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <iosfwd>
#include <span>
#include <string>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/workflow/collection_review.h"

namespace ringrule::cli {

/// One line on a session's photos.
void printSummary(std::ostream& out, const SessionSummary& summary);

/// A line for each trouble of a session, each begun with `mark`.
void printTroubles(std::ostream& out, const SessionSummary& summary, const std::string& mark);

/// The session of a day as a table: each animal's length, ratios, growth since its last session and findings.
void printSession(std::ostream& out, std::span<const AnimalHistory> histories, Date on);

/// The same with findings that were told already.
void printSession(std::ostream& out, std::span<const AnimalHistory> histories, Date on,
                  const std::vector<Finding>& findings);

/// A line for each box of that day's sessions that was not checked lately, or did not measure true.
void printBoxNotes(std::ostream& out, const Store& store, Date on);

/// The animals that need a look after the session of a day: reason, evidence, what else explains it, what to do next.
void printFindings(std::ostream& out, std::span<const AnimalHistory> histories, Date on);

/// The same of findings that were told already.
void printFindings(std::ostream& out, Date on, const std::vector<Finding>& findings);

/// Which animals stood out in which session, all sessions through; then what was said of them the last time, unless
/// that is the newest session.
void printFlagDiary(std::ostream& out, std::span<const AnimalHistory> histories);

}  // namespace ringrule::cli
