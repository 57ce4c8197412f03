// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/records/store.h"

// Invented records, each field with a value of its own so that a swap of two columns shows.
namespace sample {

using namespace std::chrono_literals;

inline ringrule::Animal animal(const std::string& code = "P4", std::optional<int> card = 14) {
    ringrule::Animal a;
    a.code = code;
    a.name = "Wisp";
    a.species = "Syngnathus typhle";
    a.shape = "pipefish";
    a.sex = ringrule::Sex::Female;
    a.hatchedOn = ringrule::Date{2030y / 11 / 15};
    a.hatchedExactly = true;
    a.hatchedSdDays = 1.5;
    a.arrivedOn = ringrule::Date{2030y / 12 / 1};
    a.card = card;
    return a;
}

inline ringrule::Session session() {
    ringrule::Session s;
    s.on = ringrule::Date{2031y / 1 / 6};
    s.keeper = "K1";
    s.boxName = "bench box";
    s.folder = "2031-01-06";
    return s;
}

inline ringrule::Measurement measurement(double lengthMm = 101.25) {
    ringrule::Measurement m;
    m.shape = ringrule::Shape::Pipefish;
    m.view = ringrule::View::Side;
    m.protocol = "dawson-1985";
    m.standardLengthMm = {lengthMm, 0.11, 0.12};
    m.trunkWidthMm = {3.5, 0.21, 0.22};
    m.headLengthMm = {15.5, 0.31, 0.32};
    m.trunkLengthMm = {35.5, 0.41, 0.42};
    m.tailLengthMm = {50.25, 0.51, 0.52};
    m.trunkDepthMm = {4.5, 0.61, 0.62};
    m.girthMm = {12.5, 0.71, 0.72};
    m.girthRatio = {0.125, 0.081, 0.082};
    m.depthRatio = {0.0445, 0.0091, 0.0092};
    m.bellyHollowPercent = {-1.5, 1.01, 1.02};
    m.remarks = {ringrule::Remark::NoMedia, ringrule::Remark::WidthFromShape};
    return m;
}

inline ringrule::StoredMeasure stored(ringrule::PhotoId photo, std::optional<ringrule::AnimalId> animalId,
                                      double lengthMm = 101.25) {
    ringrule::StoredMeasure s;
    s.photo = photo;
    s.animal = animalId;
    s.animalIndex = 2;
    s.card = 14;
    s.boxName = "bench box";
    s.softwareVersion = "0.1.0";
    s.keeper = "K1";
    s.accepted = true;
    s.measurement = measurement(lengthMm);
    s.landmarks.snoutTip = ringrule::Landmark{{10.5, 20.25}, 0.5, false};
    s.landmarks.headEnd = ringrule::Landmark{{30.5, 21.25}, 1.5, true};
    s.landmarks.tailEnd = ringrule::Landmark{{400.5, 22.25}, 2.5, false};
    s.landmarks.ventralOnLeft = true;
    s.outlinePx = {{1.25, 2.5}, {3.0, 4.75}, {-0.5, 6.12}};
    s.spinePx = {{7.25, 8.5}, {9.5, 10.25}};
    return s;
}

}  // namespace sample
