// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/dialog_buttons.h"

#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QPushButton>

namespace ringrule {

void nameButtons(const QDialogButtonBox& buttons) {
    const auto name = [&](QDialogButtonBox::StandardButton which, const QString& words) {
        if (QPushButton* button = buttons.button(which)) button->setText(words);
    };
    name(QDialogButtonBox::Save, QCoreApplication::translate("DialogButtons", "Save"));
    name(QDialogButtonBox::Cancel, QCoreApplication::translate("DialogButtons", "Cancel"));
    name(QDialogButtonBox::Close, QCoreApplication::translate("DialogButtons", "Close"));
}

}  // namespace ringrule
