// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "records/schema_steps.h"

namespace ringrule {
namespace {

// Version 3. A decision is on an animal or a whole tank, keeps the finding's words and day, and may say when to look
// again.
constexpr std::array kVersion3{
    std::string_view("CREATE TABLE finding_decision_3 (id INTEGER PRIMARY KEY, animal INTEGER REFERENCES animal, "
                     "tank INTEGER REFERENCES tank, on_day TEXT NOT NULL, finding TEXT NOT NULL CHECK (finding <> ''), "
                     "finding_on TEXT, finding_text TEXT NOT NULL, decision TEXT NOT NULL CHECK (decision IN "
                     "('change-diet', 'measure-again', 'watch-feeding', 'ask-veterinarian', "
                     "'acted', 'watch', 'dismissed')), follow_up_on TEXT, keeper TEXT NOT NULL, note TEXT NOT NULL, "
                     "row_version INTEGER NOT NULL DEFAULT 1, CHECK ((animal IS NULL) <> (tank IS NULL)), "
                     "CHECK (follow_up_on IS NULL OR follow_up_on >= on_day))"),
    std::string_view("INSERT INTO finding_decision_3 (id, animal, on_day, finding, finding_text, decision, keeper, "
                     "note, row_version) SELECT id, animal, on_day, finding, '', decision, keeper, note, row_version "
                     "FROM finding_decision"),
    std::string_view("DROP TABLE finding_decision"),
    std::string_view("ALTER TABLE finding_decision_3 RENAME TO finding_decision"),
    std::string_view("CREATE INDEX decision_of_animal ON finding_decision (animal)"),
    std::string_view("CREATE INDEX decision_of_tank ON finding_decision (tank)"),

    // The camera of a box check: another one later makes the check stale.
    std::string_view("ALTER TABLE box_check ADD COLUMN camera_make TEXT NOT NULL DEFAULT ''"),
    std::string_view("ALTER TABLE box_check ADD COLUMN camera_model TEXT NOT NULL DEFAULT ''"),
    std::string_view("ALTER TABLE box_check ADD COLUMN focal_length_mm REAL"),
};

}  // namespace

std::span<const std::string_view> schemaStep3() {
    return kVersion3;
}

}  // namespace ringrule
