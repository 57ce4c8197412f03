// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/settings.h"

namespace ringrule {

/// Gives the whole application its colours, light or dark, and its type sizes, in percent of the system's own.
void setAppearance(Colours colours, int textPercent = 100);

}  // namespace ringrule
