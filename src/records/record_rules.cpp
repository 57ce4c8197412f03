// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/record_rules.h"

#include <array>
#include <map>
#include <optional>

#include "records/record_rows.h"
#include "records/record_values.h"
#include "ringrule/error.h"
#include "ringrule/husbandry/spells.h"

namespace ringrule {
namespace {

/// What one owner can have but one of at a time.
struct OneAtATime {
    const char* kind;
    const char* owner;  ///< field and kind of whose spell it is
    const char* other;  ///< field and kind of what it has
    const char* has;
    const char* word;  ///< what to call the spell
};

constexpr std::array<OneAtATime, 3> kOneAtATime{{{"stay", "animal", "tank", "is in", "stay"},
                                                 {"diet-spell", "animal", "diet", "has", "spell"},
                                                 {"tank-diet", "tank", "diet", "has", "spell"}}};

const OneAtATime* oneAtATime(const std::string& kind) {
    for (const OneAtATime& rule : kOneAtATime)
        if (kind == rule.kind) return &rule;
    return nullptr;
}

std::string textAt(const RecordValues& values, const std::string& name) {
    const auto found = values.find(name);
    return found == values.end() ? std::string() : found->second;
}

/// The days of a record; nothing when its first day cannot be read, in a collection that others wrote to.
std::optional<Spell> spellOf(const RecordValues& values) {
    const auto from = parseDate(textAt(values, "from_day"));
    if (!from) return std::nullopt;
    return Spell{*from, parseDate(textAt(values, "to_day"))};
}

std::chrono::days daysShared(const RecordValues& one, const RecordValues& other) {
    const auto a = spellOf(one), b = spellOf(other);
    return a && b ? sharedDays(*a, *b) : std::chrono::days{0};
}

/// "in tank "B3" from 2031-01-06 on", links as codes.
std::string whereAndWhen(const OneAtATime& rule, const Record& record) {
    return std::string(rule.other) + " \"" + record.text(rule.other) + "\" " + spellText(*spellOf(record.values));
}

void mustNotOverlap(const Database& database, const RecordKind& kind, const OneAtATime& rule, std::int64_t id,
                    const RecordValues& values, const RecordValues& before) {
    const std::string owner = textAt(values, rule.owner);
    const bool same = textAt(before, rule.owner) == owner;
    const std::string others = "t." + std::string(rule.owner) + " = " + owner + " AND t.id <> " + std::to_string(id);
    for (const Record& other : readRecords(database, kind, Links::AsCodes, others)) {
        const auto shared = daysShared(values, other.values);
        const auto sharedBefore = same ? daysShared(before, other.values) : std::chrono::days{0};
        if (shared <= sharedBefore) continue;
        throw Error(ErrorKind::BadData, std::string(rule.owner) + " \"" + other.text(rule.owner) + "\" " + rule.has +
                                            " " + whereAndWhen(rule, other) + " already; end that " + rule.word +
                                            " first, or choose days that share with it no more than its first or "
                                            "last day");
    }
}

/// What a measure can be, in its unit.
struct Range {
    double low = 0.0;
    double high = 0.0;
    const char* unit = "";
};

/// Bounds that no living pipefish or seahorse reaches, wide enough for a trunk of the smallest newborn: they tell a
/// slip of the pen or another unit, not a small animal.
Range rangeOf(const std::string& measure) {
    if (measure.ends_with("_percent")) return {-100.0, 100.0, " %"};
    if (measure.ends_with("_ratio")) return {0.001, 10.0, ""};
    return {0.1, 1000.0, " mm"};
}

/// What is wrong with a hand measure's value and interval, or nothing; only what differs from `before` is looked at.
std::string wrongWith(const RecordValues& values, const RecordValues& before) {
    const Range range = rangeOf(textAt(values, "measure"));
    const std::string value = textAt(values, "value"), u95 = textAt(values, "u95");
    const bool newMeasure = textAt(before, "measure") != textAt(values, "measure");
    const bool newValue = newMeasure || textAt(before, "value") != value;
    const auto must = [&](const char* field, double low, const std::string& was, const std::string& advice) {
        return "\"" + std::string(field) + "\" of " + textAt(values, "measure") + " must lie between " +
               shortNumber(low) + " and " + shortNumber(range.high) + range.unit + ", not " + was + "; " + advice;
    };
    if (newValue && !value.empty() && !(numberOf(value) >= range.low && numberOf(value) <= range.high))
        return must("value", range.low, value, "correct it, or leave the measure out");
    if ((newMeasure || textAt(before, "u95") != u95) && !u95.empty() &&
        !(numberOf(u95) > 0.0 && numberOf(u95) <= range.high))
        return must("u95", 0.001, u95, "leave it empty when it is not known");
    return {};
}

std::vector<std::string> overlapsOf(const Database& database, const OneAtATime& rule) {
    std::map<std::string, std::vector<Record>> byOwner;
    eachRecord(database, recordKind(rule.kind), Links::AsCodes, {},
               [&](const Record& record) { byOwner[record.text(rule.owner)].push_back(record); });
    std::vector<std::string> sentences;
    for (const auto& [owner, spells] : byOwner) {
        for (std::size_t i = 1; i < spells.size(); ++i)
            for (std::size_t j = 0; j < i; ++j) {
                if (daysShared(spells[i].values, spells[j].values) == std::chrono::days{0}) continue;
                const std::string kind = std::string(rule.kind) + " ";
                sentences.push_back(kind + std::to_string(spells[j].id) + " and " + kind +
                                    std::to_string(spells[i].id) + ": " + rule.owner + " \"" + owner + "\" " +
                                    rule.has + " " + whereAndWhen(rule, spells[j]) + " and " +
                                    whereAndWhen(rule, spells[i]) + "; correct or remove one of them");
            }
    }
    return sentences;
}

}  // namespace

void mustBeBelievable(const Database& database, const RecordKind& kind, std::int64_t id, const RecordValues& values,
                      const RecordValues& before) {
    if (const OneAtATime* const rule = oneAtATime(kind.name)) mustNotOverlap(database, kind, *rule, id, values, before);
    if (kind.name != "hand-measure") return;
    if (std::string wrong = wrongWith(values, before); !wrong.empty()) throw Error(ErrorKind::BadData, wrong);
}

std::vector<std::string> unbelievableRecords(const Database& database) {
    std::vector<std::string> sentences;
    for (const OneAtATime& rule : kOneAtATime)
        for (std::string& sentence : overlapsOf(database, rule)) sentences.push_back(std::move(sentence));
    eachRecord(database, recordKind("hand-measure"), Links::AsCodes, {}, [&](const Record& record) {
        const std::string wrong = wrongWith(record.values, {});
        if (wrong.empty()) return;
        sentences.push_back("hand-measure " + std::to_string(record.id) + " of animal \"" + record.text("animal") +
                            "\": " + wrong);
    });
    return sentences;
}

}  // namespace ringrule
