// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace ringrule {

/// Makes sure that text can be drawn: starts Qt's drawing part without a screen when no application runs yet. Whatever
/// draws a sheet calls it; a program that will draw may call it first thing in `main`. Throws `Error(BadUse)` when a Qt
/// application that cannot draw was started before.
void ensureDrawingApplication();

}  // namespace ringrule
