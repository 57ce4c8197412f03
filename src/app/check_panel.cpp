// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/check_panel.h"

#include <QFileDialog>
#include <QHeaderView>
#include <QLocale>
#include <utility>

#include "app/box_check_chart.h"
#include "app/core_text.h"
#include "app/table_style.h"
#include "ringrule/workflow/box_checks.h"
#include "ui_check_panel.h"

namespace ringrule {
namespace {

enum Kind { PlateAlone, RoundRod, FlatStrip };

/// The verdict, then in small what it rests on.
QString verdictOf(const BoxCheck& check) {
    if (!check.holds())
        return check.refusal ? CheckPanel::tr("?  The photo cannot tell.")
                             : CheckPanel::tr("▼  The box does not measure true as it is.");
    if (check.rod)
        return CheckPanel::tr("✓  The box measures true within %1 %.")
            .arg(QLocale().toString(100.0 * check.rod->trueWithin, 'f', 2));
    return CheckPanel::tr(
        "✓  The plate is as the box file says. Whether the print is true to scale only a rod or a "
        "steel rule can tell.");
}

QStringList factsOf(const BoxCheck& check) {
    QStringList lines;
    if (check.plate) {
        lines << CheckPanel::tr("%1 of %2 markers, corners within %3 px (%4 mm) RMS")
                     .arg(check.plate->markers.size())
                     .arg(check.plate->expectedMarkers)
                     .arg(QLocale().toString(check.plate->cornerRmsPx, 'f', 2))
                     .arg(QLocale().toString(check.plate->cornerRmsMm, 'f', 3));
        if (check.plate->tiltDegrees)
            lines << CheckPanel::tr("camera %1° off square").arg(QLocale().toString(*check.plate->tiltDegrees, 'f', 1));
        if (check.plate->cameraToWindowMm)
            lines << CheckPanel::tr("camera %1 mm before the window by this photo")
                         .arg(QLocale().toString(*check.plate->cameraToWindowMm, 'f', 1));
    }
    if (check.rod)
        lines << CheckPanel::tr("rod %1 ± %2 mm of %3 mm")
                     .arg(QLocale().toString(check.rod->reading.lengthMm.value, 'f', 2))
                     .arg(QLocale().toString(check.rod->reading.lengthMm.u95(), 'f', 2))
                     .arg(QLocale().toString(check.rod->statedMm, 'f', 2));
    return lines;
}

QString textOf(const BoxCheck& check) {
    QStringList lines;
    if (check.plate)
        for (const BoxFinding& finding : check.plate->findings)
            lines << (finding.fails ? QStringLiteral("▼  ") : QStringLiteral("○  ")) +
                         reasonText(boxFaultId(finding.fault), finding.sentence);
    if (check.rod && check.rod->finding)
        lines << QStringLiteral("▼  ") +
                     reasonText(boxFaultId(check.rod->finding->fault), check.rod->finding->sentence);
    if (check.refusal) lines << QStringLiteral("?  ") + reasonText(check.refusal->reason, check.refusal->sentence);
    const QStringList facts = factsOf(check);
    if (!facts.isEmpty()) lines << facts.join(QStringLiteral("  ·  "));
    return lines.join('\n');
}

}  // namespace

CheckPanel::CheckPanel(CurrentBox& current, JobRunner& job, QWidget* parent)
    : BoxPanel(current, parent), ui_(std::make_unique<Ui::CheckPanel>()), job_(job) {
    ui_->setupUi(this);
    ui_->kindCombo->addItems({tr("the plate alone"), tr("a round rod of"), tr("a flat strip of")});
    ui_->kindCombo->setCurrentIndex(RoundRod);
    ui_->checkTable->setModel(&history_);
    styleTable(*ui_->checkTable);
    ui_->checkTable->horizontalHeader()->setSectionResizeMode(BoxCheckModel::Found, QHeaderView::Stretch);
    ui_->checkChart->setTextScale(0.92);
    connect(ui_->kindCombo, &QComboBox::currentIndexChanged, this,
            [this](int kind) { ui_->rodSpin->setVisible(kind != PlateAlone); });
    connect(ui_->photoButton, &QPushButton::clicked, this, &CheckPanel::choosePhoto);
}

CheckPanel::~CheckPanel() = default;

void CheckPanel::showBox() {
    if (checkedFile_ != current_.file()) {
        ui_->resultLabel->hide();
        ui_->findingsLabel->hide();
    }
    history_.show(current_.checks());
    ui_->historySides->setCurrentWidget(current_.checks().empty() ? ui_->noHistory : ui_->historySide);
    Chart chart = rodChart(current_.checks());
    ui_->checkChart->setVisible(!chart.series.empty());
    ui_->checkChart->setChart(std::move(chart));
}

void CheckPanel::choosePhoto() {
    const QString path =
        QFileDialog::getOpenFileName(this, tr("Photo of the plate or rod"), {}, tr("Photos (*.jpg *.jpeg *.png)"));
    if (!path.isEmpty()) check(path);
}

void CheckPanel::check(const QString& photo) {
    if (job_.running()) {
        emit news(tr("A job is running. Wait for it, or stop it below."));
        return;
    }
    BoxCheckOptions options;
    const int kind = ui_->kindCombo->currentIndex();
    if (kind != PlateAlone) options.rodMm = ui_->rodSpin->value();
    options.rodShape = kind == FlatStrip ? RodShape::Flat : RodShape::Round;
    checkedFile_ = current_.file();
    using Answer = std::pair<BoxCheck, BoxCheckRecord>;
    job_.start<Answer>(
        tr("Checking the box"),
        [path = std::filesystem::path(photo.toStdString()), box = current_.box(), options,
         today = CurrentBox::machineDay()](const Progress&) -> Answer {
            BoxCheck check = checkBox(path, box, options);
            BoxCheckRecord kept = boxCheckRecord(check, box, path, options.rodMm.has_value(), today);
            return {std::move(check), std::move(kept)};
        },
        [this](const Answer& answer) { take(answer.first, answer.second); });
}

void CheckPanel::take(const BoxCheck& check, const BoxCheckRecord& kept) {
    // Another box may have been chosen meanwhile.
    if (current_.index() < 0 || checkedFile_ != current_.file()) return;
    ui_->resultLabel->setText(verdictOf(check));
    ui_->findingsLabel->setText(textOf(check));
    ui_->resultLabel->show();
    ui_->findingsLabel->show();
    attempt([&] { current_.keepCheck(kept); });
}

}  // namespace ringrule
