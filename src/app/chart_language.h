// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/sheets/chart.h"

namespace ringrule {

/// Says a chart's titles, notes and months in the language that is spoken.
void inOwnLanguage(Chart& chart);

}  // namespace ringrule
