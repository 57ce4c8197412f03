// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/measure/measurement.h"

namespace ringrule {

bool Measurement::measured() const {
    const bool width = view == View::Front || view == View::Above;
    return width ? trunkWidthMm.known() : standardLengthMm.known();
}

}  // namespace ringrule
