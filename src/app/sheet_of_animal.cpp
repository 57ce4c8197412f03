// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet_of_animal.h"

#include <algorithm>

#include "app/growth_lines.h"

namespace ringrule {
namespace {

/// The spell that holds on a day, or nothing.
template <class Spell>
const Spell* on(const std::vector<Spell>& spells, Date day) {
    const auto held = std::find_if(spells.begin(), spells.end(),
                                   [&](const Spell& s) { return s.from <= day && (!s.to || day < *s.to); });
    return held == spells.end() ? nullptr : &*held;
}

void addNewestPhoto(AnimalSheet& sheet, const Collection& collection) {
    const std::vector<StoredMeasure> measures = collection.store().measuresOfAnimal(sheet.history.animal.id);
    for (const Session& session : collection.sessions()) {
        if (session.on > sheet.asOf) continue;
        for (const StoredPhoto& photo : collection.store().photos(session.id))
            for (const StoredMeasure& measure : measures) {
                if (measure.photo != photo.id || photo.view != View::Side || !measure.accepted) continue;
                OverlayAnimal drawn;
                drawn.outline.boundaryPx = measure.outlinePx;
                drawn.anatomy.shape = measure.measurement.shape;
                drawn.anatomy.midline.spinePx = measure.spinePx;
                drawn.anatomy.landmarks = measure.landmarks;
                drawn.measurement = measure.measurement;
                sheet.drawn = drawn;
                sheet.photo = collection.store().originalOf(photo);
                return;
            }
    }
}

}  // namespace

AnimalSheet sheetOfAnimal(const Collection& collection, AnimalId animal) {
    const Review& review = collection.review();
    Q_ASSERT(review.asOf);
    AnimalSheet sheet;
    sheet.asOf = *review.asOf;
    for (const AnimalHistory& history : review.histories)
        if (history.animal.id == animal) sheet.history = history;
    if (const Stay* stay = on(sheet.history.stays, sheet.asOf))
        if (const Tank* tank = collection.tank(stay->tank)) sheet.tank = tank->name.empty() ? tank->code : tank->name;
    if (const DietSpell* spell = on(sheet.history.dietSpells, sheet.asOf))
        for (const Diet& diet : collection.store().diets())
            if (diet.id == spell->diet) sheet.diet = diet.name;
    sheet.lines = growthLines(review.histories, sharedTank(review.histories, animal, sheet.asOf), {animal});
    for (const Finding& finding : review.findings)
        if (finding.animal == animal) sheet.findings.push_back(finding);
    addNewestPhoto(sheet, collection);
    return sheet;
}

}  // namespace ringrule
