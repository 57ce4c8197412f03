// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "ringrule/growth/observation.h"
#include "ringrule/judge/finding.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// One animal in one session as a keeper reads it.
struct SessionRow {
    std::string animalCode;
    std::string species;
    Observation seen;
    Estimate mmPerDay;                  ///< since the animal's last session with a length; not known at its first
    std::vector<std::string> findings;  ///< flags raised in this session, in plain words
};

/// Whether a finding asks for a keeper's look at the animal ("cannot tell" and "measure doubtful" do not).
[[nodiscard]] bool isFlag(const Finding& finding);

/// A finding's kind in plain words, e.g. "behind tankmates".
[[nodiscard]] std::string findingWords(FindingKind kind);

/// The days on which anything was measured, first to last.
[[nodiscard]] std::vector<Date> sessionDays(std::span<const AnimalHistory> histories);

/// The animals measured on a day, in the order of `histories`; `findings` are those of that day.
[[nodiscard]] std::vector<SessionRow> sessionRows(std::span<const AnimalHistory> histories, Date on,
                                                  std::span<const Finding> findings);

/// The head line of a table of session rows as RFC 4180 text, and the lines of rows; lines end with CRLF.
[[nodiscard]] std::string csvHead();
[[nodiscard]] std::string csvLines(std::span<const SessionRow> rows);

/// One field of such a table: quoted where it must be, and never taken for a formula by a spreadsheet.
[[nodiscard]] std::string csvField(const std::string& text);

}  // namespace ringrule
