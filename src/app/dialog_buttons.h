// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QDialogButtonBox;

namespace ringrule {

/// Names the usual buttons in the language that is spoken, also where Qt's own translations are not installed.
void nameButtons(const QDialogButtonBox& buttons);

}  // namespace ringrule
