// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diets_page.h"

#include <QHeaderView>
#include <QSignalBlocker>
#include <algorithm>
#include <map>
#include <set>

#include "app/cautions.h"
#include "app/core_text.h"
#include "app/day_text.h"
#include "app/diet_pair_words.h"
#include "app/finding_words.h"
#include "app/growth_lines.h"
#include "app/record_dialog.h"
#include "app/scroll_whole.h"
#include "app/table_style.h"
#include "ui_diets_page.h"

namespace ringrule {
namespace {

QString textOf(const std::string& text) {
    return QString::fromStdString(text);
}

Date dayOf(const QComboBox& combo) {
    return Date(std::chrono::days(combo.currentData().toInt()));
}

void fillDays(QComboBox& combo, const std::vector<Date>& days, Date chosen) {
    const QSignalBlocker quiet(&combo);
    combo.clear();
    for (const Date day : days) combo.addItem(dayText(day), static_cast<int>(day.time_since_epoch().count()));
    combo.setCurrentIndex(combo.findData(static_cast<int>(chosen.time_since_epoch().count())));
}

/// Each animal's own rate by diet, of the animals that are compared.
std::vector<DietGroup> ownRates(const std::vector<AnimalHistory>& alike, const std::vector<DietAnimal>& compared,
                                Date from, Date to, const JudgeOptions& options) {
    const auto outcome = compareDiets(alike, from, to, options);
    if (!outcome) return {};
    std::set<std::string> codes;
    for (const AnimalHistory& history : alike)
        if (std::any_of(compared.begin(), compared.end(),
                        [&](const DietAnimal& one) { return one.animal == history.animal.id.value; }))
            codes.insert(history.animal.code);
    std::vector<DietGroup> groups;
    for (const DietGroup& all : outcome.value().groups) {
        DietGroup& group = groups.emplace_back();
        group.diet = all.diet;
        for (std::size_t k = 0; k < all.codes.size(); ++k) {
            if (!codes.contains(all.codes[k])) continue;
            group.codes.push_back(all.codes[k]);
            group.mmPerDay.push_back(all.mmPerDay[k]);
        }
    }
    return groups;
}

}  // namespace

DietsPage::DietsPage(Collection& collection, QWidget* parent)
    : QWidget(parent),
      ui_(std::make_unique<Ui::DietsPage>()),
      collection_(collection),
      changes_(collection),
      groups_(collection) {
    ui_->setupUi(this);
    scrollWhole(*this);
    ui_->changeTable->setModel(&changes_);
    ui_->groupTable->setModel(&groups_);
    styleTable(*ui_->changeTable);
    styleTable(*ui_->groupTable);
    ui_->changeTable->horizontalHeader()->setSectionResizeMode(DietChangeModel::From, QHeaderView::Stretch);
    ui_->changeTable->horizontalHeader()->setSectionResizeMode(DietChangeModel::To, QHeaderView::Stretch);
    fillLastColumn(*ui_->groupTable);
    ui_->cautionLabel->setText(judgingCaution());
    // Charts, tables and words of both parts on one page; a large text size gives the charts their room too.
    for (ChartWidget* chart : {ui_->lengthChart, ui_->ratioChart}) {
        chart->setMinimumHeight(14 * fontMetrics().height());
        chart->setMaximumHeight(17 * fontMetrics().height());
    }
    ui_->lengthChart->setTextScale(0.92);
    ui_->ratioChart->setTextScale(0.92);
    connect(&collection_, &Collection::reviewChanged, this, &DietsPage::showReview);
    connect(ui_->changeTable->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& current) { showChange(current.row()); });
    for (QTableView* table : {ui_->changeTable, ui_->groupTable})
        table->setSizeAdjustPolicy(QAbstractScrollArea::AdjustToContents);
    connect(ui_->speciesCombo, &QComboBox::activated, this, &DietsPage::compare);
    connect(ui_->fromCombo, &QComboBox::activated, this, &DietsPage::compare);
    connect(ui_->toCombo, &QComboBox::activated, this, &DietsPage::compare);
    connect(ui_->cautionLabel, &QLabel::linkActivated, this, &DietsPage::cautionsWanted);
    connect(ui_->newDietButton, &QPushButton::clicked, this, [this] { askFor("diet", tr("New diet")); });
    connect(ui_->tankDietButton, &QPushButton::clicked, this, [this] { askFor("tank-diet", tr("Diet of a tank")); });
    showReview();
}

void DietsPage::askFor(const std::string& kind, const QString& title) {
    RecordDialog dialog(
        collection_, title, {}, recordKind(kind).fields, {},
        [&](const RecordValues& values) { collection_.addRecord(kind, values); }, this);
    dialog.exec();
}

DietsPage::~DietsPage() = default;

void DietsPage::showReview() {
    const Review& review = collection_.review();
    changes_.show(review.dietChanges);
    ui_->sentenceLabel->setText(tr(
        "No animal has two sessions before a change of food yet. A change of diet is noted on the page Animals: Note…, "
        "Diet. After two more sessions the animal stands here, before and after."));
    for (QWidget* part : std::initializer_list<QWidget*>{ui_->lengthChart, ui_->ratioChart, ui_->changeTable})
        part->setVisible(changes_.rowCount() > 0);
    if (changes_.rowCount() > 0) {
        ui_->changeTable->selectRow(0);
        showChange(0);
    }
    const bool any = review.asOf.has_value();
    ui_->fromCombo->setEnabled(any);
    ui_->toCombo->setEnabled(any);
    ui_->speciesCombo->setEnabled(any);
    if (any) {
        fillDays(*ui_->fromCombo, review.days, review.days.back());
        fillDays(*ui_->toCombo, review.days, *review.asOf);
    }
    fillSpecies();
    // Nothing to choose from says nothing.
    const bool diets = ui_->speciesCombo->count() > 0;
    for (QWidget* part : std::initializer_list<QWidget*>{ui_->speciesCombo, ui_->fromCombo, ui_->toCombo,
                                                         ui_->fromCaption, ui_->toCaption, ui_->groupTable})
        part->setVisible(diets);
    compare();
}

void DietsPage::fillSpecies() {
    const QString before = ui_->speciesCombo->currentText();
    // The species on most diets is the one to compare first.
    std::map<std::string, std::set<DietId>> dietsOf;
    for (const AnimalHistory& history : collection_.review().histories)
        for (const DietSpell& spell : history.dietSpells) dietsOf[history.animal.species].insert(spell.diet);
    ui_->speciesCombo->clear();
    int most = 0;
    for (const auto& [species, diets] : dietsOf) {
        ui_->speciesCombo->addItem(textOf(species), static_cast<int>(diets.size()));
        const int last = ui_->speciesCombo->count() - 1;
        if (ui_->speciesCombo->itemData(last).toInt() > ui_->speciesCombo->itemData(most).toInt()) most = last;
    }
    const int again = ui_->speciesCombo->findText(before);
    ui_->speciesCombo->setCurrentIndex(again >= 0 ? again : most);
}

void DietsPage::showChange(int row) {
    if (row < 0) return;
    const DietChange& change = changes_.change(row);
    const Review& review = collection_.review();
    ui_->sentenceLabel->setText(dietChangeSentence(change));
    auto [length, ratio] = changeCharts(review.histories, change.animal, change.changedOn, *review.asOf);
    ui_->lengthChart->setChart(std::move(length));
    ui_->ratioChart->setChart(std::move(ratio));
}

void DietsPage::compare() {
    groups_.clear();
    ui_->pairsLabel->setText(tr("Diets that two groups of animals keep over the same time are compared here."));
    if (!collection_.review().asOf || ui_->speciesCombo->count() == 0) return;
    if (dayOf(*ui_->fromCombo) >= dayOf(*ui_->toCombo)) {
        ui_->pairsLabel->setText(tr("Choose a first day that lies before the last."));
        return;
    }
    // Diets of one species only: a grown seahorse hardly grows whatever it eats.
    std::vector<AnimalHistory> alike = collection_.review().histories;
    std::erase_if(alike,
                  [&](const AnimalHistory& h) { return textOf(h.animal.species) != ui_->speciesCombo->currentText(); });
    const Date from = dayOf(*ui_->fromCombo);
    const Date to = dayOf(*ui_->toCombo);
    const JudgeOptions& options = collection_.review().rules.of(ui_->speciesCombo->currentText().toStdString());
    const std::vector<DietAnimal> animals = dietAnimals(alike, from, to, options);
    const Outcome<DietEffects> outcome = compareDietEffects(animals);
    if (!outcome) {
        ui_->pairsLabel->setText(reasonText(outcome.refusal().reason, outcome.refusal().sentence));
        return;
    }
    const DietEffects& effects = outcome.value();
    groups_.show(effects, ownRates(alike, animals, from, to, options));
    // Diets are few: all stand there, with room for the bar that scrolls them sideways, and no more.
    ui_->groupTable->setMinimumHeight(ui_->groupTable->sizeHint().height() +
                                      style()->pixelMetric(QStyle::PM_ScrollBarExtent));
    const auto name = [&](std::size_t group) { return collection_.dietName({effects.groups[group].diet}); };
    QStringList lines;
    for (const DietEffect& pair : effects.pairs)
        lines << QStringLiteral("•  ") + dietPairSentence(effects, pair, name(pair.first), name(pair.second));
    for (const std::string& caution : effects.cautions) lines << QStringLiteral("•  ") + coreText(caution);
    ui_->pairsLabel->setText(lines.join('\n'));
}

}  // namespace ringrule
