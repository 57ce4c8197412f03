// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/stored_correction.h"

#include <algorithm>
#include <cmath>
#include <tuple>

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

PixelPoint middleOf(const std::vector<PixelPoint>& points) {
    PixelPoint sum;
    for (const PixelPoint& point : points) sum = sum + point;
    return sum * (1.0 / static_cast<double>(points.size()));
}

/// A stored measure and an animal of a reading, with how far apart their outlines' middles are, pixels.
struct Pair {
    double apartPx = 0.0;
    std::size_t measure = 0;
    std::size_t animal = 0;
};

/// Every pair of which both have an outline, the nearest first.
std::vector<Pair> pairsByDistance(const std::vector<StoredMeasure>& stored, const PhotoReading& reading) {
    std::vector<Pair> pairs;
    for (std::size_t k = 0; k < stored.size(); ++k) {
        if (stored[k].outlinePx.empty()) continue;
        const PixelPoint then = middleOf(stored[k].outlinePx);
        for (std::size_t i = 0; i < reading.animals.size(); ++i) {
            const auto& now = reading.animals[i].outline.boundaryPx;
            if (!now.empty()) pairs.push_back({distance(then, middleOf(now)), k, i});
        }
    }
    std::sort(pairs.begin(), pairs.end(), [](const Pair& one, const Pair& other) {
        return std::tie(one.apartPx, one.measure, one.animal) < std::tie(other.apartPx, other.measure, other.animal);
    });
    return pairs;
}

}  // namespace

std::vector<std::optional<std::size_t>> placesOf(const std::vector<StoredMeasure>& stored,
                                                 const PhotoReading& reading) {
    std::vector<std::optional<std::size_t>> places(stored.size());
    std::vector<bool> taken(reading.animals.size(), false);
    for (const Pair& pair : pairsByDistance(stored, reading)) {
        if (places[pair.measure] || taken[pair.animal]) continue;
        places[pair.measure] = pair.animal;
        taken[pair.animal] = true;
    }
    for (std::size_t k = 0; k < stored.size(); ++k) {
        for (std::size_t i = 0; i < reading.animals.size() && !places[k]; ++i) {
            const bool drawn = !stored[k].outlinePx.empty() && !reading.animals[i].outline.boundaryPx.empty();
            if (taken[i] || drawn || reading.animals[i].index != stored[k].animalIndex) continue;
            places[k] = i;
            taken[i] = true;
        }
    }
    return places;
}

bool seenNoMore(const StoredMeasure& measure) {
    return measure.measurement.refusal && measure.measurement.refusal->reason == kSeenNoMore;
}

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
