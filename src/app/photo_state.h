// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QString>
#include <vector>

#include "ringrule/records/store.h"

namespace ringrule {

/// How far a photo has come. In order: what is worst for the whole photo comes first.
enum class PhotoState { NotMeasured, CannotTell, Measured, Corrected, Accepted };

[[nodiscard]] bool correctedByHand(const StoredMeasure& measure);

[[nodiscard]] PhotoState stateOf(const StoredMeasure& measure);
/// That of its animal which has come least far.
[[nodiscard]] PhotoState stateOf(const std::vector<StoredMeasure>& measures);

[[nodiscard]] QString stateWords(PhotoState state);
[[nodiscard]] QString stateSign(PhotoState state);
[[nodiscard]] QColor stateColour(PhotoState state);

}  // namespace ringrule
