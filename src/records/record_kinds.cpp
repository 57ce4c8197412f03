// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/record_kind.h"

#include <algorithm>

#include "ringrule/error.h"
#include "ringrule/records/measure_columns.h"

namespace ringrule {
namespace {

using Type = FieldType;

std::vector<RecordField> spellFields(std::vector<RecordField> first) {
    first.push_back({"from_day", Type::Day, "First day", true, {}, {}, {}});
    first.push_back({"to_day", Type::Day, "Last day; empty while it goes on", false, {}, {}, {}});
    return first;
}

RecordField link(const std::string& kind, const std::string& title, bool required = true) {
    return {kind, Type::Link, title, required, kind, {}, {}};
}
RecordField text(const std::string& name, const std::string& title, bool required = false) {
    return {name, Type::Text, title, required, {}, {}, {}};
}
RecordField day(const std::string& name, const std::string& title, bool required = false) {
    return {name, Type::Day, title, required, {}, {}, {}};
}
RecordField number(const std::string& name, const std::string& title, const std::string& unit = {},
                   bool required = false) {
    return {name, Type::Number, title, required, {}, unit, {}};
}
RecordField whole(const std::string& name, const std::string& title, bool required = false) {
    return {name, Type::Whole, title, required, {}, {}, {}};
}
RecordField yesNo(const std::string& name, const std::string& title, bool required = false) {
    return {name, Type::YesNo, title, required, {}, {}, {}};
}
RecordField choice(const std::string& name, const std::string& words, const std::string& title, bool required = true) {
    return {name, Type::Choice, title, required, words, {}, {}};
}

std::vector<RecordField> animalFields() {
    return {
        text("code", "The keeper's own code", true),
        text("name", "Name"),
        text("species", "Scientific name"),
        choice("shape", "pipefish seahorse fish unknown ", "Body plan that measuring uses", false),
        {"sex", Type::Choice, "Sex", true, "unknown female male ", {}, "unknown"},
        text("sex_told_by", "How the sex was told"),
        day("hatched_on", "Day of hatching or birth"),
        {"hatched_exactly", Type::YesNo, "Whether that day is exact; else it is an estimate", true, {}, {}, "false"},
        {"hatched_sd_days", Type::Number, "Standard deviation of an estimated day", true, {}, "d", "0"},
        day("arrived_on", "Day of arrival"),
        text("source", "Where it comes from"),
        {"mother", Type::Link, "Mother", false, "animal", {}, {}},
        {"father", Type::Link, "Father", false, "animal", {}, {}},
        link("brood", "Brood it is of", false),
        whole("card", "Number on its animal card"),
        day("gone_on", "Day on which it died or left"),
        choice("gone_how", "died left ", "Whether it died or left", false)};
}

std::vector<RecordField> measureFields() {
    std::vector<RecordField> fields{
        link("photo", "Photo"),
        link("animal", "Animal; empty: not identified", false),
        link("brood", "Brood it is a sample of", false),
        whole("animal_index", "Place in the photo, from 0 at the left", true),
        whole("card", "Number of the animal card in the photo"),
        text("box_name", "Measuring box"),
        text("software_version", "Version of Ringrule"),
        text("keeper", "Keeper's initials"),
        {"replaces", Type::Link, "Measure that this one corrects", false, "measure", {}, {}},
        yesNo("accepted", "Whether it counts in the animal's history", true),
        text("shape", "Body plan"),
        text("view", "What the photo shows"),
        text("protocol", "Protocol of the measures"),
        {"remarks", Type::Words, "Ids of remarks, a JSON list of texts", false, {}, {}, "[]"},
        text("refusal_reason", "Id of the reason when it could not be measured"),
        text("refusal_sentence", "That reason in words"),
        yesNo("ventral_on_left", "Side of the belly along the midline", true)};
    for (const MeasureColumn& measure : kMeasureColumns) {
        const std::string name(measure.column);
        const std::string unit = name.ends_with("_mm") ? "mm" : name.ends_with("_percent") ? "%" : "1";
        fields.push_back(number(name, "Value", unit));
        fields.push_back(number(name + "_sd_random", "Standard deviation that repeats average out", unit));
        fields.push_back(number(name + "_sd_shared", "Standard deviation that a set-up shares", unit));
    }
    return fields;
}

std::string measureNames() {
    std::string names;
    for (const MeasureColumn& measure : kMeasureColumns) names.append(measure.column).append(" ");
    return names;
}

const RecordField kKeeper = text("keeper", "Keeper's initials");
const RecordField kNote = text("note", "Remark");

std::vector<RecordKind> keptKinds() {
    using Use = RecordUse;
    return {
        {"tank", "tank", "Tanks", Use::Kept, true, true, {text("code", "Code", true), text("name", "Name")}},
        {"diet",
         "diet",
         "Diets",
         Use::Kept,
         true,
         true,
         {text("code", "Code", true),
          text("name", "Name"),
          {"foods", Type::Words, "Foods, a JSON list of texts", false, {}, {}, "[]"},
          {"feeds_per_day", Type::Number, "Feeds a day", true, {}, "1/d", "0"},
          text("enrichment", "What the food is enriched with")}},
        {"brood",
         "brood",
         "Broods",
         Use::Kept,
         true,
         true,
         {text("code", "Code", true),
          text("species", "Scientific name"),
          {"mother", Type::Link, "Mother", false, "animal", {}, {}},
          {"father", Type::Link, "Father, who carried it", false, "animal", {}, {}},
          link("tank", "Tank", false),
          day("born_on", "Day of birth"),
          kNote}},
        {"animal", "animal", "Animals", Use::Kept, true, true, animalFields()},
        {"stay", "stay", "Who was in which tank", Use::Kept, true, true,
         spellFields({link("animal", "Animal"), link("tank", "Tank")})},
        {"diet-spell", "diet_spell", "Which animal had which diet", Use::Kept, true, true,
         spellFields({link("animal", "Animal"), link("diet", "Diet")})},
        {"tank-diet", "tank_diet_spell", "Which tank had which diet", Use::Kept, true, true,
         spellFields({link("tank", "Tank"), link("diet", "Diet")})},
        {"state", "state_spell", "States in which girth is not judged", Use::Kept, true, true,
         spellFields({link("animal", "Animal"), text("state", "State, e.g. brooding", true)})},
        {"note",
         "note",
         "Notes on an animal, a tank, a brood, a session or a photo",
         Use::Kept,
         true,
         true,
         {link("animal", "Animal; or say what else it is on", false), link("tank", "Tank", false),
          link("brood", "Brood", false), link("session", "Photo session", false), link("photo", "Photo", false),
          day("on_day", "Day", true), text("text", "Text", true), kKeeper}},
    };
}

std::vector<RecordKind> careKinds() {
    using Use = RecordUse;
    const RecordField animal = link("animal", "Animal; or say the tank", false);
    const RecordField tank = link("tank", "Tank; or say the animal", false);
    const RecordField on = day("on_day", "Day", true);
    return {
        {"brood-event",
         "brood_event",
         "What happened with a brood",
         Use::Kept,
         true,
         true,
         {link("brood", "Brood"), on, choice("event", "courting egg-transfer carrying birth count ", "Event"),
          whole("count", "How many young"), kNote}},
        {"feeding",
         "feeding_note",
         "Food offered, taken or refused",
         Use::Kept,
         true,
         true,
         {animal, tank, on, text("food", "Food", true),
          choice("outcome", "offered taken refused ", "What became of it"), kKeeper, kNote}},
        {"water",
         "water_reading",
         "Water readings",
         Use::Kept,
         true,
         true,
         {link("tank", "Tank"), on, number("temperature_c", "Temperature", "°C"),
          number("salinity_ppt", "Salinity", "g/kg"), kKeeper, kNote}},
        {"treatment", "treatment", "Treatments", Use::Kept, true, true,
         spellFields({animal, tank, text("what", "What was given or done", true), text("dose", "Dose"),
                      text("ordered_by", "Who ordered it"), kNote})},
        {"decision",
         "finding_decision",
         "What keepers decided on findings",
         Use::Kept,
         true,
         true,
         {animal, tank, on, text("finding", "Id of the finding, e.g. thin", true),
          day("finding_on", "Day it was raised"), text("finding_text", "The finding as it read"),
          choice("decision", "change-diet measure-again watch-feeding ask-veterinarian acted watch dismissed ",
                 "Decision"),
          day("follow_up_on", "Day to look again"), kKeeper, kNote}},
        {"hand-measure",
         "hand_measure",
         "Measures taken by hand",
         Use::Kept,
         true,
         true,
         {link("animal", "Animal"), on, choice("measure", measureNames(), "Which measure"),
          number("value", "Value, in the unit that the measure's name ends with", {}, true),
          number("u95", "Half-width of its 95 % interval, when it is known"), text("method", "How it was taken"),
          kKeeper, kNote}},
    };
}

std::vector<RecordKind> measuredKinds() {
    using Use = RecordUse;
    return {
        {"session",
         "session",
         "Photo sessions",
         Use::Changed,
         true,
         true,
         {day("on_day", "Day", true), kKeeper, text("box_name", "Measuring box"),
          text("folder", "Where its photos came from")}},
        {"photo",
         "photo",
         "Photos",
         Use::Changed,
         true,
         true,
         {link("session", "Session"),
          text("content_hash", "SHA-256 of the file", true),
          text("stored_name", "File in photos/", true),
          text("original_name", "Name it came with"),
          {"taken_at", Type::Moment, "When it was taken", false, {}, {}, {}},
          whole("width_px", "Width", true),
          whole("height_px", "Height", true),
          choice("view", "side front above mirror ", "What it shows"),
          yesNo("fed_before", "Whether the animal was fed before; empty: not told")}},
        {"measure", "measure", "Measures of animals in photos", Use::Changed, true, true, measureFields()},
        {"measure-line",
         "measure_line",
         "Outlines and midlines, pixels of the upright photo",
         Use::Written,
         false,
         false,
         {link("measure", "Measure"), text("outline_px", "Outline as JSON"), text("spine_px", "Midline as JSON")}},
        {"landmark",
         "landmark",
         "Landmarks, pixels of the upright photo",
         Use::Written,
         false,
         false,
         {link("measure", "Measure"), choice("name", "snout_tip coronet head_end trunk_end tail_end ", "Landmark"),
          number("x_px", "Across", "px", true), number("y_px", "Down", "px", true),
          number("sd_along_px", "Standard deviation along the midline", "px", true),
          yesNo("moved_by_hand", "Whether a person placed it", true)}},
        {"box-check",
         "box_check",
         "Checks of measuring boxes",
         Use::Written,
         true,
         false,
         {{"at", Type::Moment, "When the photo was taken, or else when it was checked", true, {}, {}, {}},
          text("box_name", "Measuring box", true),
          kKeeper,
          choice("kind", "plate rod ", "What was photographed"),
          choice("verdict", "holds fails cannot-tell ", "Verdict"),
          text("sentences", "What was found"),
          number("marker_rms_px", "Scatter of the markers' corners", "px"),
          number("tilt_degrees", "Camera off square", "degree"),
          number("camera_to_window_mm", "Camera before the window, as seen", "mm"),
          number("rod_mm", "Stated length of the rod", "mm"),
          number("read_mm", "Length as read", "mm"),
          number("read_u95_mm", "Half-width of its 95 % interval", "mm"),
          text("photo_name", "Photo"),
          text("photo_hash", "SHA-256 of the photo"),
          text("box_fingerprint", "Which box file it was"),
          number("true_within", "Relative error and what one reading leaves open"),
          text("camera_make", "Make of the camera"),
          text("camera_model", "Model of the camera"),
          number("focal_length_mm", "Focal length of the photo", "mm")}},
        {"change",
         "change_log",
         "Changes",
         Use::Written,
         true,
         false,
         {{"at", Type::Moment, "When, UTC", true, {}, {}, {}},
          text("who", "Keeper's initials"),
          text("what", "What"),
          text("subject", "Of what"),
          text("before", "Before, in words"),
          text("after", "After, in words"),
          text("kind", "Kind of record"),
          whole("row_id", "Number of the record"),
          text("row_before", "Changed fields before, as JSON"),
          text("row_after", "Changed fields after, as JSON"),
          {"undoes", Type::Link, "Change that this one takes back", false, "change", {}, {}}}},
    };
}

std::vector<RecordKind> allKinds() {
    std::vector<RecordKind> all = keptKinds();
    for (auto part : {careKinds(), measuredKinds()}) all.insert(all.end(), part.begin(), part.end());
    return all;
}

}  // namespace

std::string Record::text(const std::string& field) const {
    const auto found = values.find(field);
    return found == values.end() ? std::string() : found->second;
}

const RecordField* RecordKind::field(std::string_view wanted) const {
    const auto found = std::find_if(fields.begin(), fields.end(), [&](const auto& one) { return one.name == wanted; });
    return found == fields.end() ? nullptr : &*found;
}

const std::vector<RecordKind>& recordKinds() {
    static const std::vector<RecordKind> kinds = allKinds();
    return kinds;
}

const RecordKind& recordKind(std::string_view name) {
    std::string names;
    for (const RecordKind& kind : recordKinds()) {
        if (kind.name == name) return kind;
        names += (names.empty() ? "" : ", ") + kind.name;
    }
    throw Error(ErrorKind::BadUse, "there is no kind of record \"" + std::string(name) + "\"; there are " + names);
}

}  // namespace ringrule
