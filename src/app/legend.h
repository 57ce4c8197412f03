// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "ringrule/midline/landmarks.h"

namespace ringrule {

/// The marks of the landmarks that were seen, with their names, as rich text.
[[nodiscard]] QString legendOf(const Landmarks& landmarks);

}  // namespace ringrule
