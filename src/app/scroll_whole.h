// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QWidget;

namespace ringrule {

/// Lets a page be scrolled where its window is too low for all of it. Once, after the page has its layout.
void scrollWhole(QWidget& page);

}  // namespace ringrule
