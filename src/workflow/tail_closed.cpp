// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/tail_closed.h"

#include <algorithm>
#include <cassert>

namespace ringrule {
namespace {

void add(std::vector<Remark>& to, Remark remark) {
    if (std::find(to.begin(), to.end(), remark) == to.end()) to.push_back(remark);
}

}  // namespace

AnimalReading withTailClosed(const PhotoReading& reading, const AnimalReading& animal) {
    assert(reading.scale.has_value());
    AnimalReading closed = animal;
    closed.anatomy.midline.closedCoil = true;
    closed.anatomy.landmarks.tailEnd.reset();
    add(closed.anatomy.remarks, Remark::TailClosed);
    closed.measurement =
        measureAnimal(closed.outline, closed.anatomy, *reading.scale, {reading.view, reading.distanceFromPlateMm});
    // What was said of the photo and of landmarks moved before still holds.
    for (const Remark remark : reading.remarks) add(closed.measurement.remarks, remark);
    for (const Remark remark : animal.measurement.remarks) {
        if (remark == Remark::MovedByHand || remark == Remark::NotOnGirth) add(closed.measurement.remarks, remark);
    }
    return closed;
}

}  // namespace ringrule
