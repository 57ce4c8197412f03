// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/measure_photo.h"

#include <algorithm>
#include <cassert>

#include "ringrule/imaging/photo.h"
#include "ringrule/midline/midline.h"
#include "ringrule/optics/plate.h"
#include "ringrule/outline/find_outline.h"
#include "ringrule/sheets/landmark_mark.h"
#include "workflow/mirror_view.h"

namespace ringrule {
namespace {

void addRemarks(std::vector<Remark>& to, const std::vector<Remark>& remarks) {
    for (const Remark remark : remarks) {
        if (std::find(to.begin(), to.end(), remark) == to.end()) to.push_back(remark);
    }
}

/// What cards leave open about who is who.
void eraseCardRemarks(std::vector<Remark>& remarks) {
    std::erase_if(remarks, [](Remark remark) {
        return remark == Remark::SeveralAnimals || remark == Remark::NoCard || remark == Remark::SeveralCards;
    });
}

/// The card of the photo's one animal; absent when cards cannot tell, which a remark then says.
std::optional<int> cardOf(const std::vector<int>& cards, std::size_t animals, std::vector<Remark>& remarks) {
    if (animals > 1) {
        addRemarks(remarks, {Remark::SeveralAnimals});
    } else if (cards.empty()) {
        addRemarks(remarks, {Remark::NoCard});
    } else if (cards.size() > 1) {
        addRemarks(remarks, {Remark::SeveralCards});
    } else {
        return cards.front();
    }
    return std::nullopt;
}

Shape shapeFor(const PhotoOptions& options, std::optional<int> card) {
    if (options.shape != Shape::Unknown || !card) return options.shape;
    const auto known = options.shapeByCard.find(*card);
    return known == options.shapeByCard.end() ? Shape::Unknown : known->second;
}

Measurement refused(const Refusal& refusal, Shape shape, View view) {
    Measurement measurement;
    measurement.shape = shape;
    measurement.view = view;
    measurement.refusal = refusal;
    return measurement;
}

AnimalReading readAnimal(const Photo& photo, const Outline& outline, const PhotoReading& reading, Shape shape) {
    AnimalReading animal;
    animal.outline = outline;
    const auto midline = findMidline(photo, outline);
    if (!midline) {
        animal.measurement = refused(midline.refusal(), shape, reading.view);
        addRemarks(animal.measurement.remarks, outline.remarks);
        return animal;
    }
    animal.anatomy.midline = midline.value();
    // Beside its mirror the animal itself is seen from the side.
    const View seen = reading.view == View::Mirror ? View::Side : reading.view;
    const auto anatomy = findLandmarks(photo, outline, midline.value(), {shape, seen});
    if (!anatomy) {
        animal.measurement = refused(anatomy.refusal(), shape, reading.view);
        addRemarks(animal.measurement.remarks, outline.remarks);
        addRemarks(animal.measurement.remarks, midline.value().remarks);
        return animal;
    }
    animal.anatomy = anatomy.value();
    animal.measurement = measureAnimal(outline, animal.anatomy, *reading.scale, {reading.view, reading.distanceFromPlateMm});
    return animal;
}

PhotoReading describe(const Photo& photo, const Box& box, View view) {
    PhotoReading reading;
    reading.path = photo.path;
    reading.contentHash = photo.contentHash;
    reading.takenAt = photo.takenAt;
    reading.widthPx = photo.grey.cols;
    reading.heightPx = photo.grey.rows;
    reading.boxName = box.name;
    reading.view = view;
    reading.distanceFromPlateMm = box.animalPlane.distanceFromPlateMm;
    if (!reading.takenAt) reading.remarks.push_back(Remark::NoTimeInPhoto);
    return reading;
}

void readAnimals(const Photo& photo, const std::vector<Outline>& outlines, const PhotoOptions& options,
                 PhotoReading& reading) {
    const std::optional<int> card = cardOf(reading.cards, outlines.size(), reading.remarks);
    for (const Outline& outline : outlines) {
        AnimalReading animal = readAnimal(photo, outline, reading, shapeFor(options, card));
        animal.index = static_cast<int>(reading.animals.size());
        animal.card = card;
        addRemarks(animal.measurement.remarks, reading.remarks);
        reading.animals.push_back(std::move(animal));
    }
}

Refusal noAnimalBesideMirror() {
    return {"no-animal", "No animal was found beside the mirror. Check that the box file says where the mirror stands."};
}

double leftmost(const Outline& outline) {
    double left = 1e300;
    for (const PixelPoint at : outline.boundaryPx) left = std::min(left, at.x);
    return left;
}

Outcome<std::vector<Outline>> outlinesOf(const Photo& photo, const Box& box, const FoundPlate& plate,
                                         const Scale& scale, const PhotoOptions& options) {
    if (!options.emptyBox) return findOutlines(photo, box, plate, scale);
    const ClearedPhoto cleared = options.emptyBox->takenOutOf(photo, box, plate, scale);
    auto found = findOutlines(cleared.photo(), box, plate, scale);
    if (!found) return found;
    std::vector<Outline> outlines = std::move(found).value();
    for (Outline& outline : outlines) outline = cleared.settled(std::move(outline));
    return outlines;
}

}  // namespace

PhotoReading measurePhoto(const std::filesystem::path& path, const Box& box, const PhotoOptions& options) {
    const Photo photo = loadPhoto(path);
    PhotoReading reading = describe(photo, box, options.view);
    const auto plate = findPlate(photo, box);
    if (!plate) {
        reading.refusal = plate.refusal();
        return reading;
    }
    if (static_cast<int>(plate.value().markers.size()) < plate.value().expectedMarkers) {
        reading.remarks.push_back(Remark::MarkersMissing);
    }
    for (const FoundMarker& card : plate.value().cards) reading.cards.push_back(card.id);
    const auto scale = Scale::fromPlate(box, plate.value(), reading.widthPx, reading.heightPx);
    if (!scale) {
        reading.refusal = scale.refusal();
        return reading;
    }
    reading.scale = scale.value();
    addRemarks(reading.remarks, scale.value().remarks());
    const auto outlines = outlinesOf(photo, box, plate.value(), scale.value(), options);
    if (!outlines) {
        reading.refusal = outlines.refusal();
        return reading;
    }
    if (box.mirror && options.view == View::Mirror) {
        const MirroredOutlines parted = partedByMirror(outlines.value(), box, *reading.scale);
        readAnimals(photo, parted.direct, options, reading);
        for (AnimalReading& animal : reading.animals)
            animal = withMirroredWidth(photo, box, plate.value(), reading, std::move(animal), parted.mirrored);
        if (parted.direct.empty()) reading.refusal = noAnimalBesideMirror();
        return reading;
    }
    readAnimals(photo, outlines.value(), options, reading);
    return reading;
}

AnimalReading withLandmarkMoved(const PhotoReading& reading, const AnimalReading& animal, LandmarkName name,
                                PixelPoint atPx) {
    assert(reading.scale.has_value());
    AnimalReading moved = animal;
    moved.anatomy = withLandmark(animal.anatomy, name, atPx);
    moved.measurement =
        measureAnimal(animal.outline, moved.anatomy, *reading.scale, {reading.view, reading.distanceFromPlateMm});
    // What the mirror showed of the width does not hang on landmarks of the side.
    if (reading.view == View::Mirror)
        moved.measurement = withSecondView(moved.measurement, animal.measurement.trunkWidthMm, *reading.scale);
    addRemarks(moved.measurement.remarks, reading.remarks);
    addRemarks(moved.measurement.remarks, {Remark::MovedByHand});
    return moved;
}

AnimalReading withOutline(const Photo& photo, const PhotoReading& reading, const AnimalReading& animal,
                          const Outline& outline, const PhotoOptions& options) {
    assert(reading.scale.has_value());
    AnimalReading anew = readAnimal(photo, outline, reading, shapeFor(options, animal.card));
    anew.index = animal.index;
    anew.card = animal.card;
    addRemarks(anew.measurement.remarks, reading.remarks);
    if (anew.anatomy.midline.spinePx.empty()) return anew;
    for (const LandmarkName name : {LandmarkName::SnoutTip, LandmarkName::Coronet, LandmarkName::HeadEnd,
                                    LandmarkName::TrunkEnd, LandmarkName::TailEnd}) {
        const std::optional<Landmark>& before = landmarkOf(animal.anatomy.landmarks, name);
        if (before && before->movedByHand) anew = withLandmarkMoved(reading, anew, name, before->atPx);
    }
    return anew;
}

PhotoReading withOutlines(const Photo& photo, const PhotoReading& reading, const std::vector<std::size_t>& replaced,
                          const std::vector<Outline>& outlines, const PhotoOptions& options) {
    assert(reading.scale.has_value());
    PhotoReading anew = reading;
    anew.refusal.reset();
    anew.animals.clear();
    eraseCardRemarks(anew.remarks);
    const std::size_t count = reading.animals.size() - replaced.size() + outlines.size();
    const std::optional<int> card = cardOf(reading.cards, count, anew.remarks);
    for (std::size_t i = 0; i < reading.animals.size(); ++i) {
        if (std::find(replaced.begin(), replaced.end(), i) != replaced.end()) continue;
        anew.animals.push_back(reading.animals[i]);
    }
    for (const Outline& outline : outlines) {
        anew.animals.push_back(readAnimal(photo, outline, anew, shapeFor(options, card)));
    }
    std::stable_sort(anew.animals.begin(), anew.animals.end(), [](const AnimalReading& one, const AnimalReading& other) {
        return leftmost(one.outline) < leftmost(other.outline);
    });
    for (std::size_t i = 0; i < anew.animals.size(); ++i) {
        AnimalReading& animal = anew.animals[i];
        animal.index = static_cast<int>(i);
        animal.card = card;
        eraseCardRemarks(animal.measurement.remarks);
        addRemarks(animal.measurement.remarks, anew.remarks);
    }
    return anew;
}

}  // namespace ringrule
