// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "ringrule/records/store.h"
#include "ringrule/workflow/measure_photo.h"

namespace ringrule {

/// The row that replaces `stored` once a keeper has accepted the animal as it stands now.
[[nodiscard]] StoredMeasure correctionOf(const StoredMeasure& stored, const AnimalReading& animal,
                                         const std::string& keeper);

}  // namespace ringrule
