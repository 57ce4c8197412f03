// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/findings_page.h"
#include "app/core_text.h"

#include <QSignalBlocker>

#include "app/cautions.h"
#include "app/growth_lines.h"
#include "app/two_line_delegate.h"
#include "ringrule/sheets/number_text.h"
#include "ringrule/workflow/session_table.h"
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
    for (const std::string& sentence : sentences) lines << QStringLiteral("•  ") + capitalised(textOf(sentence));
    return lines.join('\n');
}

/// A signed number: "behind" and "ahead" must not be confused.
QString signedNumber(const Estimate& by, const std::string& unit) {
    const QString number = textOf(numberWithInterval(by, unit));
    return by.known() && by.value > 0.0 ? "+" + number : number;
}

QString dayText(Date day) {
    return textOf(formatDate(day));
}

}  // namespace

FindingsPage::FindingsPage(Collection& collection, QWidget* parent)
    : QWidget(parent), ui_(std::make_unique<Ui::FindingsPage>()), collection_(collection) {
    ui_->setupUi(this);
    ui_->findingList->setModel(&findings_);
    ui_->findingList->setItemDelegate(new TwoLineDelegate(this));
    ui_->cautionLabel->setText(judgingCaution());
    ui_->chart->setTextScale(0.92);
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

void FindingsPage::showReview() {
    const Review& review = collection_.review();
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
    findings_.show(review.findings);
    const bool any = !review.findings.empty();
    ui_->stack->setCurrentWidget(any ? ui_->fullSide : ui_->emptySide);
    ui_->emptyLabel->setText(review.asOf
                                 ? tr("No animal needs a look after the session of %1.").arg(dayText(*review.asOf))
                                 : tr("Nothing has been measured yet."));
    QStringList tanks;
    for (const TankLevel& tank : review.lowTanks) tanks << QStringLiteral("▼  ") + textOf(tank.sentence);
    ui_->tankLabel->setText(tanks.join('\n'));
    ui_->tankLabel->setVisible(!tanks.isEmpty());
    ui_->subtitleLabel->setText(tr("Each with its reason, its evidence and what to do next."));
    if (any) ui_->findingList->setCurrentIndex(findings_.index(0));
}

void FindingsPage::showFinding(int row) {
    if (row < 0) return;
    const Finding& finding = findings_.finding(row);
    ui_->kindLabel->setText(tr("%1: %2").arg(textOf(finding.animalCode), coreText(findingWords(finding.kind))));
    ui_->sentenceLabel->setText(textOf(finding.sentence));
    ui_->byCaption->setText(capitalised(textOf(finding.measure)));
    ui_->byLabel->setText(finding.by.known() ? signedNumber(finding.by, finding.unit) : tr("cannot tell"));
    QStringList others;
    for (const std::string& code : finding.comparedWith) others << textOf(code);
    ui_->withLabel->setText(others.isEmpty() ? tr("its own past") : others.join(QStringLiteral(", ")));
    ui_->sinceLabel->setText(dayText(finding.since.value_or(finding.on)));
    ui_->nextLabel->setText(textOf(finding.nextStep));
    ui_->reasonsLabel->setText(bulletList(finding.otherReasons));
    ui_->reasonsHeading->setVisible(!finding.otherReasons.empty());
    ui_->reasonsLabel->setVisible(!finding.otherReasons.empty());
    ui_->chart->setChart(evidenceChart(collection_.review().histories, finding));
}

}  // namespace ringrule
