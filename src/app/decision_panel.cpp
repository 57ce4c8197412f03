// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/decision_panel.h"

#include <QCoreApplication>
#include <QDate>
#include <algorithm>
#include <array>

#include "app/core_text.h"
#include "app/day_text.h"
#include "app/kept_notes.h"
#include "ringrule/error.h"
#include "ringrule/sheets/number_text.h"
#include "ringrule/workflow/decision_outcome.h"
#include "ringrule/workflow/session_table.h"
#include "ui_decision_panel.h"

namespace ringrule {
namespace {

constexpr std::array kChoices{"change-diet", "measure-again", "watch-feeding", "ask-veterinarian", "dismissed"};
constexpr std::string_view kDismissed = "dismissed";

QString outcomeWords(const DecisionOutcome& outcome) {
    switch (outcome.state) {
        case DecisionOutcome::State::NoSessionSince:
            return QCoreApplication::translate("ringrule::DecisionPanel", "no session since");
        case DecisionOutcome::State::StillTold:
            return outcome.by.known()
                       ? QCoreApplication::translate("ringrule::DecisionPanel", "still told on %1, by %2")
                             .arg(dayText(*outcome.session), numberText(outcome.by, "%"))
                       : QCoreApplication::translate("ringrule::DecisionPanel", "still told on %1")
                             .arg(dayText(*outcome.session));
        case DecisionOutcome::State::NoLongerTold:
            return QCoreApplication::translate("ringrule::DecisionPanel", "not told any more on %1")
                .arg(dayText(*outcome.session));
    }
    return {};
}

/// The kind of finding that a decision names, in words.
QString findingOf(const Decision& decision) {
    for (const FindingKind kind :
         {FindingKind::BehindTankmates, FindingKind::Stalled, FindingKind::Thin, FindingKind::GettingThinner,
          FindingKind::NotFeeding, FindingKind::TankLow, FindingKind::MeasureDoubtful, FindingKind::CannotTell})
        if (findingName(kind) == decision.finding) return coreText(findingWords(kind));
    return QString::fromStdString(decision.finding);
}

}  // namespace

QString decisionWords(const std::string& decision) {
    if (decision == "change-diet") return DecisionPanel::tr("Change the diet");
    if (decision == "measure-again") return DecisionPanel::tr("Measure again");
    if (decision == "watch-feeding" || decision == "watch") return DecisionPanel::tr("Watch its feeding");
    if (decision == "ask-veterinarian") return DecisionPanel::tr("Ask the veterinarian");
    if (decision == kDismissed) return DecisionPanel::tr("Dismiss");
    return DecisionPanel::tr("Acted otherwise");
}

QString decisionLine(const Decision& decision, const Review& review) {
    QStringList line{dayText(decision.on), findingOf(decision), decisionWords(decision.decision)};
    if (!decision.note.empty()) line << QString::fromStdString(decision.note);
    if (!decision.keeper.empty()) line << QString::fromStdString(decision.keeper);
    if (decision.followUpOn) line << DecisionPanel::tr("look again on %1").arg(dayText(*decision.followUpOn));
    line << QStringLiteral("→ ") +
                outcomeWords(outcomeOf(decision, review.histories, review.findings, review.asOf.value_or(Date())));
    return line.join(QStringLiteral("  ·  "));
}

DecisionPanel::DecisionPanel(Collection& collection, QWidget* parent)
    : QWidget(parent), ui_(std::make_unique<Ui::DecisionPanel>()), collection_(collection) {
    ui_->setupUi(this);
    writeDaysAsChosen(*this);
    ui_->decisionCombo->addItem(tr("Choose…"));
    for (const char* choice : kChoices) ui_->decisionCombo->addItem(decisionWords(choice), QString::fromUtf8(choice));
    connect(ui_->decisionCombo, &QComboBox::currentIndexChanged, this, &DecisionPanel::showTyped);
    connect(ui_->noteEdit, &QLineEdit::textChanged, this, &DecisionPanel::showTyped);
    keepSoon_.setSingleShot(true);
    keepSoon_.setInterval(300);
    connect(ui_->noteEdit, &QLineEdit::textEdited, &keepSoon_, qOverload<>(&QTimer::start));
    connect(&keepSoon_, &QTimer::timeout, this, &DecisionPanel::keepTyped);
    connect(ui_->followCheck, &QCheckBox::toggled, this, &DecisionPanel::showTyped);
    connect(ui_->keepButton, &QPushButton::clicked, this, &DecisionPanel::keep);
    connect(ui_->takeBackButton, &QPushButton::clicked, this, &DecisionPanel::takeBack);
    connect(&collection_, &Collection::decisionsChanged, this, &DecisionPanel::showEarlier);
    showTyped();
}

DecisionPanel::~DecisionPanel() = default;

std::string DecisionPanel::chosen() const {
    return ui_->decisionCombo->currentData().toString().toStdString();
}

void DecisionPanel::showFinding(const Finding& finding) {
    // The same finding told again keeps what is half typed.
    if (keepSoon_.isActive()) keepTyped();
    const bool same = finding_ && finding_->animal == finding.animal && finding_->tank == finding.tank &&
                      finding_->kind == finding.kind;
    finding_ = finding;
    if (!same) {
        ui_->decisionCombo->setCurrentIndex(0);
        ui_->noteEdit->setText(KeptNotes(collection_.folder()).of(subject()));
        ui_->followCheck->setChecked(false);
        // Sessions are monthly.
        ui_->followEdit->setMinimumDate(qDateOf(finding.on));
        ui_->followEdit->setDate(qDateOf(finding.on).addMonths(1));
        if (ui_->keeperEdit->text().isEmpty() && !collection_.sessions().empty())
            ui_->keeperEdit->setText(QString::fromStdString(collection_.sessions().front().keeper));
    }
    showTyped();
    showEarlier();
}

QString DecisionPanel::subject() const {
    const std::string_view kind = findingName(finding_->kind);
    return QString::fromStdString(finding_->animalCode + "/" + std::string(kind));
}

void DecisionPanel::keepTyped() {
    keepSoon_.stop();
    if (finding_ && collection_.isOpen()) KeptNotes(collection_.folder()).keep(subject(), ui_->noteEdit->text());
}

void DecisionPanel::showTyped() {
    const bool dismissed = chosen() == kDismissed;
    ui_->noteEdit->setPlaceholderText(dismissed ? tr("Why it is no reason to act (needed)")
                                                : tr("What exactly, and why"));
    ui_->followEdit->setEnabled(ui_->followCheck->isChecked());
    ui_->keepButton->setEnabled(finding_ && !chosen().empty() &&
                                (!dismissed || !ui_->noteEdit->text().trimmed().isEmpty()));
}

std::vector<Decision> DecisionPanel::earlier() const {
    std::vector<Decision> decisions;
    if (!finding_ || !collection_.isOpen()) return decisions;
    if (finding_->tank) {
        decisions = collection_.store().decisions();
        std::erase_if(decisions, [this](const Decision& each) { return each.tank != finding_->tank; });
    } else {
        decisions = collection_.store().decisions(finding_->animal);
    }
    std::reverse(decisions.begin(), decisions.end());
    return decisions;
}

void DecisionPanel::showEarlier() {
    const std::vector<Decision> decisions = earlier();
    const Review& review = collection_.told();
    QStringList lines;
    for (const Decision& decision : decisions) lines << decisionLine(decision, review);
    ui_->earlierLabel->setText(lines.join('\n'));
    for (QWidget* part : std::initializer_list<QWidget*>{ui_->earlierHeading, ui_->earlierLabel, ui_->takeBackButton})
        part->setVisible(!decisions.empty());
}

void DecisionPanel::keep() {
    Decision decision;
    if (finding_->tank)
        decision.tank = finding_->tank;
    else
        decision.animal = finding_->animal;
    // A collection may be of another day than the machine's clock: a decision is never older than what it is about.
    decision.on = std::max(finding_->on, dayOf(QDate::currentDate()));
    decision.finding = findingName(finding_->kind);
    decision.findingOn = finding_->on;
    decision.findingText = finding_->sentence;
    decision.decision = chosen();
    decision.note = ui_->noteEdit->text().trimmed().toStdString();
    decision.keeper = ui_->keeperEdit->text().trimmed().toStdString();
    if (ui_->followCheck->isChecked()) decision.followUpOn = std::max(decision.on, dayOf(ui_->followEdit->date()));
    try {
        collection_.decide(decision);
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
        return;
    }
    ui_->decisionCombo->setCurrentIndex(0);
    ui_->noteEdit->clear();
    keepTyped();
    ui_->followCheck->setChecked(false);
}

void DecisionPanel::takeBack() {
    const std::vector<Decision> decisions = earlier();
    if (decisions.empty()) return;
    try {
        collection_.takeBack(decisions.front());
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
}

}  // namespace ringrule
