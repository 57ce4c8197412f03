// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "ringrule/records/store.h"

namespace ringrule {

/// The animal's measure of the last session before a day that counts and was taken from the same side; of several
/// photos of that session, the one whose main measure is told best.
[[nodiscard]] std::optional<StoredMeasure> lastTime(const Store& store, AnimalId animal, View view, Date before);

}  // namespace ringrule
