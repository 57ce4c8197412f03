// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "records/schema_steps.h"

namespace ringrule {
namespace {

// Version 4. A note is on an animal, a tank, a brood, a session or a photo, and says who wrote it.
constexpr std::array kVersion4{
    std::string_view(
        "CREATE TABLE note_4 (id INTEGER PRIMARY KEY, animal INTEGER REFERENCES animal, tank INTEGER REFERENCES tank, "
        "brood INTEGER REFERENCES brood, session INTEGER REFERENCES session, photo INTEGER REFERENCES photo, "
        "on_day TEXT NOT NULL, text TEXT NOT NULL, keeper TEXT NOT NULL, row_version INTEGER NOT NULL DEFAULT 1, "
        "CHECK (CASE WHEN animal IS NULL THEN 0 ELSE 1 END + CASE WHEN tank IS NULL THEN 0 ELSE 1 END + "
        "CASE WHEN brood IS NULL THEN 0 ELSE 1 END + CASE WHEN session IS NULL THEN 0 ELSE 1 END + "
        "CASE WHEN photo IS NULL THEN 0 ELSE 1 END = 1))"),
    std::string_view("INSERT INTO note_4 (id, animal, on_day, text, keeper, row_version) SELECT id, animal, on_day, "
                     "text, '', row_version FROM note"),
    std::string_view("DROP TABLE note"),
    std::string_view("ALTER TABLE note_4 RENAME TO note"),
    std::string_view("CREATE INDEX note_of_animal ON note (animal)"),
    std::string_view("CREATE INDEX note_of_tank ON note (tank)"),
    std::string_view("CREATE INDEX note_of_brood ON note (brood)"),
    std::string_view("CREATE INDEX note_of_session ON note (session)"),
    std::string_view("CREATE INDEX note_of_photo ON note (photo)"),
};

}  // namespace

std::span<const std::string_view> schemaStep4() {
    return kVersion4;
}

}  // namespace ringrule
