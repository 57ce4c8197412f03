// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/settings.h"

namespace ringrule {

/// Gives the whole application its colours, light or dark, and its type sizes.
void setAppearance(Colours colours);

}  // namespace ringrule
