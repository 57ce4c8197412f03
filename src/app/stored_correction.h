// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "ringrule/records/store.h"
#include "ringrule/workflow/measure_photo.h"

namespace ringrule {

/// The row that replaces `stored` once a keeper has accepted the animal as it stands now.
[[nodiscard]] StoredMeasure correctionOf(const StoredMeasure& stored, const AnimalReading& animal,
                                         const std::string& keeper);

/// The row for an animal that was missed, accepted.
[[nodiscard]] StoredMeasure newMeasureOf(PhotoId photo, const PhotoReading& reading, const AnimalReading& animal,
                                         const std::string& keeper);

/// The reading of a photo with what a keeper corrected in the stored measures corrected again: outlines, landmarks, a
/// tail said to be closed.
[[nodiscard]] PhotoReading withStoredCorrections(const Photo& photo, PhotoReading reading,
                                                 const std::vector<StoredMeasure>& stored, const PhotoOptions& options);

}  // namespace ringrule
