// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <cstdio>

#include "records/measure_rows.h"
#include "records/record_rows.h"
#include "records/row_history.h"
#include "records/statement.h"
#include "records/store_state.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

std::string subjectOf(MeasureId id) {
    return "measure " + std::to_string(id.value);
}

struct Before {
    bool accepted = false;
    std::string animalCode;
    std::string keeper;
    double standardLengthMm = 0.0;
};

const RecordKind& measures() {
    return recordKind("measure");
}

/// A second correction of one measure would leave two current ones.
void mustNotBeCorrected(const Database& database, MeasureId id) {
    Statement later(database, "SELECT id, keeper FROM measure WHERE replaces = ?");
    if (!later.bind(id).run().next()) return;
    const std::string number = std::to_string(later.number());
    const std::string who = later.text();
    throw ChangedMeanwhile(ErrorKind::BadStore, subjectOf(id) + " was corrected by " +
                                                    (who.empty() ? "somebody" : who) + " (measure " + number +
                                                    ") after it was read here; nothing was overwritten: read it "
                                                    "again, then correct it");
}

Before lookUp(const Database& database, MeasureId id) {
    Statement row(database,
                  "SELECT m.accepted, coalesce(a.code, ''), m.keeper, m.standard_length_mm FROM measure m "
                  "LEFT JOIN animal a ON a.id = m.animal WHERE m.id = ?");
    if (!row.bind(id).run().next()) {
        throw Error(ErrorKind::BadData, "there is no " + subjectOf(id) + " in this collection");
    }
    return {row.yes(), row.text(), row.text(), row.real()};
}

std::string lengthText(double lengthMm) {
    if (!(lengthMm > 0.0)) return "no standard length";
    std::array<char, 48> text{};
    std::snprintf(text.data(), text.size(), "standard length %.2f mm", lengthMm);
    return text.data();
}

}  // namespace

MeasureId Store::addMeasure(const StoredMeasure& measure) {
    return addMeasures({measure}).front();
}

std::vector<MeasureId> Store::addMeasures(const std::vector<StoredMeasure>& measures) {
    std::vector<MeasureId> ids;
    together([&] {
        MeasureWriter writer(state_->database);
        for (const StoredMeasure& measure : measures) {
            std::optional<Before> before;
            if (measure.replaces) {
                before = lookUp(state_->database, *measure.replaces);
                mustNotBeCorrected(state_->database, *measure.replaces);
            }
            ids.push_back(writer.add(measure));
            if (!before) continue;
            RowHistory(state_->database, state_->keeper)
                .corrected({{},
                            measure.keeper.empty() ? state_->keeper : measure.keeper,
                            "corrected",
                            subjectOf(*measure.replaces),
                            lengthText(before->standardLengthMm),
                            subjectOf(ids.back()) + ", " + lengthText(measure.measurement.standardLengthMm.value)},
                           ids.back().value);
        }
    });
    return ids;
}

void Store::setAccepted(MeasureId measure, bool accepted) {
    together([&] {
        const Before before = lookUp(state_->database, measure);
        if (before.accepted == accepted) return;
        changeRow(measures(), *findRecord(state_->database, measures(), measure.value, Links::AsNumbers),
                  {{"accepted", accepted ? "true" : "false"}},
                  {{},
                   state_->keeper.empty() ? before.keeper : state_->keeper,
                   "accepted",
                   subjectOf(measure),
                   before.accepted ? "yes" : "no",
                   accepted ? "yes" : "no"});
    });
}

void Store::assignAnimal(MeasureId measure, std::optional<AnimalId> animal) {
    together([&] {
        const Before before = lookUp(state_->database, measure);
        std::string code;
        if (animal) {
            const auto found = findRecord(state_->database, recordKind("animal"), animal->value, Links::AsNumbers);
            if (!found) throw Error(ErrorKind::BadData, "there is no such animal in this collection");
            code = found->text("code");
        }
        if (code == before.animalCode) return;
        changeRow(measures(), *findRecord(state_->database, measures(), measure.value, Links::AsNumbers),
                  {{"animal", animal ? std::to_string(animal->value) : std::string()}},
                  {{},
                   state_->keeper.empty() ? before.keeper : state_->keeper,
                   "assigned",
                   subjectOf(measure),
                   before.animalCode,
                   code});
    });
}

std::vector<StoredMeasure> Store::measuresOfPhoto(PhotoId photo) const {
    return readMeasures(state_->database, "m.photo = ?", photo.value);
}

std::vector<StoredMeasure> Store::measuresOfSession(SessionId session) const {
    return readMeasures(state_->database, "m.photo IN (SELECT id FROM photo WHERE session = ?)", session.value);
}

std::vector<StoredMeasure> Store::measuresOfAnimal(AnimalId animal) const {
    return readMeasures(state_->database, "m.animal = ?", animal.value);
}

}  // namespace ringrule
