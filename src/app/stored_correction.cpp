// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stored_correction.h"

#include <algorithm>
#include <cmath>

#include "app/photo_draft.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/outline/edit_outline.h"
#include "ringrule/sheets/landmark_mark.h"
#include "ringrule/workflow/tail_closed.h"

namespace ringrule {
namespace {

using Loop = std::span<const PixelPoint>;

bool has(const std::vector<Remark>& remarks, Remark remark) {
    return std::find(remarks.begin(), remarks.end(), remark) != remarks.end();
}

bool drawnByHand(const StoredMeasure& measure) {
    return measure.outlinePx.size() > 2 && has(measure.measurement.remarks, Remark::OutlinedByHand);
}

/// Whether two outlines are of one place: either holds a point of the other that is about its middle.
bool overlap(const std::vector<PixelPoint>& a, const std::vector<PixelPoint>& b) {
    if (a.size() < 3 || b.size() < 3) return false;
    const auto holdsSome = [](const std::vector<PixelPoint>& loop, const std::vector<PixelPoint>& points) {
        int inside = 0;
        for (const PixelPoint& point : points) inside += contains(Loop(loop), point) ? 1 : 0;
        return 5 * inside > static_cast<int>(points.size());
    };
    return holdsSome(a, b) || holdsSome(b, a);
}

/// A stored outline with the holes that the photo shows inside it now: only the boundary is stored.
Outline outlineOf(const StoredMeasure& measure, const PhotoReading& reading, const std::vector<std::size_t>& replaced) {
    Outline outline;
    outline.boundaryPx = measure.outlinePx;
    outline.edgeSdPx = kHandSdPx;
    outline.areaPx2 = std::abs(signedArea(Loop(outline.boundaryPx)));
    outline.remarks = {Remark::OutlinedByHand};
    for (const std::size_t k : replaced) {
        const Outline& now = reading.animals[k].outline;
        if (!overlap(outline.boundaryPx, now.boundaryPx)) continue;
        outline.edgeBlurPx = now.edgeBlurPx;
        for (const auto& hole : now.holesPx) {
            if (hole.size() < 3 || !contains(Loop(outline.boundaryPx), hole.front())) continue;
            outline.areaPx2 -= std::abs(signedArea(Loop(hole)));
            outline.holesPx.push_back(hole);
        }
    }
    return outline;
}

PhotoReading withStoredOutlines(const Photo& photo, const PhotoReading& reading,
                                const std::vector<StoredMeasure>& stored, const PhotoOptions& options) {
    std::vector<std::size_t> replaced;
    for (std::size_t k = 0; k < reading.animals.size(); ++k)
        if (std::any_of(stored.begin(), stored.end(), [&](const StoredMeasure& measure) {
                return drawnByHand(measure) && overlap(measure.outlinePx, reading.animals[k].outline.boundaryPx);
            }))
            replaced.push_back(k);
    std::vector<Outline> outlines;
    for (const StoredMeasure& measure : stored)
        if (drawnByHand(measure)) outlines.push_back(outlineOf(measure, reading, replaced));
    return outlines.empty() ? reading : withOutlines(photo, reading, replaced, outlines, options);
}

}  // namespace

StoredMeasure correctionOf(const StoredMeasure& stored, const AnimalReading& animal, const std::string& keeper) {
    StoredMeasure corrected = stored;
    corrected.id = {};
    corrected.replaces = stored.id;
    corrected.animalIndex = animal.index;
    corrected.accepted = true;
    corrected.keeper = keeper;
    corrected.softwareVersion = RINGRULE_VERSION;
    corrected.measurement = animal.measurement;
    corrected.landmarks = animal.anatomy.landmarks;
    corrected.outlinePx = animal.outline.boundaryPx;
    corrected.spinePx = animal.anatomy.midline.spinePx;
    return corrected;
}

StoredMeasure newMeasureOf(PhotoId photo, const PhotoReading& reading, const AnimalReading& animal,
                           const std::string& keeper) {
    StoredMeasure added;
    added.photo = photo;
    added.boxName = reading.boxName;
    added.card = animal.card;
    added = correctionOf(added, animal, keeper);
    added.replaces.reset();
    return added;
}

PhotoReading withStoredCorrections(const Photo& photo, PhotoReading reading, const std::vector<StoredMeasure>& stored,
                                   const PhotoOptions& options) {
    if (!reading.scale) return reading;
    reading = withStoredOutlines(photo, reading, stored, options);
    const auto places = placesOf(stored, reading);
    for (std::size_t k = 0; k < stored.size(); ++k) {
        if (!places[k]) continue;
        AnimalReading& animal = reading.animals[*places[k]];
        for (const LandmarkName name : kLandmarkNames)
            if (const auto& landmark = landmarkOf(stored[k].landmarks, name); landmark && landmark->movedByHand)
                animal = withLandmarkMoved(reading, animal, name, landmark->atPx);
        const bool saidClosed = has(stored[k].measurement.remarks, Remark::TailClosed);
        if (saidClosed && !animal.anatomy.midline.closedCoil && animal.anatomy.landmarks.tailEnd)
            animal = withTailClosed(reading, animal);
    }
    return reading;
}

}  // namespace ringrule
