// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/animals_page.h"

#include <QFileDialog>
#include <QHeaderView>
#include <algorithm>

#include "app/animal_photos.h"
#include "app/natural_order.h"
#include "app/new_animal_dialog.h"
#include "app/sheet_of_animal.h"
#include "app/table_style.h"
#include "ringrule/error.h"
#include "ui_animals_page.h"

namespace ringrule {

bool AnimalOrder::lessThan(const QModelIndex& left, const QModelIndex& right) const {
    const QVariant a = left.data(sortRole()), b = right.data(sortRole());
    if (a.typeId() != QMetaType::QString) return QSortFilterProxyModel::lessThan(left, right);
    return naturalLess(a.toString().toStdString(), b.toString().toStdString());
}

AnimalsPage::AnimalsPage(Collection& collection, QWidget* parent)
    : QWidget(parent), ui_(std::make_unique<Ui::AnimalsPage>()), collection_(collection), animals_(collection) {
    ui_->setupUi(this);
    sorted_.setSourceModel(&animals_);
    sorted_.setSortRole(AnimalTableModel::kSortRole);
    sorted_.setFilterKeyColumn(-1);
    sorted_.setFilterCaseSensitivity(Qt::CaseInsensitive);
    ui_->animalTable->setModel(&sorted_);
    ui_->historyTable->setModel(&history_);
    styleTable(*ui_->animalTable);
    styleTable(*ui_->historyTable);
    ui_->animalTable->horizontalHeader()->setSectionResizeMode(AnimalTableModel::Species, QHeaderView::Stretch);
    ui_->historyTable->horizontalHeader()->setSectionResizeMode(HistoryTableModel::Day, QHeaderView::Stretch);
    ui_->animalTable->sortByColumn(AnimalTableModel::Code, Qt::AscendingOrder);
    ui_->splitter->setSizes({420, 300});
    connect(ui_->filterEdit, &QLineEdit::textChanged, &sorted_, &QSortFilterProxyModel::setFilterFixedString);
    connect(ui_->animalTable->selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &AnimalsPage::showHistory);
    connect(&animals_, &QAbstractItemModel::modelReset, this, [this] {
        if (wanted_)
            select(*wanted_);
        else if (sorted_.rowCount() > 0)
            ui_->animalTable->selectRow(0);
        showHistory();
    });
    connect(ui_->sheetButton, &QPushButton::clicked, this, &AnimalsPage::saveSheet);
    connect(ui_->newAnimalButton, &QPushButton::clicked, this, &AnimalsPage::askForAnimal);
    connect(ui_->growthButton, &QPushButton::clicked, this, [this] {
        if (const auto animal = selected()) emit growthWanted(*animal);
    });
    connect(ui_->animalTable, &QTableView::activated, ui_->growthButton, &QPushButton::click);
    connect(ui_->historyTabs, &QTabWidget::currentChanged, this, &AnimalsPage::showPhotos);
    connect(ui_->photoStrip, &PhotoStrip::photoChosen, this,
            [this](const AnimalPhoto& photo) { emit photoWanted(photo.photo.id); });
    showHistory();
}

AnimalsPage::~AnimalsPage() = default;

bool AnimalsPage::busy() const {
    return ui_->photoStrip->busy();
}

void AnimalsPage::askForAnimal() {
    NewAnimalDialog dialog(collection_, this);
    if (dialog.exec() != QDialog::Accepted) return;
    try {
        collection_.addAnimal(dialog.animal(), dialog.tankCode(), dialog.since());
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
}

void AnimalsPage::saveSheet() {
    const std::optional<AnimalId> animal = selected();
    if (!animal || !collection_.review().asOf) return;
    const QString path = QFileDialog::getSaveFileName(this, tr("Save the animal's sheet"),
                                                      collection_.animalCode(animal) + ".pdf", tr("Pages (*.pdf)"));
    if (path.isEmpty()) return;
    try {
        writeAnimalSheetPdf(sheetOfAnimal(collection_, *animal), path.toStdString());
        emit news(tr("The sheet was saved in %1.").arg(path));
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
}

std::optional<AnimalId> AnimalsPage::selected() const {
    const QModelIndexList rows = ui_->animalTable->selectionModel()->selectedRows();
    if (rows.isEmpty()) return std::nullopt;
    return animals_.animalAt(sorted_.mapToSource(rows.front()).row());
}

void AnimalsPage::select(AnimalId animal) {
    const int row = animals_.rowOf(animal);
    if (row >= 0) ui_->animalTable->selectRow(sorted_.mapFromSource(animals_.index(row, 0)).row());
}

void AnimalsPage::showHistory() {
    const std::optional<AnimalId> animal = selected();
    if (animal) wanted_ = animal;
    ui_->growthButton->setEnabled(animal.has_value());
    ui_->sheetButton->setEnabled(animal.has_value() && collection_.review().asOf.has_value());
    ui_->historyHeading->setText(animal ? tr("Sessions of %1").arg(collection_.animalCode(animal)) : tr("Sessions"));
    std::vector<Observation> observations;
    for (const AnimalHistory& history : collection_.review().histories)
        if (animal && history.animal.id == *animal) observations = history.observations;
    history_.show(std::move(observations));
    photosOf_.reset();
    showPhotos();
}

void AnimalsPage::showPhotos() {
    // Photos are read when they are looked at, not while a keeper goes down the list.
    if (ui_->historyTabs->currentWidget() != ui_->photosTab) return;
    const std::optional<AnimalId> animal = selected();
    if (animal && photosOf_ == animal) return;
    photosOf_ = animal;
    std::vector<AnimalPhoto> photos;
    try {
        if (animal) photos = sidePhotosOf(collection_.store(), *animal);
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
    ui_->photoStrip->setPhotos(std::move(photos));
}

}  // namespace ringrule
