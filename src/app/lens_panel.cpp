// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/lens_panel.h"

#include <QFileDialog>
#include <QHeaderView>
#include <QLocale>

#include "app/core_text.h"
#include "app/table_style.h"
#include "ui_lens_panel.h"

namespace ringrule {
namespace {

enum Board { BoxPlate, ChessboardPhotos };

QString focalText(const FittedLens& fitted) {
    return LensPanel::tr("Focal length %1 px, standard error %2 px; corners within %3 px RMS.")
        .arg(QLocale().toString(fitted.lens.focalXPx, 'f', 1))
        .arg(QLocale().toString(fitted.focalSdPx, 'f', 1))
        .arg(QLocale().toString(fitted.rmsPx, 'f', 2));
}

}  // namespace

LensPanel::LensPanel(CurrentBox& current, JobRunner& job, QWidget* parent)
    : BoxPanel(current, parent), ui_(std::make_unique<Ui::LensPanel>()), job_(job) {
    ui_->setupUi(this);
    ui_->boardCombo->addItems({tr("this box's plate"), tr("a chessboard, corners")});
    ui_->photoTable->setModel(&photos_);
    styleTable(*ui_->photoTable);
    ui_->photoTable->horizontalHeader()->setSectionResizeMode(LensPhotoModel::State, QHeaderView::Stretch);
    const auto showBoard = [this] {
        const bool chessboard = ui_->boardCombo->currentIndex() == ChessboardPhotos;
        for (QWidget* part :
             std::initializer_list<QWidget*>{ui_->columnsSpin, ui_->timesLabel, ui_->rowsSpin, ui_->squareSpin})
            part->setVisible(chessboard);
    };
    connect(ui_->boardCombo, &QComboBox::currentIndexChanged, this, showBoard);
    connect(ui_->photosButton, &QPushButton::clicked, this, &LensPanel::choosePhotos);
    connect(ui_->photoTable->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& row) {
                ui_->adviceLabel->setText(row.isValid() ? QString::fromStdString(photos_.photo(row.row()).advice)
                                                        : QString());
            });
    connect(ui_->useButton, &QPushButton::clicked, this, [this] {
        const FittedLens fitted = *report_->fitted;
        if (attempt([&] { current_.useLens(fitted); })) emit news(tr("The lens is in the box file."));
    });
    showBoard();
    showReport();
}

LensPanel::~LensPanel() = default;

void LensPanel::showBox() {
    if (reportOf_ == current_.file()) return;
    report_.reset();
    showReport();
}

void LensPanel::choosePhotos() {
    const QStringList paths =
        QFileDialog::getOpenFileNames(this, tr("Lens photos"), {}, tr("Photos (*.jpg *.jpeg *.png)"));
    if (!paths.isEmpty()) calibrate(paths);
}

void LensPanel::calibrate(const QStringList& photos) {
    if (job_.running()) {
        emit news(tr("A job is running. Wait for it, or stop it below."));
        return;
    }
    LensTask task;
    for (const QString& path : photos) task.photos.emplace_back(path.toStdString());
    task.boxFile = current_.file();
    task.write = false;
    if (ui_->boardCombo->currentIndex() == ChessboardPhotos)
        task.board = Chessboard{ui_->columnsSpin->value(), ui_->rowsSpin->value(), ui_->squareSpin->value()};
    reportOf_ = task.boxFile;
    job_.start<LensReport>(
        tr("Calibrating the lens"), [task](const Progress& progress) { return calibrateBoxLens(task, progress); },
        [this](LensReport report) { take(std::move(report)); });
}

void LensPanel::take(LensReport report) {
    // Another box may have been chosen meanwhile.
    if (current_.index() < 0 || reportOf_ != current_.file()) return;
    report_ = std::move(report);
    showReport();
}

void LensPanel::showReport() {
    ui_->resultSide->setVisible(report_.has_value());
    photos_.show(report_ ? report_->photos : std::vector<LensPhoto>());
    if (!report_) return;
    if (report_->fitted)
        ui_->resultLabel->setText(focalText(*report_->fitted));
    else
        ui_->resultLabel->setText(QStringLiteral("▼  ") +
                                  reasonText(report_->refusal->reason, report_->refusal->sentence));
    ui_->useButton->setEnabled(report_->fitted.has_value());
    const int retake = photos_.toRetake();
    ui_->adviceLabel->setText(
        retake == 0 ? tr("Every photo is good.")
                    : tr("Select a photo to read what is wrong with it: %n to look at.", nullptr, retake));
    const bool cells = !report_->cornersInCell.empty();
    ui_->coverage->setVisible(cells);
    if (cells) ui_->coverage->setCells(report_->cellColumns, report_->cellRows, report_->cornersInCell);
    ui_->coverageLabel->setText(
        tr("Corners seen in each part of the frame: %1 % of it is covered.").arg(qRound(100.0 * report_->coverage)));
}

}  // namespace ringrule
