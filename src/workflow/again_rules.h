// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/records/store.h"
#include "ringrule/workflow/measure_photo.h"

namespace ringrule {

/// Whether a person corrected a stored measure: a landmark moved, an outline drawn, or a tail said to be closed that
/// `now`, the animal as it is read now (null: not seen), does not show closed.
[[nodiscard]] bool correctedByHand(const StoredMeasure& stored, const AnimalReading* now);

/// Whether a new reading of a stored measure counts: as its remarks say, unless a person had decided otherwise than the
/// remarks of the stored one say. What they accepted still counts while no doubt is new.
[[nodiscard]] bool countsAgain(const StoredMeasure& stored, const Measurement& now);

/// The measurement of an animal that is seen no more, or whose photo could not be measured.
[[nodiscard]] Measurement withoutFigures(const StoredMeasure& stored, const std::optional<Refusal>& ofPhoto);

/// Whether a measurement says nothing else than a stored one; what the checks of a box say is left aside.
[[nodiscard]] bool sameFigures(const Measurement& stored, const Measurement& now);

}  // namespace ringrule
