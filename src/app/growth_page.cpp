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

}  // namespace

GrowthPage::GrowthPage(Collection& collection, QWidget* parent)
    : QWidget(parent), ui_(std::make_unique<Ui::GrowthPage>()), collection_(collection) {
    ui_->setupUi(this);
    ui_->measureCombo->addItems({tr("Standard length"), tr("Depth ratio"), tr("Girth ratio"), tr("Width ratio")});
    ui_->timeCombo->addItems({tr("Age if known"), tr("Age"), tr("Date")});
    // As wide as the choices need, at every text size.
    ui_->choices->setMaximumWidth(std::max(240, fontMetrics().horizontalAdvance(QString(32, QLatin1Char('0')))));
    ui_->animalList->setModel(&choices_);
    ui_->animalList->setSpacing(3);
    connect(&collection_, &Collection::opened, this, &GrowthPage::fillTanks);
    connect(&collection_, &Collection::reviewChanged, this, &GrowthPage::fillTanks);
    connect(ui_->tankCombo, &QComboBox::currentIndexChanged, this, &GrowthPage::fillAnimals);
    connect(ui_->measureCombo, &QComboBox::currentIndexChanged, this, &GrowthPage::drawChart);
    connect(ui_->timeCombo, &QComboBox::currentIndexChanged, this, &GrowthPage::drawChart);
    ui_->chart->setExplorable();
    connect(ui_->chart, &ChartWidget::readingChosen, this, &GrowthPage::openReading);
    connect(ui_->logCheck, &QCheckBox::toggled, this, &GrowthPage::drawChart);
    for (QCheckBox* check : {ui_->bandCheck, ui_->curveCheck, ui_->storyCheck})
        connect(check, &QCheckBox::toggled, this, &GrowthPage::drawChart);
    connect(&fit_, &JobRunner::finished, this, &GrowthPage::fitCurve);
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
        std::set<std::string> species;
        for (const AnimalHistory& history : collection_.review().histories) species.insert(history.animal.species);
        ui_->tankCombo->addItem(tr("Every animal"), QString());
        for (const Tank& tank : collection_.tanks())
            ui_->tankCombo->addItem(
                QString::fromStdString(tank.name.empty() ? tank.code : tank.code + ", " + tank.name),
                QStringLiteral("tank:%1").arg(tank.id.value));
        for (const BroodRecord& record : collection_.review().broodRecords)
            ui_->tankCombo->addItem(tr("Brood %1").arg(QString::fromStdString(record.brood.code)),
                                    QStringLiteral("brood:%1").arg(record.brood.id.value));
        for (const std::string& name : species)
            ui_->tankCombo->addItem(QString::fromStdString(name),
                                    QStringLiteral("species:%1").arg(QString::fromStdString(name)));
        // The first tank is more use than a tangle of every animal.
        const int again = before.isValid() ? ui_->tankCombo->findData(before) : 1;
        ui_->tankCombo->setCurrentIndex(std::clamp(again, 0, ui_->tankCombo->count() - 1));
    }
    forgetCurve();
    fillAnimals();
}

void GrowthPage::fillAnimals() {
    const QString chosen = ui_->tankCombo->currentData().toString();
    const auto belongs = [&](const AnimalHistory& history) {
        if (chosen.isEmpty()) return true;
        const Animal& animal = history.animal;
        if (chosen == QStringLiteral("species:%1").arg(QString::fromStdString(animal.species))) return true;
        if (animal.brood && chosen == QStringLiteral("brood:%1").arg(animal.brood->value)) return true;
        return std::any_of(history.stays.begin(), history.stays.end(),
                           [&](const Stay& stay) { return chosen == QStringLiteral("tank:%1").arg(stay.tank.value); });
    };
    std::vector<Animal> animals;
    for (const AnimalHistory& history : collection_.review().histories)
        if (belongs(history)) animals.push_back(history.animal);
    choices_.show(std::move(animals));
    drawChart();
}

std::set<AnimalId> GrowthPage::shownAnimals() const {
    std::set<AnimalId> shown;
    for (int row = 0; row < choices_.rowCount(); ++row)
        if (choices_.ticked(row)) shown.insert(choices_.animal(row).id);
    return shown;
}

std::set<AnimalId> GrowthPage::pickedAnimals() const {
    std::set<AnimalId> picked;
    for (const QModelIndex& index : ui_->animalList->selectionModel()->selectedIndexes())
        picked.insert(choices_.animal(index.row()).id);
    return picked;
}

void GrowthPage::drawChart() {
    const std::set<AnimalId> shown = shownAnimals(), picked = pickedAnimals();
    GrowthChartOptions options;
    options.time = static_cast<TimeAxis>(std::max(0, ui_->timeCombo->currentIndex()));
    options.band = ui_->bandCheck->isChecked();
    options.logarithmic = ui_->logCheck->isChecked();
    const ChartMeasure measure = kMeasures[static_cast<std::size_t>(std::max(0, ui_->measureCombo->currentIndex()))];
    const bool curve = ui_->curveCheck->isChecked() && measure == ChartMeasure::StandardLength;
    if (curve) wantCurve(shown);
    if (curve && curveOf_ == shown) options.curve = curve_.points;
    Chart chart = growthChart(growthLines(collection_.review().histories, shown, picked), measure, options);
    if (ui_->storyCheck->isChecked() && picked.size() == 1 && collection_.isOpen())
        for (const AnimalHistory& history : collection_.review().histories)
            if (picked.contains(history.animal.id))
                addStory(chart, history, collection_.store().treatments(), collection_);
    if (curve && curveOf_ == shown && !curve_.refusal.empty()) chart.note += " " + curve_.refusal;
    if (collection_.review().days.empty())
        chart.emptySentence = tr("Nothing counts yet. Measure a folder of photos on the page Photo session and accept "
                                 "what was measured: each accepted photo is a point here.")
                                  .toStdString();
    ui_->chart->setChart(std::move(chart));
    const bool any = !ui_->chart->chart().series.empty();
    ui_->saveButton->setEnabled(any);
    ui_->printButton->setEnabled(any);
}

void GrowthPage::forgetCurve() {
    curveOf_.reset();
}

void GrowthPage::wantCurve(const std::set<AnimalId>& shown) {
    if (curveOf_ == shown) return;
    curveOf_ = shown;
    curve_ = {};
    fitWanted_ = true;
    fitCurve();
}

void GrowthPage::fitCurve() {
    if (fit_.running() || !fitWanted_ || !curveOf_) return;
    fitWanted_ = false;
    std::vector<AnimalHistory> animals;
    for (const AnimalHistory& history : collection_.review().histories)
        if (curveOf_->contains(history.animal.id)) animals.push_back(history);
    fit_.start<GrowthCurve>(
        tr("Fitting the curve"), [animals](const Progress&) { return growthCurve(animals); },
        [this, of = curveOf_](GrowthCurve curve) {
            if (of != curveOf_ || fitWanted_) return;
            curve_ = std::move(curve);
            drawChart();
        });
}

void GrowthPage::pickOut(AnimalId animal) {
    for (const AnimalHistory& history : collection_.review().histories)
        if (history.animal.id == animal)
            if (const auto tank = lastTank(history))
                ui_->tankCombo->setCurrentIndex(ui_->tankCombo->findData(QStringLiteral("tank:%1").arg(tank->value)));
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
