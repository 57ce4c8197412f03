// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/broods_page.h"

#include <QHeaderView>
#include <algorithm>

#include "app/brood_dialogs.h"
#include "app/day_text.h"
#include "app/table_style.h"
#include "ringrule/error.h"
#include "ui_broods_page.h"

namespace ringrule {
namespace {

QString lineOf(const BroodEvent& event) {
    QString line = QStringLiteral("%1  %2").arg(dayText(event.on), broodEventWords(event.event));
    if (event.count) line += BroodsPage::tr(", %n young", nullptr, *event.count);
    if (!event.note.empty()) line += QStringLiteral("\n") + QString::fromStdString(event.note);
    return line;
}

QString textOf(const BroodGroup& brood) {
    QStringList lines;
    if (brood.due)
        lines << BroodsPage::tr("Birth due between %1 and %2 (%3).")
                     .arg(dayText(brood.due->from), dayText(brood.due->until),
                          QString::fromStdString(brood.due->source));
    for (auto event = brood.events.rbegin(); event != brood.events.rend(); ++event) lines << lineOf(*event);
    if (lines.isEmpty()) lines << BroodsPage::tr("Nothing is noted of this brood but its hatch day.");
    return lines.join(QStringLiteral("\n\n"));
}

}  // namespace

BroodsPage::BroodsPage(Collection& collection, QWidget* parent)
    : QWidget(parent), ui_(std::make_unique<Ui::BroodsPage>()), collection_(collection), broods_(collection) {
    ui_->setupUi(this);
    ui_->broodTable->setModel(&broods_);
    styleTable(*ui_->broodTable);
    ui_->broodTable->horizontalHeader()->setSectionResizeMode(BroodTableModel::Species, QHeaderView::Stretch);
    connect(&collection_, &Collection::opened, this, &BroodsPage::showReview);
    connect(&collection_, &Collection::reviewChanged, this, &BroodsPage::showReview);
    connect(ui_->broodTable->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& current) { showBrood(current.row()); });
    connect(ui_->newBroodButton, &QPushButton::clicked, this, &BroodsPage::askForBrood);
    connect(ui_->eventButton, &QPushButton::clicked, this, &BroodsPage::askForEvent);
    showReview();
}

BroodsPage::~BroodsPage() = default;

void BroodsPage::showReview() {
    const int before = std::max(0, ui_->broodTable->currentIndex().row());
    const Review& review = collection_.review();
    broods_.show(review.broods, review.asOf);
    const bool any = broods_.rowCount() > 0;
    ui_->sides->setCurrentWidget(any ? ui_->fullSide : ui_->emptySide);
    ui_->newBroodButton->setEnabled(collection_.isOpen());
    ui_->eventButton->setEnabled(false);
    if (any) {
        ui_->broodTable->selectRow(std::min(before, broods_.rowCount() - 1));
        showBrood(ui_->broodTable->currentIndex().row());
    }
}

void BroodsPage::showBrood(int row) {
    if (row < 0 || row >= broods_.rowCount()) return;
    const BroodGroup& brood = broods_.broods()[static_cast<std::size_t>(row)];
    ui_->eventsHeading->setText(tr("Brood %1").arg(QString::fromStdString(brood.code)));
    ui_->eventsLabel->setText(textOf(brood));
    ui_->eventButton->setEnabled(recordOf(brood) != nullptr);
    ui_->chart->setChart(broodChart(collection_.review().histories, broods_.broods(), row));
}

const BroodRecord* BroodsPage::recordOf(const BroodGroup& brood) const {
    const auto& records = collection_.review().broodRecords;
    const auto found =
        std::find_if(records.begin(), records.end(), [&](const BroodRecord& r) { return r.brood.code == brood.code; });
    return found == records.end() ? nullptr : &*found;
}

void BroodsPage::askForBrood() {
    BroodDialog dialog(collection_, this);
    if (dialog.exec() != QDialog::Accepted) return;
    try {
        collection_.addBrood(dialog.brood());
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
}

void BroodsPage::askForEvent() {
    const int row = ui_->broodTable->currentIndex().row();
    if (row < 0) return;
    const BroodRecord* record = recordOf(broods_.broods()[static_cast<std::size_t>(row)]);
    if (record == nullptr) return;
    BroodEventDialog dialog(record->brood, this);
    if (dialog.exec() != QDialog::Accepted) return;
    try {
        collection_.addBroodEvent(dialog.event());
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
}

}  // namespace ringrule
