// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/language.h"

#include <QCoreApplication>
#include <QDir>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>

namespace ringrule {
namespace {

/// Beside the program, in its share folder, or in a folder above it: there a build puts them.
QStringList translationFolders() {
    QDir folder(QCoreApplication::applicationDirPath());
    QStringList folders{folder.filePath(QStringLiteral("../share/ringrule/translations"))};
    do folders << folder.filePath(QStringLiteral("translations"));
    while (folder.cdUp());
    return folders;
}

bool install(const QString& file, const QString& folder) {
    auto* translator = new QTranslator(QCoreApplication::instance());
    if (translator->load(file, folder) && QCoreApplication::installTranslator(translator)) return true;
    delete translator;
    return false;
}

}  // namespace

QStringList shippedLanguages() {
    return {QStringLiteral("en"), QStringLiteral("de")};
}

QString languageName(const QString& code) {
    // Qt knows an American and a British one; ours is neither's own.
    return code == QLatin1String("en") ? QStringLiteral("English") : QLocale(code).nativeLanguageName();
}

QString speakLanguage(const QString& code) {
    const QString wanted = code.isEmpty() ? QLocale::system().name().section(QLatin1Char('_'), 0, 0) : code;
    QLocale locale = wanted == QLatin1String("de") ? QLocale(QLocale::German) : QLocale::c();
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    QLocale::setDefault(locale);
    if (wanted == QLatin1String("en") || !shippedLanguages().contains(wanted)) return QStringLiteral("en");
    // The words of Qt's own dialogs, where the system has them.
    install(QStringLiteral("qtbase_") + wanted, QLibraryInfo::path(QLibraryInfo::TranslationsPath));
    for (const QString& folder : translationFolders())
        if (install(QStringLiteral("core_") + wanted, folder)) break;
    for (const QString& folder : translationFolders())
        if (install(QStringLiteral("ringrule_") + wanted, folder)) return wanted;
    return QStringLiteral("en");
}

}  // namespace ringrule
