// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/measure_photo.h"

#include <algorithm>
#include <cassert>

#include "ringrule/imaging/photo.h"
#include "ringrule/midline/midline.h"
#include "ringrule/optics/plate.h"
#include "ringrule/outline/find_outline.h"

namespace ringrule {
namespace {

void addRemarks(std::vector<Remark>& to, const std::vector<Remark>& remarks) {
    for (const Remark remark : remarks) {
        if (std::find(to.begin(), to.end(), remark) == to.end()) to.push_back(remark);
    }
}

/// The card of the photo's one animal; absent when cards cannot tell, which a remark then says.
std::optional<int> cardOf(const FoundPlate& plate, std::size_t animals, std::vector<Remark>& remarks) {
    if (animals > 1) {
        addRemarks(remarks, {Remark::SeveralAnimals});
    } else if (plate.cards.empty()) {
        addRemarks(remarks, {Remark::NoCard});
    } else if (plate.cards.size() > 1) {
        addRemarks(remarks, {Remark::SeveralCards});
    } else {
        return plate.cards.front().id;
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
    const auto anatomy = findLandmarks(photo, outline, midline.value(), {shape, reading.view});
    if (!anatomy) {
        animal.measurement = refused(anatomy.refusal(), shape, reading.view);
        addRemarks(animal.measurement.remarks, outline.remarks);
        addRemarks(animal.measurement.remarks, midline.value().remarks);
        return animal;
    }
    animal.anatomy = anatomy.value();
    animal.measurement = measureAnimal(outline, animal.anatomy, *reading.scale, {reading.view});
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
    if (!reading.takenAt) reading.remarks.push_back(Remark::NoTimeInPhoto);
    return reading;
}

void readAnimals(const Photo& photo, const std::vector<Outline>& outlines, const FoundPlate& plate,
                 const PhotoOptions& options, PhotoReading& reading) {
    const std::optional<int> card = cardOf(plate, outlines.size(), reading.remarks);
    for (const Outline& outline : outlines) {
        AnimalReading animal = readAnimal(photo, outline, reading, shapeFor(options, card));
        animal.index = static_cast<int>(reading.animals.size());
        animal.card = card;
        addRemarks(animal.measurement.remarks, reading.remarks);
        reading.animals.push_back(std::move(animal));
    }
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
    const auto scale = Scale::fromPlate(box, plate.value(), reading.widthPx, reading.heightPx);
    if (!scale) {
        reading.refusal = scale.refusal();
        return reading;
    }
    reading.scale = scale.value();
    addRemarks(reading.remarks, scale.value().remarks());
    const auto outlines = findOutlines(photo, box, plate.value(), scale.value());
    if (!outlines) {
        reading.refusal = outlines.refusal();
        return reading;
    }
    readAnimals(photo, outlines.value(), plate.value(), options, reading);
    return reading;
}

AnimalReading withLandmarkMoved(const PhotoReading& reading, const AnimalReading& animal, LandmarkName name,
                                PixelPoint atPx) {
    assert(reading.scale.has_value());
    AnimalReading moved = animal;
    moved.anatomy = withLandmark(animal.anatomy, name, atPx);
    moved.measurement = measureAnimal(animal.outline, moved.anatomy, *reading.scale, {reading.view});
    addRemarks(moved.measurement.remarks, reading.remarks);
    addRemarks(moved.measurement.remarks, {Remark::MovedByHand});
    return moved;
}

}  // namespace ringrule
