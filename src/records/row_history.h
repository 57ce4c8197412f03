// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "records/database.h"
#include "ringrule/records/record_kind.h"
#include "ringrule/records/store.h"

namespace ringrule {

/// The change log, inside the caller's transaction. Each line keeps the fields that changed, before and after, so that
/// it can be taken back.
class RowHistory {
public:
    RowHistory(Database& database, std::string who) : database_(database), who_(std::move(who)) {}

    /// Logs a row that was just added.
    void added(const RecordKind& kind, std::int64_t id) const;
    /// Logs what differs between `before` and the row as it is; nothing when nothing does. Words for before and after
    /// that are empty are made from the fields.
    void changed(Change words, const RecordKind& kind, const Record& before) const;
    /// Logs that the measure of this number was added as a correction.
    void corrected(const Change& words, std::int64_t measure) const;
    /// Logs a row that was just removed.
    void removed(const RecordKind& kind, const Record& before) const;

    /// Throws `ChangedMeanwhile` that says who changed the row when, unless it still has this version.
    void mustBeVersion(const RecordKind& kind, const Record& now, std::int64_t version) const;

    /// Takes one change back, by another change that is logged. Refuses, `Error(BadData)`, when what it changed was
    /// changed again since.
    void undo(std::int64_t change) const;

private:
    Database& database_;
    std::string who_;
};

/// What a record is called: its code, or kind and number.
[[nodiscard]] std::string nameOf(const RecordKind& kind, const Record& record);

}  // namespace ringrule
