// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "records/schema_steps.h"

namespace ringrule {
namespace {

// Version 1. Days are "YYYY-MM-DD"; a measure's value is NULL when it was not taken; polylines are JSON text.
constexpr std::array<std::string_view, 16> kVersion1{
    "CREATE TABLE meta (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID",

    "CREATE TABLE animal (id INTEGER PRIMARY KEY, code TEXT NOT NULL UNIQUE CHECK (code <> ''), name TEXT NOT NULL, "
    "species TEXT NOT NULL, shape TEXT NOT NULL CHECK (shape IN ('pipefish', 'seahorse', 'fish', 'unknown', '')), "
    "sex TEXT NOT NULL CHECK (sex IN ('unknown', 'female', 'male')), hatched_on TEXT, hatched_exactly INTEGER NOT "
    "NULL, "
    "hatched_sd_days REAL NOT NULL, arrived_on TEXT, card INTEGER UNIQUE)",

    "CREATE TABLE tank (id INTEGER PRIMARY KEY, code TEXT NOT NULL UNIQUE CHECK (code <> ''), name TEXT NOT NULL)",

    "CREATE TABLE diet (id INTEGER PRIMARY KEY, code TEXT NOT NULL UNIQUE CHECK (code <> ''), name TEXT NOT NULL, "
    "foods TEXT NOT NULL, feeds_per_day REAL NOT NULL)",

    "CREATE TABLE stay (id INTEGER PRIMARY KEY, animal INTEGER NOT NULL REFERENCES animal, "
    "tank INTEGER NOT NULL REFERENCES tank, from_day TEXT NOT NULL, to_day TEXT, "
    "CHECK (to_day IS NULL OR to_day >= from_day))",

    "CREATE TABLE diet_spell (id INTEGER PRIMARY KEY, animal INTEGER NOT NULL REFERENCES animal, "
    "diet INTEGER NOT NULL REFERENCES diet, from_day TEXT NOT NULL, to_day TEXT, "
    "CHECK (to_day IS NULL OR to_day >= from_day))",

    "CREATE TABLE state_spell (id INTEGER PRIMARY KEY, animal INTEGER NOT NULL REFERENCES animal, "
    "state TEXT NOT NULL CHECK (state <> ''), from_day TEXT NOT NULL, to_day TEXT, "
    "CHECK (to_day IS NULL OR to_day >= from_day))",

    "CREATE TABLE note (id INTEGER PRIMARY KEY, animal INTEGER NOT NULL REFERENCES animal, on_day TEXT NOT NULL, "
    "text TEXT NOT NULL)",

    "CREATE TABLE session (id INTEGER PRIMARY KEY, on_day TEXT NOT NULL, keeper TEXT NOT NULL, box_name TEXT NOT NULL, "
    "folder TEXT NOT NULL)",

    "CREATE TABLE photo (id INTEGER PRIMARY KEY, session INTEGER NOT NULL REFERENCES session, "
    "content_hash TEXT NOT NULL UNIQUE, stored_name TEXT NOT NULL, original_name TEXT NOT NULL, taken_at TEXT NOT "
    "NULL, "
    "width_px INTEGER NOT NULL, height_px INTEGER NOT NULL, "
    "view TEXT NOT NULL CHECK (view IN ('side', 'front', 'above', 'mirror')))",

    "CREATE TABLE measure (id INTEGER PRIMARY KEY, photo INTEGER NOT NULL REFERENCES photo, "
    "animal INTEGER REFERENCES animal, animal_index INTEGER NOT NULL, card INTEGER, box_name TEXT NOT NULL, "
    "software_version TEXT NOT NULL, keeper TEXT NOT NULL, replaces INTEGER UNIQUE REFERENCES measure, "
    "accepted INTEGER NOT NULL, shape TEXT NOT NULL, view TEXT NOT NULL, protocol TEXT NOT NULL, "
    "standard_length_mm REAL, standard_length_mm_sd_random REAL, standard_length_mm_sd_shared REAL, "
    "height_mm REAL, height_mm_sd_random REAL, height_mm_sd_shared REAL, "
    "trunk_width_mm REAL, trunk_width_mm_sd_random REAL, trunk_width_mm_sd_shared REAL, "
    "head_length_mm REAL, head_length_mm_sd_random REAL, head_length_mm_sd_shared REAL, "
    "trunk_length_mm REAL, trunk_length_mm_sd_random REAL, trunk_length_mm_sd_shared REAL, "
    "tail_length_mm REAL, tail_length_mm_sd_random REAL, tail_length_mm_sd_shared REAL, "
    "trunk_depth_mm REAL, trunk_depth_mm_sd_random REAL, trunk_depth_mm_sd_shared REAL, "
    "girth_mm REAL, girth_mm_sd_random REAL, girth_mm_sd_shared REAL, "
    "girth_ratio REAL, girth_ratio_sd_random REAL, girth_ratio_sd_shared REAL, "
    "depth_ratio REAL, depth_ratio_sd_random REAL, depth_ratio_sd_shared REAL, "
    "belly_hollow_percent REAL, belly_hollow_percent_sd_random REAL, belly_hollow_percent_sd_shared REAL, "
    "remarks TEXT NOT NULL, refusal_reason TEXT, refusal_sentence TEXT, ventral_on_left INTEGER NOT NULL, "
    "outline_px TEXT NOT NULL, spine_px TEXT NOT NULL)",

    "CREATE TABLE landmark (measure INTEGER NOT NULL REFERENCES measure, name TEXT NOT NULL CHECK (name IN "
    "('snout_tip', 'coronet', 'head_end', 'trunk_end', 'tail_end')), x_px REAL NOT NULL, y_px REAL NOT NULL, "
    "sd_along_px REAL NOT NULL, moved_by_hand INTEGER NOT NULL, PRIMARY KEY (measure, name)) WITHOUT ROWID",

    "CREATE TABLE change_log (id INTEGER PRIMARY KEY, at TEXT NOT NULL, who TEXT NOT NULL, what TEXT NOT NULL, "
    "subject TEXT NOT NULL, before TEXT NOT NULL, after TEXT NOT NULL)",

    "CREATE INDEX measure_of_photo ON measure (photo)",
    "CREATE INDEX measure_of_animal ON measure (animal)",
    "CREATE INDEX photo_of_session ON photo (session)",
};

}  // namespace

std::span<const std::string_view> schemaStep1() {
    return kVersion1;
}

}  // namespace ringrule
