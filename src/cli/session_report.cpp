// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/session_report.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <ostream>
#include <string>

#include "ringrule/judge/review.h"
#include "ringrule/sheets/number_text.h"
#include "ringrule/workflow/session_table.h"

namespace ringrule::cli {
namespace {

constexpr std::array<const char*, 6> kHeads{"animal",         "length (mm)", "depth / length",
                                            "girth / length", "mm a day",    "finding"};
using Cells = std::array<std::string, kHeads.size()>;

/// Letters as a reader sees them: bytes that continue a UTF-8 letter do not count.
std::size_t widthOf(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string cell(const Estimate& estimate) {
    return estimate.known() ? numberWithInterval(estimate) : "cannot tell";
}

Cells cellsOf(const SessionRow& row) {
    std::string findings;
    for (const std::string& finding : row.findings) findings += (findings.empty() ? "" : ", ") + finding;
    if (!row.seen.girthFair) findings += findings.empty() ? "not judged on girth" : ", not judged on girth";
    return {row.animalCode,
            cell(row.seen.standardLengthMm),
            cell(row.seen.depthRatio),
            cell(row.seen.girthRatio),
            row.mmPerDay.known() ? numberWithInterval(row.mmPerDay) : "-",
            findings.empty() ? "-" : findings};
}

void printTable(std::ostream& out, const std::vector<Cells>& rows) {
    std::array<std::size_t, kHeads.size()> widths{};
    for (const Cells& row : rows) {
        for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], widthOf(row[i]));
    }
    for (const Cells& row : rows) {
        std::string line = " ";
        for (std::size_t i = 0; i < row.size(); ++i) {
            line += " " + row[i];
            if (i + 1 < row.size()) line += std::string(widths[i] - widthOf(row[i]) + 1, ' ');
        }
        out << line << '\n';
    }
}

void printFinding(std::ostream& out, const Finding& finding) {
    out << "\n  " << finding.animalCode << ": " << findingWords(finding.kind);
    if (finding.since && *finding.since != finding.on) out << ", since " << formatDate(*finding.since);
    out << "\n    " << finding.sentence << '\n';
    if (!finding.otherReasons.empty()) {
        std::string reasons;
        for (const std::string& reason : finding.otherReasons) reasons += (reasons.empty() ? "" : "; ") + reason;
        out << "    What else could explain it: " << reasons << '\n';
    }
    if (!finding.nextStep.empty()) out << "    Next: " << finding.nextStep << '\n';
}

}  // namespace

void printSummary(std::ostream& out, const SessionSummary& summary) {
    out << "Session " << formatDate(summary.on) << ": photos " << summary.photos << "; measured " << summary.measured
        << ", not measured " << summary.refused;
    if (summary.toLookAt > 0) out << ", to be looked at before they count " << summary.toLookAt;
    out << '\n';
}

void printTroubles(std::ostream& out, const SessionSummary& summary, const std::string& mark) {
    for (const std::string& trouble : summary.troubles) out << mark << trouble << '\n';
}

void printSession(std::ostream& out, std::span<const AnimalHistory> histories, Date on) {
    printSession(out, histories, on, reviewAnimals(histories, on));
}

void printSession(std::ostream& out, std::span<const AnimalHistory> histories, Date on,
                  const std::vector<Finding>& findings) {
    std::vector<Cells> rows{Cells{}};
    std::copy(kHeads.begin(), kHeads.end(), rows.front().begin());
    for (const SessionRow& row : sessionRows(histories, on, findings)) rows.push_back(cellsOf(row));
    out << "Session of " << formatDate(on) << " (each number with its 95 % interval)\n";
    if (rows.size() == 1) {
        out << "  No animal of this collection was measured.\n";
        return;
    }
    printTable(out, rows);
}

void printFindings(std::ostream& out, std::span<const AnimalHistory> histories, Date on) {
    printFindings(out, on, reviewAnimals(histories, on));
}

void printFindings(std::ostream& out, Date on, const std::vector<Finding>& findings) {
    out << "Who needs a look after the session of " << formatDate(on) << '\n';
    if (std::none_of(findings.begin(), findings.end(), isFlag)) out << "  Nobody: no animal stands out.\n";
    for (const Finding& finding : findings) {
        if (isFlag(finding)) printFinding(out, finding);
    }
    if (std::all_of(findings.begin(), findings.end(), isFlag)) return;
    out << "\n  What cannot be told, or rests on a doubtful measure:\n";
    for (const Finding& finding : findings) {
        if (!isFlag(finding)) out << "    " << finding.sentence << "\n      Next: " << finding.nextStep << '\n';
    }
}

void printFlagDiary(std::ostream& out, std::span<const AnimalHistory> histories) {
    const std::vector<Date> days = sessionDays(histories);
    std::map<std::string, std::map<Date, std::string>> diary;
    std::optional<Date> last;
    for (const Date day : days) {
        for (const Finding& finding : reviewAnimals(histories, day)) {
            if (!isFlag(finding)) continue;
            std::string& said = diary[finding.animalCode][day];
            said += (said.empty() ? "" : ", ") + findingWords(finding.kind);
            last = day;
        }
    }
    if (!last) return;
    out << "\nWho stood out, session by session\n";
    for (const auto& [code, flags] : diary) {
        out << "  " << code << ":";
        for (const auto& [day, said] : flags)
            out << (day == flags.begin()->first ? " " : "; ") << formatDate(day) << ' ' << said;
        out << '\n';
    }
    if (*last == days.back()) return;
    out << "\nThe last time:\n";
    printFindings(out, histories, *last);
}

}  // namespace ringrule::cli
