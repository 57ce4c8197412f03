// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/drawing_application.h"

#include <QGuiApplication>
#include <array>
#include <iostream>
#include <string>

#include "ringrule/error.h"

namespace ringrule {

void ensureDrawingApplication() {
    if (qobject_cast<QGuiApplication*>(QCoreApplication::instance()) != nullptr) return;
    if (QCoreApplication::instance() != nullptr)
        throw Error(ErrorKind::BadUse, "drawing must be prepared before anything else starts Qt");
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    // Never destroyed: Qt's own statics may still be used by whatever runs at exit.
    static int argumentCount = 1;
    static std::string programName = "ringrule";
    static std::array<char*, 2> arguments{programName.data(), nullptr};
    // Without a screen no session folder is needed: Qt's word on a missing one is no use to a keeper.
    const QtMessageHandler usual =
        qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString& text) {
            if (!text.contains("XDG_RUNTIME_DIR")) std::cerr << text.toStdString() << '\n';
        });
    new QGuiApplication(argumentCount, arguments.data());
    qInstallMessageHandler(usual);
}

}  // namespace ringrule
