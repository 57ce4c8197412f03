// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/row_history.h"

#include <nlohmann/json.hpp>

#include "records/measure_copy.h"
#include "records/record_rows.h"
#include "records/record_rules.h"
#include "records/statement.h"
#include "records/store_state.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

std::string textOf(const RecordValues& values) {
    return nlohmann::json(values).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

RecordValues valuesOf(const std::string& text) {
    const auto json = nlohmann::json::parse(text, nullptr, false);
    if (!json.is_object()) throw Error(ErrorKind::BadStore, "a line of the change log is damaged");
    return json.get<RecordValues>();
}

/// Values for people: a link by the code of what it points to, as far as that is still there.
std::string inWords(const Database& database, const RecordKind& kind, const RecordValues& values) {
    std::string words;
    for (const auto& [name, value] : values) {
        if (value.empty()) continue;
        std::string shown = value;
        const RecordField* const field = kind.field(name);
        if (field != nullptr && field->type == FieldType::Link && recordKind(field->of).coded()) {
            const auto linked = findRecord(database, recordKind(field->of), std::stoll(value), Links::AsNumbers);
            if (linked) shown = linked->text("code");
        }
        words += (words.empty() ? "" : "; ") + name + ": " + shown;
    }
    return words;
}

/// The fields of `one` that differ from those of `other`; empty text for a field that only `other` has.
RecordValues differing(const RecordKind& kind, const Record& one, const Record& other) {
    RecordValues values;
    for (const RecordField& field : kind.fields) {
        if (one.text(field.name) != other.text(field.name)) values[field.name] = one.text(field.name);
    }
    return values;
}

struct LoggedRow {
    std::string subject;
    std::string what;
    std::string kind;
    std::int64_t id = 0;
    std::string before;
    std::string after;
};

LoggedRow lineOf(const Database& database, std::int64_t change) {
    Statement row(database,
                  "SELECT subject, what, kind, coalesce(row_id, 0), coalesce(row_before, ''), coalesce(row_after, '') "
                  "FROM change_log WHERE id = ?");
    if (!row.bind(change).run().next()) {
        throw Error(ErrorKind::BadUse, "there is no change " + std::to_string(change) + " in the change log");
    }
    LoggedRow line{row.text(), row.text(), row.text(), row.number(), row.text(), row.text()};
    if (line.kind.empty()) {
        throw Error(ErrorKind::BadUse,
                    "change " + std::to_string(change) + " was logged without what an undo needs; change it by hand");
    }
    return line;
}

[[noreturn]] void refuseUndo(const LoggedRow& line) {
    throw Error(ErrorKind::BadData, line.subject + " was changed again since; take the later change back first");
}

void writeLine(Database& database, const Change& words, const RecordKind& kind, std::int64_t id,
               const std::string& before, const std::string& after) {
    logChange(database, words);
    Statement(database,
              "UPDATE change_log SET kind = ?, row_id = ?, row_before = ?, row_after = ?, undoes = ? "
              "WHERE id = (SELECT max(id) FROM change_log)")
        .bind(kind.name)
        .bind(id)
        .bind(before)
        .bind(after)
        .bind(words.undoes)
        .run();
}

}  // namespace

std::string nameOf(const RecordKind& kind, const Record& record) {
    return kind.name + " " + (kind.coded() ? record.text("code") : std::to_string(record.id));
}

void RowHistory::added(const RecordKind& kind, std::int64_t id) const {
    const auto now = findRecord(database_, kind, id, Links::AsNumbers);
    const Change words{{}, who_, "added", nameOf(kind, *now), {}, inWords(database_, kind, now->values)};
    writeLine(database_, words, kind, id, {}, textOf(now->values));
}

void RowHistory::changed(Change words, const RecordKind& kind, const Record& before) const {
    const auto now = findRecord(database_, kind, before.id, Links::AsNumbers);
    const RecordValues old = differing(kind, before, *now);
    if (old.empty()) return;
    const RecordValues fresh = differing(kind, *now, before);
    if (words.who.empty()) words.who = who_;
    if (words.before.empty() && words.after.empty()) {
        words.before = inWords(database_, kind, old);
        words.after = inWords(database_, kind, fresh);
    }
    writeLine(database_, words, kind, before.id, textOf(old), textOf(fresh));
}

void RowHistory::corrected(const Change& words, std::int64_t measure) const {
    writeLine(database_, words, recordKind("measure"), measure, {}, {});
}

void RowHistory::removed(const RecordKind& kind, const Record& before) const {
    const Change words{{}, who_, "removed", nameOf(kind, before), inWords(database_, kind, before.values), {}};
    writeLine(database_, words, kind, before.id, textOf(before.values), {});
}

void RowHistory::mustBeVersion(const RecordKind& kind, const Record& now, std::int64_t version) const {
    if (now.version == version) return;
    Statement last(
        database_,
        "SELECT at, who, before, after FROM change_log WHERE kind = ? AND row_id = ? ORDER BY id DESC LIMIT 1");
    std::string how;
    if (last.bind(kind.name).bind(now.id).run().next()) {
        const std::string at = last.text();
        const std::string who = last.text();
        const std::string was = last.text();
        how = " by " + (who.empty() ? "somebody" : who) + " at " + at + " (" + was + " -> " + last.text() + ")";
    }
    throw ChangedMeanwhile(ErrorKind::BadStore, nameOf(kind, now) + " was changed" + how +
                                                    " after it was read here; nothing was overwritten: read it again, "
                                                    "then change it");
}

void RowHistory::undo(std::int64_t change) const {
    const LoggedRow line = lineOf(database_, change);
    const RecordKind& kind = recordKind(line.kind);
    const auto now = findRecord(database_, kind, line.id, Links::AsNumbers);
    Change words{{}, who_, "undone", line.subject, {}, {}};
    words.undoes = change;
    if (line.what == "corrected") {
        // The first reading and its correction both stay: the first is added again in the correction's place.
        const std::int64_t again = addCopyOfReplaced(database_, line.id, who_);
        words.after = "measure " + std::to_string(again);
        writeLine(database_, words, kind, again, {}, {});
        return;
    }
    if (line.before.empty()) {
        if (kind.use != RecordUse::Kept)
            throw Error(ErrorKind::BadUse, line.subject + " is a reading: it is never removed");
        if (!now || now->values != valuesOf(line.after)) refuseUndo(line);
        deleteRecord(database_, kind, line.id);
        words.before = inWords(database_, kind, now->values);
        writeLine(database_, words, kind, line.id, textOf(now->values), {});
        return;
    }
    const RecordValues before = valuesOf(line.before);
    if (line.after.empty()) {
        if (now) refuseUndo(line);
        mustBeBelievable(database_, kind, line.id, before);
        // Beyond every version that a keeper may have read before.
        Statement lines(database_, "SELECT count(*) FROM change_log WHERE kind = ? AND row_id = ?");
        static_cast<void>(lines.bind(kind.name).bind(line.id).run().next());
        insertRecord(database_, kind, {line.id, lines.number() + 2, before});
        words.after = inWords(database_, kind, before);
        writeLine(database_, words, kind, line.id, {}, textOf(before));
        return;
    }
    if (!now) refuseUndo(line);
    for (const auto& [name, value] : valuesOf(line.after)) {
        if (now->text(name) != value) refuseUndo(line);
    }
    RecordValues after = now->values;
    for (const auto& [name, value] : before) after[name] = value;
    mustBeBelievable(database_, kind, line.id, after, now->values);
    updateRecord(database_, kind, line.id, before);
    changed(words, kind, *now);
}

}  // namespace ringrule
