// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/box_panel.h"

#include "ringrule/error.h"

namespace ringrule {

bool BoxPanel::attempt(const std::function<void()>& action) {
    try {
        action();
        return true;
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
        return false;
    }
}

}  // namespace ringrule
