// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "records/schema_steps.h"

namespace ringrule {
namespace {

// Version 2. `row_version` grows with every change of a row: who changes it says which one they read. Outlines and
// midlines move to a table of their own, so that a year's measures are read without them.
constexpr std::array kVersion2{
    std::string_view("CREATE TABLE brood (id INTEGER PRIMARY KEY, code TEXT NOT NULL UNIQUE CHECK (code <> ''), "
                     "species TEXT NOT NULL, mother INTEGER REFERENCES animal, father INTEGER REFERENCES animal, "
                     "tank INTEGER REFERENCES tank, born_on TEXT, note TEXT NOT NULL, "
                     "row_version INTEGER NOT NULL DEFAULT 1)"),

    std::string_view("CREATE TABLE brood_event (id INTEGER PRIMARY KEY, brood INTEGER NOT NULL REFERENCES brood, "
                     "on_day TEXT NOT NULL, event TEXT NOT NULL CHECK (event IN ('courting', 'egg-transfer', "
                     "'carrying', 'birth', 'count')), count INTEGER CHECK (count >= 0), note TEXT NOT NULL, "
                     "row_version INTEGER NOT NULL DEFAULT 1)"),

    std::string_view("CREATE TABLE tank_diet_spell (id INTEGER PRIMARY KEY, tank INTEGER NOT NULL REFERENCES tank, "
                     "diet INTEGER NOT NULL REFERENCES diet, from_day TEXT NOT NULL, to_day TEXT, "
                     "row_version INTEGER NOT NULL DEFAULT 1, CHECK (to_day IS NULL OR to_day >= from_day))"),

    std::string_view("CREATE TABLE feeding_note (id INTEGER PRIMARY KEY, animal INTEGER REFERENCES animal, "
                     "tank INTEGER REFERENCES tank, on_day TEXT NOT NULL, food TEXT NOT NULL, "
                     "outcome TEXT NOT NULL CHECK (outcome IN ('offered', 'taken', 'refused')), keeper TEXT NOT NULL, "
                     "note TEXT NOT NULL, row_version INTEGER NOT NULL DEFAULT 1, "
                     "CHECK ((animal IS NULL) <> (tank IS NULL)))"),

    std::string_view("CREATE TABLE water_reading (id INTEGER PRIMARY KEY, tank INTEGER NOT NULL REFERENCES tank, "
                     "on_day TEXT NOT NULL, temperature_c REAL, salinity_ppt REAL, keeper TEXT NOT NULL, "
                     "note TEXT NOT NULL, row_version INTEGER NOT NULL DEFAULT 1)"),

    std::string_view("CREATE TABLE treatment (id INTEGER PRIMARY KEY, animal INTEGER REFERENCES animal, "
                     "tank INTEGER REFERENCES tank, from_day TEXT NOT NULL, to_day TEXT, what TEXT NOT NULL "
                     "CHECK (what <> ''), dose TEXT NOT NULL, ordered_by TEXT NOT NULL, note TEXT NOT NULL, "
                     "row_version INTEGER NOT NULL DEFAULT 1, CHECK (to_day IS NULL OR to_day >= from_day), "
                     "CHECK ((animal IS NULL) <> (tank IS NULL)))"),

    std::string_view("CREATE TABLE finding_decision (id INTEGER PRIMARY KEY, animal INTEGER NOT NULL REFERENCES "
                     "animal, on_day TEXT NOT NULL, finding TEXT NOT NULL CHECK (finding <> ''), decision TEXT NOT "
                     "NULL CHECK (decision IN ('acted', 'watch', 'dismissed')), keeper TEXT NOT NULL, "
                     "note TEXT NOT NULL, row_version INTEGER NOT NULL DEFAULT 1)"),

    std::string_view("CREATE TABLE hand_measure (id INTEGER PRIMARY KEY, animal INTEGER NOT NULL REFERENCES animal, "
                     "on_day TEXT NOT NULL, measure TEXT NOT NULL CHECK (measure <> ''), value REAL NOT NULL, "
                     "u95 REAL CHECK (u95 >= 0), method TEXT NOT NULL, keeper TEXT NOT NULL, note TEXT NOT NULL, "
                     "row_version INTEGER NOT NULL DEFAULT 1)"),

    std::string_view("CREATE TABLE box_check (id INTEGER PRIMARY KEY, at TEXT NOT NULL, box_name TEXT NOT NULL, "
                     "keeper TEXT NOT NULL, kind TEXT NOT NULL CHECK (kind IN ('plate', 'rod')), verdict TEXT NOT "
                     "NULL CHECK (verdict IN ('holds', 'fails', 'cannot-tell')), sentences TEXT NOT NULL, "
                     "marker_rms_px REAL, tilt_degrees REAL, camera_to_window_mm REAL, rod_mm REAL, read_mm REAL, "
                     "read_u95_mm REAL, photo_name TEXT NOT NULL, photo_hash TEXT NOT NULL, "
                     "box_fingerprint TEXT NOT NULL, true_within REAL)"),

    std::string_view("CREATE TABLE measure_line (measure INTEGER PRIMARY KEY REFERENCES measure, "
                     "outline_px TEXT NOT NULL, spine_px TEXT NOT NULL)"),
    std::string_view("INSERT INTO measure_line SELECT id, outline_px, spine_px FROM measure"),
    std::string_view("ALTER TABLE measure DROP COLUMN outline_px"),
    std::string_view("ALTER TABLE measure DROP COLUMN spine_px"),
    std::string_view("ALTER TABLE measure ADD COLUMN brood INTEGER REFERENCES brood"),
    std::string_view("ALTER TABLE measure ADD COLUMN row_version INTEGER NOT NULL DEFAULT 1"),

    std::string_view("ALTER TABLE animal ADD COLUMN sex_told_by TEXT NOT NULL DEFAULT ''"),
    std::string_view("ALTER TABLE animal ADD COLUMN source TEXT NOT NULL DEFAULT ''"),
    std::string_view("ALTER TABLE animal ADD COLUMN mother INTEGER REFERENCES animal"),
    std::string_view("ALTER TABLE animal ADD COLUMN father INTEGER REFERENCES animal"),
    std::string_view("ALTER TABLE animal ADD COLUMN brood INTEGER REFERENCES brood"),
    std::string_view("ALTER TABLE animal ADD COLUMN gone_on TEXT"),
    std::string_view("ALTER TABLE animal ADD COLUMN gone_how TEXT NOT NULL DEFAULT '' "
                     "CHECK (gone_how IN ('', 'died', 'left'))"),
    std::string_view("ALTER TABLE animal ADD COLUMN row_version INTEGER NOT NULL DEFAULT 1"),
    std::string_view("ALTER TABLE diet ADD COLUMN enrichment TEXT NOT NULL DEFAULT ''"),
    std::string_view("ALTER TABLE photo ADD COLUMN fed_before INTEGER"),
    std::string_view("ALTER TABLE tank ADD COLUMN row_version INTEGER NOT NULL DEFAULT 1"),
    std::string_view("ALTER TABLE diet ADD COLUMN row_version INTEGER NOT NULL DEFAULT 1"),
    std::string_view("ALTER TABLE stay ADD COLUMN row_version INTEGER NOT NULL DEFAULT 1"),
    std::string_view("ALTER TABLE diet_spell ADD COLUMN row_version INTEGER NOT NULL DEFAULT 1"),
    std::string_view("ALTER TABLE state_spell ADD COLUMN row_version INTEGER NOT NULL DEFAULT 1"),
    std::string_view("ALTER TABLE note ADD COLUMN row_version INTEGER NOT NULL DEFAULT 1"),
    std::string_view("ALTER TABLE session ADD COLUMN row_version INTEGER NOT NULL DEFAULT 1"),
    std::string_view("ALTER TABLE photo ADD COLUMN row_version INTEGER NOT NULL DEFAULT 1"),

    // A changed row as JSON before and after, fields that differ only: what an undo puts back.
    std::string_view("ALTER TABLE change_log ADD COLUMN kind TEXT NOT NULL DEFAULT ''"),
    std::string_view("ALTER TABLE change_log ADD COLUMN row_id INTEGER"),
    std::string_view("ALTER TABLE change_log ADD COLUMN row_before TEXT"),
    std::string_view("ALTER TABLE change_log ADD COLUMN row_after TEXT"),
    std::string_view("ALTER TABLE change_log ADD COLUMN undoes INTEGER REFERENCES change_log"),

    std::string_view("CREATE INDEX stay_of_animal ON stay (animal)"),
    std::string_view("CREATE INDEX diet_spell_of_animal ON diet_spell (animal)"),
    std::string_view("CREATE INDEX state_spell_of_animal ON state_spell (animal)"),
    std::string_view("CREATE INDEX note_of_animal ON note (animal)"),
    std::string_view("CREATE INDEX session_on_day ON session (on_day)"),
    std::string_view("CREATE INDEX feeding_note_of_animal ON feeding_note (animal, on_day)"),
    std::string_view("CREATE INDEX feeding_note_of_tank ON feeding_note (tank, on_day)"),
    std::string_view("CREATE INDEX hand_measure_of_animal ON hand_measure (animal)"),
    std::string_view("CREATE INDEX change_of_row ON change_log (kind, row_id)"),
    std::string_view("CREATE INDEX box_check_of_box ON box_check (box_name, at)"),
};

}  // namespace

std::span<const std::string_view> schemaStep2() {
    return kVersion2;
}

}  // namespace ringrule
