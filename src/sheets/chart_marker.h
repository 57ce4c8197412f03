// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QPainterPath>

namespace ringrule {

/// The line colour of a series style. Colour repeats after six styles, shape after seven: 42 styles differ in one or
/// both.
[[nodiscard]] QColor seriesColour(int style, bool dark);

/// The marker of a series style about the origin, all of like visual weight.
[[nodiscard]] QPainterPath seriesMarker(int style, double radius);

}  // namespace ringrule
