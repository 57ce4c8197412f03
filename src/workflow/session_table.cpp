// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/session_table.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <set>

#include "ringrule/growth/rate.h"
#include "ringrule/husbandry/date.h"

namespace ringrule {
namespace {

struct Column {
    const char* name;
    Estimate Observation::*member;
    int decimals;
};

constexpr std::array<Column, 7> kColumns{{
    {"standard_length_mm", &Observation::standardLengthMm, 3},
    {"trunk_depth_mm", &Observation::trunkDepthMm, 3},
    {"trunk_width_mm", &Observation::trunkWidthMm, 3},
    {"girth_mm", &Observation::girthMm, 3},
    {"girth_ratio", &Observation::girthRatio, 5},
    {"depth_ratio", &Observation::depthRatio, 5},
    {"belly_hollow_percent", &Observation::bellyHollowPercent, 2},
}};

std::string number(double value, int decimals) {
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "%.*f", decimals, value);
    return text.data();
}

std::string estimateFields(const Estimate& estimate, int decimals) {
    if (!estimate.known()) return ",,";
    return "," + number(estimate.value, decimals) + "," + number(estimate.u95(), decimals);
}

/// The rate since the last observation before `seen` that has a length.
Estimate rateSince(const AnimalHistory& history, const Observation& seen) {
    const Observation* last = nullptr;
    for (const Observation& earlier : history.observations) {
        if (earlier.on < seen.on && earlier.standardLengthMm.known()) last = &earlier;
    }
    if (last == nullptr || !seen.standardLengthMm.known()) return {};
    const auto rate = growthRate(*last, seen);
    return rate ? rate.value().mmPerDay : Estimate{};
}

}  // namespace

bool isFlag(const Finding& finding) {
    return finding.kind != FindingKind::CannotTell && finding.kind != FindingKind::MeasureDoubtful;
}

std::string findingWords(FindingKind kind) {
    std::string words(findingName(kind));
    std::replace(words.begin(), words.end(), '-', ' ');
    return words;
}

std::vector<Date> sessionDays(std::span<const AnimalHistory> histories) {
    std::set<Date> days;
    for (const AnimalHistory& history : histories) {
        for (const Observation& seen : history.observations) days.insert(seen.on);
    }
    return {days.begin(), days.end()};
}

std::vector<SessionRow> sessionRows(std::span<const AnimalHistory> histories, Date on,
                                    std::span<const Finding> findings) {
    std::vector<SessionRow> rows;
    for (const AnimalHistory& history : histories) {
        for (const Observation& seen : history.observations) {
            if (seen.on != on) continue;
            SessionRow row{history.animal.code, history.animal.species, seen, rateSince(history, seen), {}};
            for (const Finding& finding : findings) {
                if (finding.animal == history.animal.id && isFlag(finding)) {
                    row.findings.push_back(findingWords(finding.kind));
                }
            }
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

std::string csvField(const std::string& text) {
    std::string field = text;
    // A spreadsheet runs what begins like this; the apostrophe makes it text.
    if (!field.empty() && std::string("=+-@\t\r").find(field.front()) != std::string::npos) field.insert(0, "'");
    if (field.find_first_of(",\"\r\n") == std::string::npos) return field;
    std::string quoted = "\"";
    for (const char c : field) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    return quoted + "\"";
}

std::string csvHead() {
    std::string line = "animal,species,on,age_days,side_photos";
    for (const Column& column : kColumns) line += std::string(",") + column.name + "," + column.name + "_u95";
    return line + ",mm_per_day,mm_per_day_u95,judged_on_girth,findings\r\n";
}

std::string csvLines(std::span<const SessionRow> rows) {
    std::string lines;
    for (const SessionRow& row : rows) {
        lines += csvField(row.animalCode) + "," + csvField(row.species) + "," + formatDate(row.seen.on) + "," +
                 (row.seen.ageDays ? number(*row.seen.ageDays, 0) : std::string()) + "," +
                 std::to_string(row.seen.sidePhotos);
        for (const Column& column : kColumns) lines += estimateFields(row.seen.*column.member, column.decimals);
        lines += estimateFields(row.mmPerDay, 4) + (row.seen.girthFair ? ",yes," : ",no,");
        std::string findings;
        for (const std::string& finding : row.findings) findings += (findings.empty() ? "" : "; ") + finding;
        lines += csvField(findings) + "\r\n";
    }
    return lines;
}

}  // namespace ringrule
