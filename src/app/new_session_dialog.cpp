// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/new_session_dialog.h"

#include <QDir>
#include <QFileDialog>
#include <QPushButton>
#include <algorithm>

#include "app/camera_card.h"
#include "app/cautions.h"
#include "app/day_text.h"
#include "app/dialog_buttons.h"
#include "ringrule/error.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/workflow/measure_session.h"
#include "ui_new_session_dialog.h"

namespace ringrule {
namespace {

/// The day on which the folder's first photo was taken, if it says so.
std::optional<Date> dayOfFirstPhoto(const std::filesystem::path& folder) {
    try {
        const Photo photo = loadPhoto(photosOfFolder(folder).front().path);
        return photo.takenAt ? parseDate(*photo.takenAt) : std::nullopt;
    } catch (const Error&) {
        return std::nullopt;
    }
}

}  // namespace

NewSessionDialog::NewSessionDialog(Collection& collection, const QString& keeper, QWidget* parent)
    : QDialog(parent), ui_(std::make_unique<Ui::NewSessionDialog>()), collection_(collection) {
    ui_->setupUi(this);
    nameButtons(*ui_->buttons);
    writeDaysAsChosen(*this);
    ui_->keeperEdit->setText(keeper);
    ui_->dateEdit->setDate(QDate::currentDate());
    ui_->cautionLabel->setText(handlingCaution());
    ui_->buttons->button(QDialogButtonBox::Ok)->setText(tr("Measure the photos"));
    connect(ui_->folderButton, &QPushButton::clicked, this, &NewSessionDialog::chooseFolder);
    connect(ui_->folderEdit, &QLineEdit::textChanged, this, &NewSessionDialog::check);
    connect(ui_->boxButton, &QPushButton::clicked, this, &NewSessionDialog::addBox);
    connect(ui_->buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(ui_->buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(ui_->cautionLabel, &QLabel::linkActivated, this, [this] { showCautions(this); });
    fillBoxes({});
}

NewSessionDialog::~NewSessionDialog() = default;

std::filesystem::path NewSessionDialog::photoFolder() const {
    return ui_->folderEdit->text().trimmed().toStdString();
}

std::size_t NewSessionDialog::boxIndex() const {
    return static_cast<std::size_t>(std::max(0, ui_->boxCombo->currentIndex()));
}

Session NewSessionDialog::session() const {
    Session session;
    const QDate date = ui_->dateEdit->date();
    session.on = Date(std::chrono::days(QDate(1970, 1, 1).daysTo(date)));
    session.keeper = ui_->keeperEdit->text().trimmed().toStdString();
    session.boxName = boxes_.empty() ? std::string() : box().name;
    session.folder = photoFolder().string();
    return session;
}

void NewSessionDialog::setPhotoFolder(const QString& folder) {
    const std::filesystem::path photos = photoFolderIn(folder.toStdString());
    ui_->folderEdit->setText(QDir::toNativeSeparators(QString::fromStdString(photos.string())));
    if (const auto day = dayOfFirstPhoto(photoFolder()))
        ui_->dateEdit->setDate(QDate(1970, 1, 1).addDays(day->time_since_epoch().count()));
}

void NewSessionDialog::chooseFolder() {
    const QString folder = QFileDialog::getExistingDirectory(this, tr("Folder of photos"), ui_->folderEdit->text());
    if (!folder.isEmpty()) setPhotoFolder(folder);
}

void NewSessionDialog::addBox() {
    const QString path = QFileDialog::getOpenFileName(this, tr("Box file"), {}, tr("Box files (*.json)"));
    if (path.isEmpty()) return;
    try {
        const std::filesystem::path source = path.toStdString();
        collection_.keepBox(source);
        fillBoxes(readBox(source).name);
    } catch (const std::exception& error) {
        ui_->problemLabel->setText(QString::fromStdString(error.what()));
    }
}

void NewSessionDialog::fillBoxes(const std::string& selected) {
    boxes_ = collection_.boxes();
    ui_->boxCombo->clear();
    for (const Box& box : boxes_) ui_->boxCombo->addItem(QString::fromStdString(box.name));
    ui_->boxCombo->setCurrentIndex(std::max(0, ui_->boxCombo->findText(QString::fromStdString(selected))));
    check();
}

void NewSessionDialog::check() {
    QString problem;
    if (boxes_.empty()) problem = tr("Add the file of the box in which the photos were taken.");
    std::error_code none;
    if (!std::filesystem::is_directory(photoFolder(), none)) problem = tr("Choose the folder that holds the photos.");
    ui_->problemLabel->setText(problem);
    ui_->buttons->button(QDialogButtonBox::Ok)->setEnabled(problem.isEmpty());
}

}  // namespace ringrule
