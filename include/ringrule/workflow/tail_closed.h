// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/workflow/measure_photo.h"

namespace ringrule {

/// The animal measured again with its tail said to close on itself: no tail end and no length that needs it, all else as
/// it was. Precondition: `reading.scale` is set.
[[nodiscard]] AnimalReading withTailClosed(const PhotoReading& reading, const AnimalReading& animal);

}  // namespace ringrule
