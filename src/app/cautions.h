// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

class QWidget;

namespace ringrule {

/// One line for the pages on which animals are handled, ending in a link to all cautions.
[[nodiscard]] QString handlingCaution();
/// One line for the pages on which animals are judged.
[[nodiscard]] QString judgingCaution();
/// All cautions as rich text.
[[nodiscard]] QString allCautions();

/// Shows all cautions in a window that blocks nothing.
void showCautions(QWidget* parent);

}  // namespace ringrule
