// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/records/store.h"
#include "ringrule/workflow/measure_photo.h"

namespace ringrule {

/// Which animal of a reading each stored measure is about: those whose outlines' middles lie nearest find each other
/// first; one without an outline is of the animal of its index, if that is still free.
[[nodiscard]] std::vector<std::optional<std::size_t>> placesOf(const std::vector<StoredMeasure>& stored,
                                                               const PhotoReading& reading);

/// The reason with which a measure of an animal that is seen no more is stored when its photo is measured again. No
/// animal that is seen has it.
inline constexpr std::string_view kSeenNoMore = "no-animal";

/// Whether a stored measure says that its animal, seen once, is seen no more: debris that another box took for animals.
[[nodiscard]] bool seenNoMore(const StoredMeasure& measure);

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
