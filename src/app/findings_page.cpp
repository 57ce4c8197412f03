// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/findings_page.h"
#include "app/core_text.h"

#include <QSignalBlocker>
#include <algorithm>

#include "app/animal_photos.h"
#include "app/cautions.h"
#include "app/day_text.h"
#include "app/decision_panel.h"
#include "app/finding_words.h"
#include "app/growth_lines.h"
#include "app/two_line_delegate.h"
#include "ringrule/error.h"
#include "ringrule/workflow/decision_outcome.h"
#include "ui_findings_page.h"

namespace ringrule {
namespace {

QString textOf(const std::string& text) {
    return QString::fromStdString(text);
}

QString capitalised(QString sentence) {
    if (!sentence.isEmpty()) sentence[0] = sentence[0].toUpper();
    return sentence;
}

QString bulletList(const std::vector<std::string>& sentences) {
    QStringList lines;
    for (const std::string& sentence : sentences) lines << QStringLiteral("•  ") + capitalised(coreText(sentence));
    return lines.join('\n');
}

QString subjectOf(const Decision& decision, const Collection& collection) {
    if (decision.animal) return collection.animalCode(decision.animal);
    const Tank* tank = decision.tank ? collection.tank(*decision.tank) : nullptr;
    return tank == nullptr ? QString() : textOf(tank->code);
}

/// The animal at the finding's session and at the last one before it began.
std::vector<AnimalPhoto> thenAndNow(const Store& store, const Finding& finding) {
    const Date began = finding.since.value_or(finding.on);
    std::optional<AnimalPhoto> then, now;
    for (const AnimalPhoto& photo : sidePhotosOf(store, finding.animal)) {
        if (photo.on <= finding.on) now = photo;
        if (photo.on < began || !then) then = photo;
    }
    std::vector<AnimalPhoto> photos;
    if (then && now && then->on < now->on) photos.push_back(*then);
    if (now) photos.push_back(*now);
    return photos;
}

}  // namespace

FindingsPage::FindingsPage(Collection& collection, QWidget* parent)
    : QWidget(parent), ui_(std::make_unique<Ui::FindingsPage>()), collection_(collection) {
    ui_->setupUi(this);
    ui_->findingList->setModel(&findings_);
    ui_->findingList->setItemDelegate(new TwoLineDelegate(this));
    ui_->cautionLabel->setText(judgingCaution());
    ui_->chart->setTextScale(0.92);
    decisionPanel_ = new DecisionPanel(collection, this);
    ui_->decisionPlace->addWidget(decisionPanel_);
    connect(decisionPanel_, &DecisionPanel::problem, this, &FindingsPage::problem);
    connect(ui_->photoStrip, &PhotoStrip::photoChosen, this,
            [this](const AnimalPhoto& photo) { emit photoWanted(photo.photo.id); });
    connect(&collection_, &Collection::decisionsChanged, this, &FindingsPage::showDecisions);
    connect(&collection_, &Collection::reviewChanged, this, &FindingsPage::showReview);
    connect(ui_->findingList->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& current) { showFinding(current.row()); });
    connect(ui_->dayCombo, &QComboBox::activated, this,
            [this](int index) { emit dayWanted(Date(std::chrono::days(ui_->dayCombo->itemData(index).toInt()))); });
    const auto animal = [this] { return findings_.finding(ui_->findingList->currentIndex().row()).animal; };
    connect(ui_->growthButton, &QPushButton::clicked, this, [this, animal] { emit growthWanted(animal()); });
    connect(ui_->photosButton, &QPushButton::clicked, this, [this, animal] { emit photosWanted(animal()); });
    connect(ui_->cautionLabel, &QLabel::linkActivated, this, &FindingsPage::cautionsWanted);
    showReview();
}

FindingsPage::~FindingsPage() = default;

bool FindingsPage::busy() const {
    return ui_->photoStrip->busy();
}

void FindingsPage::showReview() {
    const Review& review = collection_.told();
    {
        const QSignalBlocker quiet(ui_->dayCombo);
        ui_->dayCombo->clear();
        for (const Date day : review.days)
            ui_->dayCombo->addItem(dayText(day), static_cast<int>(day.time_since_epoch().count()));
        if (review.asOf)
            ui_->dayCombo->setCurrentIndex(
                ui_->dayCombo->findData(static_cast<int>(review.asOf->time_since_epoch().count())));
    }
    ui_->dayCombo->setEnabled(!review.days.empty());
    fillList();
    const bool any = !review.findings.empty();
    ui_->stack->setCurrentWidget(any ? ui_->fullSide : ui_->emptySide);
    ui_->emptyLabel->setText(
        review.asOf ? tr("No animal needs a look after the session of %1.\n\nWhat was told after earlier "
                         "sessions: choose one above.")
                          .arg(dayText(*review.asOf))
                    : tr("Nothing has been measured yet.\n\nAfter two sessions of a group, animals that lag "
                         "behind or get thin stand here, with the evidence and what to do next."));
    if (!any) ui_->emptyLabel->setText(ui_->emptyLabel->text() + decidedBefore());
    ui_->subtitleLabel->setText(tr("Each with its reason, its evidence and what to do next."));
    if (any) ui_->findingList->setCurrentIndex(findings_.index(0));
}

QString FindingsPage::decidedBefore() const {
    constexpr std::size_t kMostDecisions = 6;
    if (!collection_.isOpen()) return {};
    std::vector<Decision> decisions = collection_.store().decisions();
    std::reverse(decisions.begin(), decisions.end());
    if (decisions.size() > kMostDecisions) decisions.resize(kMostDecisions);
    QStringList lines;
    for (const Decision& decision : decisions)
        lines << subjectOf(decision, collection_) + QStringLiteral("  ·  ") +
                     decisionLine(decision, collection_.told());
    return lines.isEmpty() ? QString() : tr("\n\nWhat became of what was decided:\n") + lines.join('\n');
}

void FindingsPage::fillList() {
    std::vector<Decision> decisions;
    if (collection_.isOpen()) decisions = collection_.store().decisions();
    const Review& review = collection_.told();
    QStringList due;
    if (review.asOf)
        for (const Decision& decision : decisionsDue(decisions, *review.asOf))
            due << tr("◷  %1: look again (%2), due %3")
                       .arg(subjectOf(decision, collection_), decisionWords(decision.decision),
                            dayText(*decision.followUpOn));
    ui_->dueLabel->setText(due.join('\n'));
    ui_->dueLabel->setVisible(!due.isEmpty());
    findings_.show(review.findings, std::move(decisions));
}

void FindingsPage::showDecisions() {
    const int row = ui_->findingList->currentIndex().row();
    fillList();
    if (row >= 0 && row < findings_.rowCount()) ui_->findingList->setCurrentIndex(findings_.index(row));
}

void FindingsPage::showFinding(int row) {
    if (row < 0) return;
    const Finding& finding = findings_.finding(row);
    ui_->kindLabel->setText(tr("%1: %2").arg(findingSubject(finding), findingTitle(finding)));
    ui_->sentenceLabel->setText(findingSentence(finding));
    ui_->byCaption->setText(capitalised(coreText(finding.measure)));
    ui_->byLabel->setText(finding.by.known() ? signedNumber(finding.by, finding.unit) : tr("cannot tell"));
    ui_->withLabel->setText(findingComparedWith(finding));
    ui_->sinceLabel->setText(dayText(finding.since.value_or(finding.on)));
    ui_->nextLabel->setText(coreText(finding.nextStep));
    ui_->reasonsLabel->setText(bulletList(finding.otherReasons));
    ui_->reasonsHeading->setVisible(!finding.otherReasons.empty());
    ui_->reasonsLabel->setVisible(!finding.otherReasons.empty());
    ui_->chart->setChart(evidenceChart(collection_.told().histories, finding));
    decisionPanel_->showFinding(finding);
    std::vector<AnimalPhoto> photos;
    try {
        photos = thenAndNow(collection_.store(), finding);
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
    ui_->photoStrip->setPhotos(std::move(photos));
}

}  // namespace ringrule
