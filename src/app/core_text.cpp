// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/core_text.h"

#include <QCoreApplication>

namespace ringrule {

QString coreText(std::string_view english) {
    const QByteArray text(english.data(), static_cast<qsizetype>(english.size()));
    return QCoreApplication::translate("core", text.constData());
}

}  // namespace ringrule
