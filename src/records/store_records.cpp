// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "records/record_rows.h"
#include "records/record_rules.h"
#include "records/record_values.h"
#include "records/row_history.h"
#include "records/statement.h"
#include "records/store_state.h"
#include "records/typed_records.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

/// The fields of readings that may change: whose they are, whether they count, what keepers know better than a photo.
constexpr std::array<std::string_view, 8> kChangeable{"measure.animal",   "measure.brood",   "measure.accepted",
                                                      "photo.fed_before", "photo.view",      "session.keeper",
                                                      "session.on_day",   "session.box_name"};

void mustBeChangeable(const RecordKind& kind, const std::string& field) {
    const std::string name = kind.name + "." + field;
    if (kind.use == RecordUse::Kept || std::find(kChangeable.begin(), kChangeable.end(), name) != kChangeable.end())
        return;
    throw Error(ErrorKind::BadUse, "\"" + field + "\" of a " + kind.name +
                                       " is a reading: it is never changed here; correct it in the photo");
}

/// Says in the keeper's words what a unique column would refuse.
void mustBeFree(const Database& database, const RecordKind& kind, const RecordValues& values, std::int64_t id) {
    const auto code = values.find("code");
    if (code != values.end()) {
        Statement taken(database, "SELECT 1 FROM " + kind.table + " WHERE code = ? AND id <> ?");
        if (taken.bind(code->second).bind(id).run().next())
            throw Error(ErrorKind::BadData, kind.name + " \"" + code->second + "\" is already in this collection");
    }
    const auto card = values.find("card");
    if (kind.name != "animal" || card == values.end() || card->second.empty()) return;
    Statement taken(database, "SELECT code FROM animal WHERE card = ? AND id <> ?");
    if (taken.bind(std::int64_t{std::stoll(card->second)}).bind(id).run().next()) {
        throw Error(ErrorKind::BadData, "card " + card->second + " already belongs to animal \"" + taken.text() + "\"");
    }
}

Record mustExist(const Database& database, const RecordKind& kind, std::int64_t id) {
    auto found = findRecord(database, kind, id, Links::AsNumbers);
    if (found) return std::move(*found);
    throw Error(ErrorKind::BadData, "there is no " + kind.name + " " + std::to_string(id) + " in this collection");
}

}  // namespace

std::int64_t Store::addRow(const std::string& kindName, const RecordValues& values) {
    const RecordKind& kind = recordKind(kindName);
    std::int64_t id = 0;
    together([&] {
        const RecordValues normal = normalValues(kind, values);
        mustBeFree(state_->database, kind, normal, 0);
        mustBeBelievable(state_->database, kind, 0, normal);
        id = insertRecord(state_->database, kind, {0, 0, normal});
        RowHistory(state_->database,
                   state_->keeper.empty() ? normal.contains("keeper") ? normal.at("keeper") : "" : state_->keeper)
            .added(kind, id);
    });
    return id;
}

void Store::changeRow(const RecordKind& kind, const Record& before, const RecordValues& values, const Change& words) {
    mustBeFree(state_->database, kind, values, before.id);
    RecordValues after = before.values;
    for (const auto& [name, value] : values) after[name] = value;
    mustBeBelievable(state_->database, kind, before.id, after, before.values);
    updateRecord(state_->database, kind, before.id, values);
    RowHistory(state_->database, state_->keeper).changed(words, kind, before);
}

std::int64_t Store::addRecord(const std::string& kindName, const RecordValues& values) {
    const RecordKind& kind = recordKind(kindName);
    if (kind.use != RecordUse::Kept)
        throw Error(ErrorKind::BadUse, "a " + kind.name + " is added by measuring or checking, not by hand");
    std::int64_t id = 0;
    together([&] { id = addRow(kindName, withNumbers(state_->database, kind, normalValues(kind, values))); });
    return id;
}

void Store::changeRecord(const std::string& kindName, std::int64_t id, std::int64_t version,
                         const RecordValues& values) {
    const RecordKind& kind = recordKind(kindName);
    if (kind.use == RecordUse::Written) throw Error(ErrorKind::BadUse, "a " + kind.name + " is never changed");
    together([&] {
        const Record before = mustExist(state_->database, kind, id);
        RowHistory(state_->database, state_->keeper).mustBeVersion(kind, before, version);
        RecordValues whole = before.values;
        for (const auto& [name, value] : withNumbers(state_->database, kind, values)) {
            mustBeChangeable(kind, name);
            if (const RecordField& field = fieldOf(kind, name);
                value.empty() && field.required && field.otherwise.empty())
                throw Error(ErrorKind::BadData, "\"" + name + "\" may not be empty (" + field.title + ")");
            whole[name] = value;
        }
        const RecordValues normal = normalStoredValues(kind, whole);
        RecordValues changed;
        for (const auto& [name, value] : values)
            changed[name] = normal.contains(name) ? normal.at(name) : std::string();
        changeRow(kind, before, changed, {{}, state_->keeper, "changed", nameOf(kind, before), {}, {}});
    });
}

void Store::removeRecord(const std::string& kindName, std::int64_t id, std::int64_t version) {
    const RecordKind& kind = recordKind(kindName);
    if (kind.use != RecordUse::Kept)
        throw Error(
            ErrorKind::BadUse,
            "records of the kind " + kind.name + " are never removed" +
                (kind.use == RecordUse::Changed ? "; a measure that is not to count is changed to accepted=no" : ""));
    together([&] {
        const Record before = mustExist(state_->database, kind, id);
        const RowHistory history(state_->database, state_->keeper);
        history.mustBeVersion(kind, before, version);
        deleteRecord(state_->database, kind, id);
        history.removed(kind, before);
    });
}

std::vector<Record> Store::records(const std::string& kind) const {
    return readRecords(state_->database, recordKind(kind), Links::AsCodes);
}

std::optional<Record> Store::record(const std::string& kind, std::int64_t id) const {
    return findRecord(state_->database, recordKind(kind), id, Links::AsCodes);
}

std::int64_t Store::numberOf(const std::string& kindName, const std::string& code) const {
    const RecordKind& kind = recordKind(kindName);
    if (!kind.coded()) throw Error(ErrorKind::BadUse, "a " + kind.name + " has no code; give its number");
    return numberOfCode(state_->database, kind, code);
}

void Store::undo(std::int64_t change) {
    together([&] { RowHistory(state_->database, state_->keeper).undo(change); });
}

std::optional<std::string> Store::setting(const std::string& name) const {
    Statement row(state_->database, "SELECT value FROM meta WHERE key = ?");
    if (!row.bind(name).run().next()) return std::nullopt;
    return row.text();
}

void Store::set(const std::string& name, const std::string& value) {
    together([&] {
        const std::string before = setting(name).value_or("");
        Statement(state_->database,
                  "INSERT INTO meta (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value")
            .bind(name)
            .bind(value)
            .run();
        if (before != value) logChange(state_->database, {{}, state_->keeper, "set", name, before, value});
    });
}

}  // namespace ringrule
