// SPDX-License-Identifier: GPL-3.0-or-later
// What the session page shows of the animals of its photo.
#include <QSignalBlocker>

#include "app/core_text.h"
#include "app/last_time.h"
#include "app/legend.h"
#include "app/session_page.h"
#include "ringrule/sheets/number_text.h"
#include "ui_session_page.h"

namespace ringrule {
namespace {

QStringList remarkSentences(const Measurement& measurement) {
    QStringList sentences;
    if (measurement.refusal) sentences << reasonText(measurement.refusal->reason, measurement.refusal->sentence);
    for (const Remark remark : measurement.remarks) sentences << coreText(remarkSentence(remark));
    sentences.removeDuplicates();
    return sentences;
}

bool tailSaidClosed(const Measurement& measurement) {
    const auto& remarks = measurement.remarks;
    return std::find(remarks.begin(), remarks.end(), Remark::TailClosed) != remarks.end();
}

}  // namespace

const DeskAnimal* SessionPage::animal() const {
    return animal_ < desk_.animals().size() ? &desk_.animals()[animal_] : nullptr;
}

void SessionPage::refresh() {
    if (animal_ >= desk_.animals().size()) animal_ = 0;
    showChoices();
    showTool();
    showAnimals();
    showNumbers();
}

void SessionPage::chooseTool(Tool tool) {
    tool_ = tool;
    const std::array<QToolButton*, 4> buttons{ui_->marksButton, ui_->traceButton, ui_->pullButton, ui_->cutButton};
    buttons[static_cast<std::size_t>(tool)]->setChecked(true);
    const std::array<PhotoTool*, 4> tools{nullptr, &trace_, &pull_, &cut_};
    PhotoTool* chosen = tools[static_cast<std::size_t>(tool)];
    ui_->photoView->setTool(chosen);
    ui_->hintLabel->setText(
        chosen != nullptr ? chosen->hint()
                          : tr("Drag a mark, or step through the marks with Tab and move one with the arrow keys."));
    showAnimals();
    if (tool != Tool::Marks) ui_->photoView->setFocus();
}

void SessionPage::showTool() {
    const bool editable = animal() != nullptr && animal()->place.has_value() && desk_.pixels() != nullptr;
    // A trace needs no animal: it may be the first one of the photo.
    ui_->traceButton->setEnabled(desk_.draft() != nullptr && desk_.pixels() != nullptr);
    ui_->pullButton->setEnabled(editable);
    ui_->cutButton->setEnabled(editable);
    trace_.setPhoto(desk_.pixels());
    pull_.setOutline(editable ? std::optional(desk_.draft()->reading().animals[*animal()->place].outline)
                              : std::nullopt);
    const QSignalBlocker quietTail(ui_->tailCheck);
    const QSignalBlocker quietBrooding(ui_->broodingCheck);
    ui_->tailCheck->setEnabled(editable);
    ui_->tailCheck->setChecked(animal() != nullptr && tailSaidClosed(animal()->measurement));
    ui_->broodingCheck->setEnabled(editable && animal()->stored && animal()->stored->animal);
    ui_->broodingCheck->setChecked(animal() != nullptr && animal()->brooding);
}

void SessionPage::showAnimals() {
    std::vector<ShownAnimal> animals;
    // While the photo is being read there is nothing to draw them over.
    if (desk_.hasPicture())
        for (const DeskAnimal& each : desk_.animals()) {
            animals.push_back(each.shown);
            animals.back().movable = each.shown.movable && tool_ == Tool::Marks;
        }
    ui_->photoView->showAnimals(std::move(animals), animal_);
}

void SessionPage::showLive(LandmarkName name, QPointF atPx) {
    if (const auto measurement = desk_.withLandmarkAt(animal_, name, atPx)) measures_.show(*measurement);
}

void SessionPage::showNumbers() {
    const DeskAnimal* shown = animal();
    showLastTime();
    if (shown != nullptr)
        measures_.show(shown->measurement);
    else
        measures_.clear();
    QStringList sentences = shown == nullptr ? QStringList() : remarkSentences(shown->measurement);
    if (shown != nullptr && shown->readAgainMm)
        sentences
            << tr("Read again today, the photo gives a standard length of %1. Moving a landmark measures it anew.")
                   .arg(numberText(*shown->readAgainMm, "mm"));
    ui_->remarksLabel->setText(sentences.isEmpty() ? tr("None.")
                                                   : QStringLiteral("•  ") + sentences.join(QStringLiteral("\n\n•  ")));
    ui_->legendLabel->setText(shown == nullptr ? QString() : legendOf(shown->shown.landmarks));
    const PhotoState state = shown == nullptr || !shown->stored ? PhotoState::NotMeasured : stateOf(*shown->stored);
    ui_->stateLabel->setText(shown != nullptr && shown->changed
                                 ? tr("✎  Changed, not accepted yet")
                                 : stateSign(state) + QStringLiteral("  ") + stateWords(state));
    const int toLookAt = photos_.countOf(PhotoState::Measured);
    ui_->photosHeading->setText(toLookAt > 0 ? tr("Photos  ·  %1 to look at").arg(toLookAt) : tr("Photos"));
    ui_->photoTitle->setText(row() == nullptr ? QString() : QString::fromStdString(row()->photo.originalName));
    ui_->acceptButton->setEnabled(desk_.somethingToAccept());
    ui_->againButton->setEnabled(shown != nullptr && shown->stored && shown->stored->animal);
    ui_->previousButton->setEnabled(row_ > 0);
    ui_->nextButton->setEnabled(row_ >= 0 && row_ + 1 < photos_.rowCount());
}

void SessionPage::showLastTime() {
    std::optional<StoredMeasure> last;
    const DeskAnimal* shown = animal();
    if (shown != nullptr && shown->stored && shown->stored->animal)
        attempt([&] {
            last = lastTime(collection_.store(), *shown->stored->animal, shown->measurement.view,
                            shown->stored->sessionOn);
        });
    if (last)
        measures_.showBefore(last->measurement, last->sessionOn);
    else
        measures_.showBefore({}, {});
}

void SessionPage::showChoices() {
    const QSignalBlocker quietAnimal(ui_->animalCombo);
    const QSignalBlocker quietIdentity(ui_->identityCombo);
    ui_->animalCombo->clear();
    ui_->identityCombo->clear();
    const int count = static_cast<int>(desk_.animals().size());
    for (int k = 0; k < count; ++k) ui_->animalCombo->addItem(tr("%1 of %2, from the left").arg(k + 1).arg(count));
    ui_->animalCombo->setCurrentIndex(count > 0 ? static_cast<int>(animal_) : -1);
    ui_->animalCombo->setVisible(count > 1);
    ui_->animalCaption->setVisible(count > 1);
    const bool stored = animal() != nullptr && animal()->stored;
    ui_->identityCombo->setEnabled(stored);
    if (!stored) return;
    ui_->identityCombo->addItem(tr("not identified"), QVariant::fromValue<qlonglong>(0));
    for (const Animal& animal : collection_.animals())
        ui_->identityCombo->addItem(QString::fromStdString(animal.code),
                                    QVariant::fromValue<qlonglong>(animal.id.value));
    const qlonglong is = animal()->stored->animal ? animal()->stored->animal->value : 0;
    ui_->identityCombo->setCurrentIndex(std::max(0, ui_->identityCombo->findData(is)));
}

}  // namespace ringrule
