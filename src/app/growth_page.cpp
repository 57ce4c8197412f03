// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/growth_page.h"

#include <QFileDialog>
#include <QPainter>
#include <QPrintDialog>
#include <QPrinter>
#include <QShortcut>
#include <QSignalBlocker>
#include <algorithm>
#include <array>

#include "app/animal_photos.h"
#include "app/growth_lines.h"
#include "ringrule/error.h"
#include "ringrule/sheets/chart_files.h"
#include "ringrule/sheets/paint_chart.h"
#include "ui_growth_page.h"

namespace ringrule {
namespace {

constexpr std::array kMeasures{ChartMeasure::StandardLength, ChartMeasure::DepthRatio, ChartMeasure::GirthRatio,
                               ChartMeasure::WidthRatio};
constexpr qlonglong kEveryTank = 0;

}  // namespace

GrowthPage::GrowthPage(Collection& collection, QWidget* parent)
    : QWidget(parent), ui_(std::make_unique<Ui::GrowthPage>()), collection_(collection) {
    ui_->setupUi(this);
    ui_->measureCombo->addItems({tr("Standard length"), tr("Depth ratio"), tr("Girth ratio"), tr("Width ratio")});
    ui_->timeCombo->addItems({tr("Age or date"), tr("Age"), tr("Date")});
    ui_->animalList->setModel(&choices_);
    connect(&collection_, &Collection::opened, this, &GrowthPage::fillTanks);
    connect(&collection_, &Collection::reviewChanged, this, &GrowthPage::fillTanks);
    connect(ui_->tankCombo, &QComboBox::currentIndexChanged, this, &GrowthPage::fillAnimals);
    connect(ui_->measureCombo, &QComboBox::currentIndexChanged, this, &GrowthPage::drawChart);
    connect(ui_->timeCombo, &QComboBox::currentIndexChanged, this, &GrowthPage::drawChart);
    ui_->chart->setExplorable();
    connect(ui_->chart, &ChartWidget::readingChosen, this, &GrowthPage::openReading);
    connect(ui_->logCheck, &QCheckBox::toggled, this, &GrowthPage::drawChart);
    connect(ui_->bandCheck, &QCheckBox::toggled, this, &GrowthPage::drawChart);
    connect(&choices_, &QAbstractItemModel::dataChanged, this, &GrowthPage::drawChart);
    connect(ui_->animalList->selectionModel(), &QItemSelectionModel::selectionChanged, this, &GrowthPage::drawChart);
    connect(ui_->saveButton, &QPushButton::clicked, this, &GrowthPage::savePicture);
    connect(ui_->printButton, &QPushButton::clicked, this, &GrowthPage::print);
    auto* none = new QShortcut(Qt::Key_Escape, ui_->animalList, nullptr, nullptr, Qt::WidgetShortcut);
    connect(none, &QShortcut::activated, ui_->animalList, &QListView::clearSelection);
    if (collection_.isOpen()) fillTanks();
}

GrowthPage::~GrowthPage() = default;

void GrowthPage::fillTanks() {
    const QVariant before = ui_->tankCombo->currentData();
    {
        const QSignalBlocker quiet(ui_->tankCombo);
        ui_->tankCombo->clear();
        ui_->tankCombo->addItem(tr("Every tank"), kEveryTank);
        for (const Tank& tank : collection_.tanks())
            ui_->tankCombo->addItem(
                QString::fromStdString(tank.name.empty() ? tank.code : tank.code + ", " + tank.name),
                QVariant::fromValue<qlonglong>(tank.id.value));
        // The first tank is more use than a tangle of every animal.
        const int again = before.isValid() ? ui_->tankCombo->findData(before) : 1;
        ui_->tankCombo->setCurrentIndex(std::clamp(again, 0, ui_->tankCombo->count() - 1));
    }
    fillAnimals();
}

void GrowthPage::fillAnimals() {
    const TankId tank{ui_->tankCombo->currentData().toLongLong()};
    std::vector<Animal> animals;
    for (const AnimalHistory& history : collection_.review().histories) {
        const bool lives =
            std::any_of(history.stays.begin(), history.stays.end(), [&](const Stay& s) { return s.tank == tank; });
        if (tank.value == kEveryTank || lives) animals.push_back(history.animal);
    }
    choices_.show(std::move(animals));
    drawChart();
}

void GrowthPage::drawChart() {
    std::set<AnimalId> shown;
    std::set<AnimalId> picked;
    for (int row = 0; row < choices_.rowCount(); ++row)
        if (choices_.ticked(row)) shown.insert(choices_.animal(row).id);
    for (const QModelIndex& index : ui_->animalList->selectionModel()->selectedIndexes())
        picked.insert(choices_.animal(index.row()).id);
    GrowthChartOptions options;
    options.time = static_cast<TimeAxis>(std::max(0, ui_->timeCombo->currentIndex()));
    options.band = ui_->bandCheck->isChecked();
    options.logarithmic = ui_->logCheck->isChecked();
    const ChartMeasure measure = kMeasures[static_cast<std::size_t>(std::max(0, ui_->measureCombo->currentIndex()))];
    ui_->chart->setChart(growthChart(growthLines(collection_.review().histories, shown, picked), measure, options));
    const bool any = !ui_->chart->chart().series.empty();
    ui_->saveButton->setEnabled(any);
    ui_->printButton->setEnabled(any);
}

void GrowthPage::pickOut(AnimalId animal) {
    for (const AnimalHistory& history : collection_.review().histories)
        if (history.animal.id == animal)
            if (const auto tank = lastTank(history))
                ui_->tankCombo->setCurrentIndex(ui_->tankCombo->findData(QVariant::fromValue<qlonglong>(tank->value)));
    const int row = choices_.rowOf(animal);
    if (row >= 0) ui_->animalList->selectionModel()->select(choices_.index(row), QItemSelectionModel::ClearAndSelect);
}

void GrowthPage::openReading(const QString& code, double x) {
    for (const AnimalHistory& history : collection_.review().histories) {
        if (QString::fromStdString(history.animal.code) != code) continue;
        for (const Observation& seen : history.observations) {
            const double at = ui_->chart->chart().x.dates ? static_cast<double>(seen.on.time_since_epoch().count())
                                                          : seen.ageDays.value_or(-1.0);
            if (at == x) openPhoto(history.animal.id, seen.on);
        }
    }
}

void GrowthPage::openPhoto(AnimalId animal, Date on) {
    try {
        for (const AnimalPhoto& photo : sidePhotosOf(collection_.store(), animal))
            if (photo.on == on) emit photoWanted(photo.photo.id);
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
}

void GrowthPage::savePicture() {
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Save the chart"), QStringLiteral("growth.png"),
        tr("Pictures (*.png)") + ";;" + tr("Drawings (*.svg)") + ";;" + tr("Tables of readings (*.csv)"));
    if (path.isEmpty()) return;
    try {
        const std::filesystem::path file = path.toStdString();
        if (path.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive))
            writeChartSvg(ui_->chart->shown(), file);
        else if (path.endsWith(QLatin1String(".csv"), Qt::CaseInsensitive))
            writeChartCsv(ui_->chart->chart(), file);
        else
            writeChartPng(ui_->chart->shown(), file);
        emit news(tr("The chart was saved in %1.").arg(path));
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
}

void GrowthPage::print() {
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageOrientation(QPageLayout::Landscape);
    QPrintDialog dialog(&printer, this);
    if (dialog.exec() != QDialog::Accepted) return;
    QPainter painter(&printer);
    const QRectF page = printer.pageRect(QPrinter::DevicePixel);
    PaintChartOptions options;
    options.textPx = printer.resolution() * 11.0 / 72.0;
    paintChart(painter, QRectF(QPointF(0, 0), page.size()), ui_->chart->shown(), options);
}

}  // namespace ringrule
