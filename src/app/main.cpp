// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <QImageReader>
#include <QSettings>
#include <QTimer>

#include "app/appearance.h"
#include "app/language.h"
#include "app/main_window.h"
#include "app/picture_run.h"
#include "app/settings.h"

namespace {

constexpr int kImageMegabytes = 1024;

}  // namespace

int main(int argc, char** argv) {
    QApplication application(argc, argv);
    QCoreApplication::setApplicationName("Ringrule");
    QCoreApplication::setOrganizationName("Ringrule");
    QCoreApplication::setApplicationVersion(RINGRULE_VERSION);
    QApplication::setWindowIcon(QIcon(":/ringrule/ringrule.svg"));
    QImageReader::setAllocationLimit(kImageMegabytes);

    QCommandLineParser parser;
    parser.setApplicationDescription(
        QCoreApplication::translate("main", "Measures seahorses and pipefish from photographs."));
    parser.addHelpOption();
    parser.addVersionOption();
    parser.addPositionalArgument("collection", QCoreApplication::translate("main", "Folder of the collection to open."),
                                 "[collection]");
    const QCommandLineOption pictures(
        "pictures", QCoreApplication::translate("main", "Save a picture of every page into this folder and quit."),
        "folder");
    const QCommandLineOption colours(
        "colours", QCoreApplication::translate("main", "Colours of this run: system, light or dark."), "name");
    const QCommandLineOption textSize(
        "text-size", QCoreApplication::translate("main", "Text size of this run in percent: 100, 115, 130 or 150."),
        "percent");
    const QCommandLineOption language("language",
                                      QCoreApplication::translate("main", "Language of this run: en or de."), "code");
    parser.addOptions({pictures, colours, textSize, language});
    parser.process(application);

    QSettings store;
    const bool picturesOnly = parser.isSet(pictures);
    ringrule::Settings settings = picturesOnly ? ringrule::Settings() : ringrule::readSettings(store);
    if (parser.value(colours) == "light") settings.colours = ringrule::Colours::Light;
    if (parser.value(colours) == "dark") settings.colours = ringrule::Colours::Dark;
    if (parser.isSet(textSize)) settings.textPercent = parser.value(textSize).toInt();
    if (parser.isSet(language)) settings.language = parser.value(language);
    if (picturesOnly && !parser.isSet(language)) settings.language = "en";
    ringrule::speakLanguage(settings.language);
    ringrule::setAppearance(settings.colours, settings.textPercent);

    ringrule::MainWindow window(settings);
    window.show();
    if (!parser.positionalArguments().isEmpty())
        window.openCollection(parser.positionalArguments().front().toStdString());
    if (picturesOnly) return ringrule::savePictures(window, parser.value(pictures).toStdString()) ? 0 : 1;
    const int status = QApplication::exec();
    ringrule::writeSettings(store, window.settings());
    return status;
}
