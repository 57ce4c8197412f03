// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <iosfwd>
#include <span>

#include "ringrule/judge/finding.h"
#include "ringrule/workflow/collection_review.h"

namespace ringrule::cli {

/// One line on a session's photos, then a line for each trouble.
void printSummary(std::ostream& out, const SessionSummary& summary);

/// The session of a day as a table: each animal's length, ratios, growth since its last session and findings.
void printSession(std::ostream& out, std::span<const AnimalHistory> histories, Date on);

/// The animals that need a look after the session of a day: reason, evidence, what else explains it, what to do next.
void printFindings(std::ostream& out, std::span<const AnimalHistory> histories, Date on);

}  // namespace ringrule::cli
