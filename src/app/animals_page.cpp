// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/animals_page.h"

#include <QFileDialog>
#include <QHeaderView>
#include <QSignalBlocker>
#include <algorithm>

#include "app/animal_facts.h"
#include "app/animal_photos.h"
#include "app/animal_row_delegate.h"
#include "app/natural_order.h"
#include "app/sheet_of_animal.h"
#include "app/table_style.h"
#include "ringrule/error.h"
#include "ui_animals_page.h"

namespace ringrule {

void AnimalOrder::showOnly(const QString& tank, bool needsLook) {
    tank_ = tank;
    needsLook_ = needsLook;
    invalidateFilter();
}

bool AnimalOrder::filterAcceptsRow(int row, const QModelIndex& parent) const {
    const auto at = [&](int column) { return sourceModel()->index(row, column, parent); };
    if (needsLook_ && !at(0).data(AnimalTableModel::kLookRole).toBool()) return false;
    if (!tank_.isEmpty() && at(AnimalTableModel::TankColumn).data().toString() != tank_) return false;
    return QSortFilterProxyModel::filterAcceptsRow(row, parent);
}

bool AnimalOrder::lessThan(const QModelIndex& left, const QModelIndex& right) const {
    const QVariant a = left.data(sortRole()), b = right.data(sortRole());
    if (a.typeId() != QMetaType::QString) return QSortFilterProxyModel::lessThan(left, right);
    return naturalLess(a.toString().toStdString(), b.toString().toStdString());
}

AnimalsPage::AnimalsPage(Collection& collection, QWidget* parent)
    : QWidget(parent),
      ui_(std::make_unique<Ui::AnimalsPage>()),
      collection_(collection),
      animals_(collection),
      pictures_(collection),
      events_(collection) {
    ui_->setupUi(this);
    sorted_.setSourceModel(&animals_);
    sorted_.setSortRole(AnimalTableModel::kSortRole);
    sorted_.setFilterKeyColumn(-1);
    sorted_.setFilterCaseSensitivity(Qt::CaseInsensitive);
    ui_->animalTable->setModel(&sorted_);
    ui_->animalTable->setItemDelegate(new AnimalRowDelegate(collection, pictures_, this));
    ui_->historyTable->setModel(&history_);
    ui_->eventTable->setModel(&events_);
    for (QTableView* table : {ui_->animalTable, ui_->historyTable, ui_->eventTable}) styleTable(*table);
    ui_->animalTable->horizontalHeader()->setSectionResizeMode(AnimalTableModel::Look, QHeaderView::Stretch);
    ui_->historyTable->horizontalHeader()->setSectionResizeMode(HistoryTableModel::ColumnCount - 1,
                                                                QHeaderView::Stretch);
    ui_->eventTable->horizontalHeader()->setSectionResizeMode(AnimalEventsModel::What, QHeaderView::Stretch);
    // The card's number stands with the animal's facts; the search finds it all the same.
    ui_->animalTable->hideColumn(AnimalTableModel::Card);
    ui_->animalTable->verticalHeader()->setDefaultSectionSize(2 * ui_->animalTable->fontMetrics().height() + 1);
    ui_->animalTable->sortByColumn(AnimalTableModel::Code, Qt::AscendingOrder);
    ui_->splitter->setSizes({420, 300});
    addMenus();
    connectList();
    connectAnimal();
    fillTanks();
    showHistory();
}

AnimalsPage::~AnimalsPage() = default;

void AnimalsPage::connectList() {
    connect(&pictures_, &AnimalPictures::arrived, ui_->animalTable->viewport(), qOverload<>(&QWidget::update));
    connect(ui_->filterEdit, &QLineEdit::textChanged, &sorted_, &QSortFilterProxyModel::setFilterFixedString);
    connect(ui_->lookCheck, &QCheckBox::toggled, this, &AnimalsPage::filter);
    connect(ui_->tankCombo, &QComboBox::currentIndexChanged, this, &AnimalsPage::filter);
    connect(&collection_, &Collection::opened, this, &AnimalsPage::fillTanks);
    connect(&collection_, &Collection::reloaded, this, &AnimalsPage::fillTanks);
    connect(ui_->animalTable->selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &AnimalsPage::showHistory);
    connect(&animals_, &QAbstractItemModel::modelReset, this, [this] {
        if (wanted_) select(*wanted_);
        if (!selected() && sorted_.rowCount() > 0) ui_->animalTable->selectRow(0);
        showHistory();
    });
    connect(ui_->animalTable, &QTableView::activated, ui_->growthButton, &QPushButton::click);
}

void AnimalsPage::connectAnimal() {
    connect(ui_->sheetButton, &QPushButton::clicked, this, &AnimalsPage::saveSheet);
    connect(ui_->growthButton, &QPushButton::clicked, this, [this] {
        if (const auto animal = selected()) emit growthWanted(*animal);
    });
    connect(ui_->historyTabs, &QTabWidget::currentChanged, this, &AnimalsPage::showTab);
    connect(ui_->photoStrip, &PhotoStrip::photoChosen, this,
            [this](const AnimalPhoto& photo) { emit photoWanted(photo.photo.id); });
    connect(&collection_, &Collection::decisionsChanged, this, &AnimalsPage::showTab);
}

bool AnimalsPage::busy() const {
    return ui_->photoStrip->busy() || pictures_.busy();
}

void AnimalsPage::fillTanks() {
    const QString before = ui_->tankCombo->currentData().toString();
    const QSignalBlocker quiet(ui_->tankCombo);
    ui_->tankCombo->clear();
    ui_->tankCombo->addItem(tr("Every tank"), QString());
    for (const Tank& tank : collection_.tanks()) {
        const QString code = QString::fromStdString(tank.code);
        ui_->tankCombo->addItem(code, code);
    }
    ui_->tankCombo->setCurrentIndex(std::max(0, ui_->tankCombo->findData(before)));
    filter();
}

void AnimalsPage::filter() {
    sorted_.showOnly(ui_->tankCombo->currentData().toString(), ui_->lookCheck->isChecked());
    if (!selected() && sorted_.rowCount() > 0) ui_->animalTable->selectRow(0);
}

void AnimalsPage::saveSheet() {
    const std::optional<AnimalId> animal = selected();
    if (!animal || !collection_.review().asOf) return;
    const QString path = QFileDialog::getSaveFileName(this, tr("Save the animal's sheet"),
                                                      collection_.animalCode(animal) + ".pdf", tr("Pages (*.pdf)"));
    if (path.isEmpty()) return;
    attempt([&] {
        writeAnimalSheetPdf(sheetOfAnimal(collection_, *animal), path.toStdString());
        emit news(tr("The sheet was saved in %1.").arg(path));
    });
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
    for (QWidget* part : std::initializer_list<QWidget*>{ui_->growthButton, ui_->noteButton, ui_->changeButton})
        part->setEnabled(animal.has_value());
    ui_->sheetButton->setEnabled(animal.has_value() && collection_.review().asOf.has_value());
    const bool none = collection_.isOpen() && collection_.animals().empty();
    ui_->historyHeading->setText(animal ? collection_.animalCode(animal)
                                 : none ? tr("No animal yet")
                                        : tr("No animal is chosen"));
    ui_->factsLabel->setText(animal ? animalFacts(collection_, *animal)
                             : none ? tr("New animal… adds one. Its card in the photo then tells its photos from all "
                                         "others. Whole lists are read from a table: File, Import a table…")
                                    : QString());
    std::vector<Observation> observations;
    for (const AnimalHistory& history : collection_.review().histories)
        if (animal && history.animal.id == *animal) observations = history.observations;
    history_.show(std::move(observations));
    photosOf_.reset();
    showTab();
}

void AnimalsPage::showTab() {
    // Photos and events are read when they are looked at, not while a keeper goes down the list.
    if (ui_->historyTabs->currentWidget() == ui_->photosTab) showPhotos();
    if (ui_->historyTabs->currentWidget() == ui_->eventsTab) showEvents();
}

void AnimalsPage::showPhotos() {
    const std::optional<AnimalId> animal = selected();
    if (animal && photosOf_ == animal) return;
    photosOf_ = animal;
    std::vector<AnimalPhoto> photos;
    attempt([&] {
        if (animal) photos = sidePhotosOf(collection_.store(), *animal);
    });
    ui_->photoStrip->setPhotos(std::move(photos));
}

void AnimalsPage::showEvents() {
    attempt([this] { events_.show(selected()); });
    if (events_.rowCount() > 0) ui_->eventTable->selectRow(0);
    ui_->editEventButton->setEnabled(events_.rowCount() > 0);
    ui_->removeEventButton->setEnabled(events_.rowCount() > 0);
}

}  // namespace ringrule
