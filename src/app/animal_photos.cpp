// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/animal_photos.h"

#include <map>

namespace ringrule {

std::optional<double> mmPerPxOf(const StoredMeasure& measure) {
    const Measurement& measured = measure.measurement;
    const Landmarks& marks = measure.landmarks;
    if (measured.headLengthMm.known() && marks.snoutTip && marks.headEnd) {
        const double headPx = distance(marks.snoutTip->atPx, marks.headEnd->atPx);
        if (headPx > 1.0) return measured.headLengthMm.value / headPx;
    }
    double alongPx = 0.0;
    for (std::size_t k = 1; k < measure.spinePx.size(); ++k)
        alongPx += distance(measure.spinePx[k - 1], measure.spinePx[k]);
    if (measured.standardLengthMm.known() && alongPx > 1.0) return measured.standardLengthMm.value / alongPx;
    return std::nullopt;
}

std::vector<AnimalPhoto> sidePhotosOf(const Store& store, AnimalId animal) {
    std::map<Date, AnimalPhoto> best;
    for (const StoredMeasure& measure : store.measuresOfAnimal(animal)) {
        const auto scale = mmPerPxOf(measure);
        if (!measure.accepted || measure.measurement.view != View::Side || measure.outlinePx.size() < 3 || !scale)
            continue;
        AnimalPhoto photo;
        photo.on = measure.sessionOn;
        photo.photo.id = measure.photo;
        photo.outlinePx = measure.outlinePx;
        photo.mmPerPx = *scale;
        photo.lengthMm = measure.measurement.standardLengthMm;
        const auto [place, first] = best.try_emplace(photo.on, photo);
        const Estimate& kept = place->second.lengthMm;
        const bool better = photo.lengthMm.known() && (!kept.known() || photo.lengthMm.u95() < kept.u95());
        if (!first && better) place->second = photo;
    }
    std::vector<AnimalPhoto> photos;
    for (auto& [on, photo] : best) {
        photo.original = store.originalOf(photo.photo);
        photos.push_back(std::move(photo));
    }
    return photos;
}

}  // namespace ringrule
