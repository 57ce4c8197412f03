// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <concepts>
#include <string>
#include <type_traits>
#include <vector>

#include "ringrule/husbandry/brood.h"
#include "ringrule/husbandry/care.h"
#include "ringrule/husbandry/records.h"
#include "ringrule/records/box_check_record.h"
#include "ringrule/records/record_kind.h"

namespace ringrule {

/// Writes a struct's members into a record's fields, links as numbers.
class FieldWriter {
public:
    explicit FieldWriter(Record& record) : record_(record) {}

    void operator()(const char* name, const std::string& value);
    void operator()(const char* name, double value);
    void operator()(const char* name, bool value);
    void operator()(const char* name, int value);
    void operator()(const char* name, Date value);
    void operator()(const char* name, Sex value);
    void operator()(const char* name, BoxVerdict value);
    void operator()(const char* name, const std::vector<std::string>& value);
    template <class Tag>
    void operator()(const char* name, Id<Tag> value) {
        (*this)(name, std::to_string(value.value));
    }
    template <class T>
    void operator()(const char* name, const std::optional<T>& value) {
        if (value) (*this)(name, *value);
    }

private:
    Record& record_;
};

/// Reads a record's fields into a struct's members; what is empty leaves the member as it is.
class FieldReader {
public:
    explicit FieldReader(const Record& record) : record_(record) {}

    void operator()(const char* name, std::string& value) const;
    void operator()(const char* name, double& value) const;
    void operator()(const char* name, bool& value) const;
    void operator()(const char* name, int& value) const;
    void operator()(const char* name, Date& value) const;
    void operator()(const char* name, Sex& value) const;
    void operator()(const char* name, BoxVerdict& value) const;
    void operator()(const char* name, std::vector<std::string>& value) const;
    template <class Tag>
    void operator()(const char* name, Id<Tag>& value) const {
        std::string text;
        (*this)(name, text);
        if (!text.empty()) value.value = std::stoll(text);
    }
    template <class T>
    void operator()(const char* name, std::optional<T>& value) const {
        if (record_.text(name).empty()) return;
        value.emplace();
        (*this)(name, *value);
    }

private:
    const Record& record_;
};

template <class T, class Of>
concept Either = std::same_as<std::remove_const_t<T>, Of>;

// Which member is which field, once for both directions.
template <class V, Either<Animal> T>
void visitFields(V&& visit, T& animal) {
    visit("code", animal.code);
    visit("name", animal.name);
    visit("species", animal.species);
    visit("shape", animal.shape);
    visit("sex", animal.sex);
    visit("sex_told_by", animal.sexToldBy);
    visit("hatched_on", animal.hatchedOn);
    visit("hatched_exactly", animal.hatchedExactly);
    visit("hatched_sd_days", animal.hatchedSdDays);
    visit("arrived_on", animal.arrivedOn);
    visit("source", animal.source);
    visit("mother", animal.mother);
    visit("father", animal.father);
    visit("brood", animal.brood);
    visit("card", animal.card);
    visit("gone_on", animal.goneOn);
    visit("gone_how", animal.goneHow);
}
template <class V, Either<Tank> T>
void visitFields(V&& visit, T& tank) {
    visit("code", tank.code);
    visit("name", tank.name);
}
template <class V, Either<Diet> T>
void visitFields(V&& visit, T& diet) {
    visit("code", diet.code);
    visit("name", diet.name);
    visit("foods", diet.foods);
    visit("feeds_per_day", diet.feedsPerDay);
    visit("enrichment", diet.enrichment);
}
template <class V, Either<Stay> T>
void visitFields(V&& visit, T& stay) {
    visit("animal", stay.animal);
    visit("tank", stay.tank);
    visit("from_day", stay.from);
    visit("to_day", stay.to);
}
template <class V, Either<DietSpell> T>
void visitFields(V&& visit, T& spell) {
    visit("animal", spell.animal);
    visit("diet", spell.diet);
    visit("from_day", spell.from);
    visit("to_day", spell.to);
}
template <class V, Either<TankDietSpell> T>
void visitFields(V&& visit, T& spell) {
    visit("tank", spell.tank);
    visit("diet", spell.diet);
    visit("from_day", spell.from);
    visit("to_day", spell.to);
}
template <class V, Either<StateSpell> T>
void visitFields(V&& visit, T& spell) {
    visit("animal", spell.animal);
    visit("state", spell.state);
    visit("from_day", spell.from);
    visit("to_day", spell.to);
}
template <class V, Either<Note> T>
void visitFields(V&& visit, T& note) {
    visit("animal", note.animal);
    visit("on_day", note.on);
    visit("text", note.text);
}
template <class V, Either<Session> T>
void visitFields(V&& visit, T& session) {
    visit("on_day", session.on);
    visit("keeper", session.keeper);
    visit("box_name", session.boxName);
    visit("folder", session.folder);
}
template <class V, Either<FeedingNote> T>
void visitFields(V&& visit, T& note) {
    visit("animal", note.animal);
    visit("tank", note.tank);
    visit("on_day", note.on);
    visit("food", note.food);
    visit("outcome", note.outcome);
    visit("keeper", note.keeper);
    visit("note", note.note);
}
template <class V, Either<WaterReading> T>
void visitFields(V&& visit, T& reading) {
    visit("tank", reading.tank);
    visit("on_day", reading.on);
    visit("temperature_c", reading.temperatureC);
    visit("salinity_ppt", reading.salinityPpt);
    visit("keeper", reading.keeper);
    visit("note", reading.note);
}
template <class V, Either<Treatment> T>
void visitFields(V&& visit, T& treatment) {
    visit("animal", treatment.animal);
    visit("tank", treatment.tank);
    visit("from_day", treatment.from);
    visit("to_day", treatment.to);
    visit("what", treatment.what);
    visit("dose", treatment.dose);
    visit("ordered_by", treatment.orderedBy);
    visit("note", treatment.note);
}
template <class V, Either<Decision> T>
void visitFields(V&& visit, T& decision) {
    visit("animal", decision.animal);
    visit("tank", decision.tank);
    visit("on_day", decision.on);
    visit("finding", decision.finding);
    visit("finding_on", decision.findingOn);
    visit("finding_text", decision.findingText);
    visit("decision", decision.decision);
    visit("follow_up_on", decision.followUpOn);
    visit("keeper", decision.keeper);
    visit("note", decision.note);
}
template <class V, Either<HandMeasure> T>
void visitFields(V&& visit, T& measure) {
    visit("animal", measure.animal);
    visit("on_day", measure.on);
    visit("measure", measure.measure);
    visit("value", measure.value);
    visit("u95", measure.u95);
    visit("method", measure.method);
    visit("keeper", measure.keeper);
    visit("note", measure.note);
}
template <class V, Either<Brood> T>
void visitFields(V&& visit, T& brood) {
    visit("code", brood.code);
    visit("species", brood.species);
    visit("mother", brood.mother);
    visit("father", brood.father);
    visit("tank", brood.tank);
    visit("born_on", brood.bornOn);
    visit("note", brood.note);
}
template <class V, Either<BroodEvent> T>
void visitFields(V&& visit, T& event) {
    visit("brood", event.brood);
    visit("on_day", event.on);
    visit("event", event.event);
    visit("count", event.count);
    visit("note", event.note);
}
template <class V, Either<BoxCheckRecord> T>
void visitFields(V&& visit, T& check) {
    visit("at", check.at);
    visit("box_name", check.boxName);
    visit("keeper", check.keeper);
    visit("verdict", check.verdict);
    visit("sentences", check.sentences);
    visit("marker_rms_px", check.markerRmsPx);
    visit("tilt_degrees", check.tiltDegrees);
    visit("camera_to_window_mm", check.cameraToWindowMm);
    visit("rod_mm", check.rodMm);
    visit("read_mm", check.readMm);
    visit("read_u95_mm", check.readU95Mm);
    visit("photo_name", check.photoName);
    visit("photo_hash", check.photoHash);
    visit("box_fingerprint", check.boxFingerprint);
    visit("true_within", check.trueWithin);
    visit("camera_make", check.cameraMake);
    visit("camera_model", check.cameraModel);
    visit("focal_length_mm", check.focalLengthMm);
}

/// The record that a struct says; links as numbers.
template <class T>
[[nodiscard]] Record recordOf(const T& value) {
    Record record;
    visitFields(FieldWriter(record), value);
    return record;
}

/// The struct that a record says.
template <class T>
[[nodiscard]] T structOf(const Record& record) {
    T value{};
    visitFields(FieldReader(record), value);
    return value;
}

}  // namespace ringrule
