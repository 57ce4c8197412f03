// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stored_correction.h"

namespace ringrule {

StoredMeasure correctionOf(const StoredMeasure& stored, const AnimalReading& animal, const std::string& keeper) {
    StoredMeasure corrected = stored;
    corrected.id = {};
    corrected.replaces = stored.id;
    corrected.accepted = true;
    corrected.keeper = keeper;
    corrected.softwareVersion = RINGRULE_VERSION;
    corrected.measurement = animal.measurement;
    corrected.landmarks = animal.anatomy.landmarks;
    corrected.outlinePx = animal.outline.boundaryPx;
    corrected.spinePx = animal.anatomy.midline.spinePx;
    return corrected;
}

}  // namespace ringrule
