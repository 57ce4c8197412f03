// SPDX-License-Identifier: GPL-3.0-or-later
// Settings, tables read in, what is dropped on the window, and what undo says.
#include <QDragEnterEvent>
#include <QFileInfo>
#include <QMimeData>
#include <QUrl>

#include "app/appearance.h"
#include "app/camera_card.h"
#include "app/import_dialog.h"
#include "app/main_window.h"
#include "app/session_page.h"
#include "app/settings_dialog.h"
#include "ringrule/error.h"
#include "ringrule/workflow/species_file.h"
#include "ui_main_window.h"

namespace ringrule {

void MainWindow::askForSettings() {
    std::optional<JudgeOptions> thresholds;
    try {
        if (collection_.isOpen()) thresholds = speciesOfCollection(collection_.folder()).rules.usual;
    } catch (const Error& error) {
        ui_->messageStrip->showProblem(QString::fromStdString(error.what()));
    }
    SettingsDialog dialog(settings_, thresholds ? &*thresholds : nullptr, this);
    if (dialog.exec() != QDialog::Accepted) return;
    takeSettings(dialog.settings());
    const auto changed = dialog.changedThresholds();
    if (changed.empty()) return;
    try {
        const QString who = settings_.keeper.isEmpty() ? QStringLiteral("a keeper") : settings_.keeper;
        setThresholdsOfCollection(
            collection_.folder(), changed,
            QStringLiteral("set by %1 on %2").arg(who, QDate::currentDate().toString(Qt::ISODate)).toStdString());
        reviewSoon_.start();
    } catch (const Error& error) {
        ui_->messageStrip->showProblem(QString::fromStdString(error.what()));
    }
}

void MainWindow::takeSettings(const Settings& settings) {
    const bool anotherLanguage = settings.language != settings_.language;
    const bool otherDays = settings.days != settings_.days;
    settings_ = settings;
    collection_.setKeeper(settings_.keeper);
    setDayFormat(settings_.days);
    setAppearance(settings_.colours, settings_.textPercent);
    fitPageList();
    tickView();
    if (otherDays && collection_.isOpen()) collection_.reload();
    if (anotherLanguage) ui_->messageStrip->showNews(tr("The language changes when Ringrule is started again."));
}

void MainWindow::askForImport() {
    ImportDialog dialog(collection_, this);
    if (dialog.exec() == QDialog::Accepted)
        ui_->messageStrip->showNews(
            tr("%n entries were read in. Undo takes them out again.", nullptr, dialog.records()));
}

void MainWindow::tellChangedBack(const QString& words, std::optional<PhotoId> photo) {
    ui_->messageStrip->showNews(tr("Taken back or made again: %1.").arg(words));
    if (photo && ui_->pageList->currentRow() == 0)
        QMetaObject::invokeMethod(
            this, [this, at = *photo] { sessionPage_->showPhoto(at); }, Qt::QueuedConnection);
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (event->mimeData()->hasUrls() && event->mimeData()->urls().front().isLocalFile()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
    if (!event->mimeData()->hasUrls()) return;
    event->acceptProposedAction();
    // After the drag has ended: what follows asks the keeper.
    const QString path = event->mimeData()->urls().front().toLocalFile();
    QMetaObject::invokeMethod(
        this, [this, path] { take(path); }, Qt::QueuedConnection);
}

void MainWindow::take(const QString& path) {
    const QFileInfo dropped(path);
    if (dropped.isDir() && isCollection(path.toStdString())) {
        openCollection(path.toStdString());
        return;
    }
    if (!collection_.isOpen()) {
        ui_->messageStrip->showNews(tr("Open or start a collection first, then drop the photos again."));
        return;
    }
    if (dropped.isFile() && dropped.suffix().compare(QStringLiteral("json"), Qt::CaseInsensitive) == 0) {
        try {
            collection_.keepBox(path.toStdString());
            collection_.reload();
            ui_->messageStrip->showNews(tr("The box file was added."));
        } catch (const Error& error) {
            ui_->messageStrip->showProblem(QString::fromStdString(error.what()));
        }
        return;
    }
    askForSessionOf(path);
}

}  // namespace ringrule
