// SPDX-License-Identifier: GPL-3.0-or-later
// What the session page shows and does about the animals of its photo.
#include <QSignalBlocker>
#include <algorithm>
#include <cmath>

#include "app/photo_view.h"
#include "app/session_page.h"
#include "app/stored_correction.h"
#include "ringrule/error.h"
#include "ringrule/sheets/landmark_mark.h"
#include "ringrule/sheets/number_text.h"
#include "ui_session_page.h"

namespace ringrule {
namespace {

/// The place in the reading of the animal that a stored measure is about.
std::optional<std::size_t> placeInReading(const PhotoReading& reading, const StoredMeasure& measure) {
    for (std::size_t k = 0; k < reading.animals.size(); ++k)
        if (reading.animals[k].index == measure.animalIndex) return k;
    return std::nullopt;
}

/// Whether a photo still reads as it was stored: another version of the program or of the box may see it otherwise.
bool agree(const AnimalReading& reading, const StoredMeasure& measure) {
    const Estimate& now = reading.measurement.standardLengthMm;
    const Estimate& then = measure.measurement.standardLengthMm;
    if (now.known() != then.known()) return false;
    return !now.known() || std::abs(now.value - then.value) < 0.05 * then.u95();
}

QString legendOf(const Landmarks& landmarks) {
    const std::vector<std::pair<LandmarkName, const char*>> signs = {{LandmarkName::SnoutTip, "●"},
                                                                     {LandmarkName::Coronet, "▲"},
                                                                     {LandmarkName::HeadEnd, "■"},
                                                                     {LandmarkName::TrunkEnd, "◆"},
                                                                     {LandmarkName::TailEnd, "▼"}};
    QStringList entries;
    for (const auto& [name, sign] : signs) {
        if (!landmarkOf(landmarks, name)) continue;
        const QString words =
            QString::fromUtf8(landmarkWords(name).data(), static_cast<qsizetype>(landmarkWords(name).size()));
        entries << QStringLiteral("<span style=\"color:%1\">%2</span>&nbsp;%3")
                       .arg(QColor(landmarkColour(name)).name(), QString::fromUtf8(sign), words);
    }
    return entries.join(QStringLiteral("&nbsp;&nbsp;&nbsp; "));
}

QStringList remarkSentences(const Measurement& measurement) {
    QStringList sentences;
    if (measurement.refusal) sentences << QString::fromStdString(measurement.refusal->sentence);
    for (const Remark remark : measurement.remarks) {
        const std::string_view sentence = remarkSentence(remark);
        sentences << QString::fromUtf8(sentence.data(), static_cast<qsizetype>(sentence.size()));
    }
    sentences.removeDuplicates();
    return sentences;
}

}  // namespace

const StoredMeasure* SessionPage::stored() const {
    return row() != nullptr && animal_ < row()->measures.size() ? &row()->measures[animal_] : nullptr;
}

const AnimalReading* SessionPage::readingOf(const StoredMeasure& measure) const {
    if (draft() == nullptr) return nullptr;
    const auto place = placeInReading(draft()->reading(), measure);
    return place ? &draft()->reading().animals[*place] : nullptr;
}

bool SessionPage::edited(const StoredMeasure& measure) const {
    if (draft() == nullptr) return false;
    const auto place = placeInReading(draft()->reading(), measure);
    return place && draft()->changed(*place);
}

const Measurement* SessionPage::shownMeasurement() const {
    if (stored() == nullptr) return nullptr;
    return edited(*stored()) ? &readingOf(*stored())->measurement : &stored()->measurement;
}

ShownAnimal SessionPage::shown(const StoredMeasure& measure) const {
    ShownAnimal animal;
    animal.label = measure.animal ? collection_.animalCode(measure.animal) : QString::number(measure.animalIndex + 1);
    animal.outline.boundaryPx = measure.outlinePx;
    animal.midline.spinePx = measure.spinePx;
    animal.landmarks = measure.landmarks;
    const AnimalReading* reading = readingOf(measure);
    if (reading == nullptr) return animal;
    animal.movable = true;
    // What is drawn is what the numbers beside it came from.
    if (!edited(measure) && !agree(*reading, measure)) return animal;
    animal.outline = reading->outline;
    animal.midline = reading->anatomy.midline;
    animal.landmarks = reading->anatomy.landmarks;
    return animal;
}

void SessionPage::refresh() {
    showChoices();
    showAnimals();
    showNumbers();
}

void SessionPage::showAnimals() {
    std::vector<ShownAnimal> animals;
    // While the photo is being read there is nothing to draw them over.
    if (row() != nullptr && !reader_.busy())
        for (const StoredMeasure& measure : row()->measures) animals.push_back(shown(measure));
    ui_->photoView->showAnimals(std::move(animals), animal_);
}

void SessionPage::showNumbers() {
    const Measurement* measurement = shownMeasurement();
    const bool changed = stored() != nullptr && edited(*stored());
    if (measurement != nullptr)
        measures_.show(*measurement);
    else
        measures_.clear();
    QStringList sentences = measurement == nullptr ? QStringList() : remarkSentences(*measurement);
    if (stored() != nullptr && !changed)
        if (const AnimalReading* reading = readingOf(*stored()); reading != nullptr && !agree(*reading, *stored()))
            sentences
                << tr("Read again today, the photo gives a standard length of %1. Moving a landmark measures it anew.")
                       .arg(QString::fromStdString(numberWithInterval(reading->measurement.standardLengthMm, "mm")));
    ui_->remarksLabel->setText(sentences.isEmpty() ? tr("None.")
                                                   : QStringLiteral("•  ") + sentences.join(QStringLiteral("\n\n•  ")));
    ui_->legendLabel->setText(stored() == nullptr ? QString() : legendOf(shown(*stored()).landmarks));
    const PhotoState state = stored() == nullptr ? PhotoState::NotMeasured : stateOf(*stored());
    ui_->stateLabel->setText(changed ? tr("✎  Changed, not accepted yet")
                                     : stateSign(state) + QStringLiteral("  ") + stateWords(state));
    const int toLookAt = photos_.countOf(PhotoState::Measured);
    ui_->photosHeading->setText(toLookAt > 0 ? tr("Photos  ·  %1 to look at").arg(toLookAt) : tr("Photos"));
    ui_->photoTitle->setText(row() == nullptr ? QString() : QString::fromStdString(row()->photo.originalName));
    const bool toAccept =
        row() != nullptr && std::any_of(row()->measures.begin(), row()->measures.end(),
                                        [](const StoredMeasure& m) { return !m.accepted && m.measurement.measured(); });
    ui_->acceptButton->setEnabled((measurement != nullptr && measurement->measured() && changed) || toAccept);
    ui_->previousButton->setEnabled(row_ > 0);
    ui_->nextButton->setEnabled(row_ >= 0 && row_ + 1 < photos_.rowCount());
}

void SessionPage::showChoices() {
    const QSignalBlocker quietAnimal(ui_->animalCombo);
    const QSignalBlocker quietIdentity(ui_->identityCombo);
    ui_->animalCombo->clear();
    ui_->identityCombo->clear();
    const int count = row() == nullptr ? 0 : static_cast<int>(row()->measures.size());
    for (int k = 0; k < count; ++k) ui_->animalCombo->addItem(tr("%1 of %2, from the left").arg(k + 1).arg(count));
    ui_->animalCombo->setCurrentIndex(count > 0 ? static_cast<int>(animal_) : -1);
    ui_->animalCombo->setVisible(count > 1);
    ui_->animalCaption->setVisible(count > 1);
    ui_->identityCombo->setEnabled(stored() != nullptr);
    if (stored() == nullptr) return;
    ui_->identityCombo->addItem(tr("not identified"), QVariant::fromValue<qlonglong>(0));
    for (const Animal& animal : collection_.animals())
        ui_->identityCombo->addItem(QString::fromStdString(animal.code),
                                    QVariant::fromValue<qlonglong>(animal.id.value));
    const qlonglong is = stored()->animal ? stored()->animal->value : 0;
    ui_->identityCombo->setCurrentIndex(std::max(0, ui_->identityCombo->findData(is)));
}

void SessionPage::moveLandmark(LandmarkName name, QPointF atPx, bool byKey) {
    if (draft() == nullptr || stored() == nullptr) return;
    if (const auto place = placeInReading(draft()->reading(), *stored()))
        draft()->moveLandmark(*place, name, {atPx.x(), atPx.y()}, byKey);
}

void SessionPage::assignIdentity(int index) {
    if (stored() == nullptr) return;
    const AnimalId animal{ui_->identityCombo->itemData(index).toLongLong()};
    attempt([&] {
        collection_.assign(row()->photo, stored()->id, animal.value == 0 ? std::nullopt : std::optional(animal));
    });
}

void SessionPage::accept() {
    if (row() == nullptr || !ui_->acceptButton->isEnabled()) return;
    const PhotoListModel::Row before = *row();
    const std::string keeper = [&] {
        for (const Session& session : collection_.sessions())
            if (session.id == before.photo.session) return session.keeper;
        return std::string();
    }();
    try {
        for (const StoredMeasure& measure : before.measures) {
            const auto place = draft() == nullptr ? std::nullopt : placeInReading(draft()->reading(), measure);
            if (place && draft()->changed(*place))
                collection_.correct(before.photo, correctionOf(measure, draft()->reading().animals[*place], keeper));
            else if (!measure.accepted && measure.measurement.measured())
                collection_.accept(before.photo, measure.id);
        }
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
        return;
    }
    if (draft() != nullptr) draft()->markAccepted();
    goToNextUnaccepted();
}

void SessionPage::goToNextUnaccepted() {
    for (int row = row_ + 1; row < photos_.rowCount(); ++row)
        if (photos_.row(row).state == PhotoState::Measured) {
            showRow(row);
            return;
        }
    refresh();
}

void SessionPage::step(int by) {
    const int to = row_ + by;
    if (to >= 0 && to < photos_.rowCount()) showRow(to);
}

void SessionPage::fitPhoto() {
    ui_->photoView->fit();
}

void SessionPage::zoomIn() {
    ui_->photoView->zoomIn();
}

void SessionPage::zoomOut() {
    ui_->photoView->zoomOut();
}

}  // namespace ringrule
