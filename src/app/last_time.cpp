// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/last_time.h"

namespace ringrule {

std::optional<StoredMeasure> lastTime(const Store& store, AnimalId animal, View view, Date before) {
    std::optional<StoredMeasure> last;
    const auto mainMeasure = [view](const StoredMeasure& measure) {
        return view == View::Side ? measure.measurement.standardLengthMm : measure.measurement.trunkWidthMm;
    };
    for (const StoredMeasure& measure : store.measuresOfAnimal(animal)) {
        if (!measure.accepted || measure.sessionOn >= before || measure.measurement.view != view) continue;
        if (!mainMeasure(measure).known()) continue;
        const bool later = !last || measure.sessionOn > last->sessionOn;
        const bool better =
            last && measure.sessionOn == last->sessionOn && mainMeasure(measure).u95() < mainMeasure(*last).u95();
        if (later || better) last = measure;
    }
    return last;
}

}  // namespace ringrule
