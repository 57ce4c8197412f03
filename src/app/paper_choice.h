// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/sheets/paper.h"

class QComboBox;

namespace ringrule {

/// Offers every paper; the one that is usual in the system's country comes chosen.
void fillPapers(QComboBox& combo);
[[nodiscard]] Paper chosenPaper(const QComboBox& combo);

}  // namespace ringrule
