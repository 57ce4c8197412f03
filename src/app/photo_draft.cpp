// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/photo_draft.h"

#include <algorithm>

#include "app/core_text.h"
#include "app/edit_photo_command.h"
#include "ringrule/sheets/landmark_mark.h"
#include "ringrule/workflow/stored_correction.h"
#include "ringrule/workflow/tail_closed.h"

namespace ringrule {
namespace {

void setRemark(std::vector<Remark>& remarks, Remark remark, bool there) {
    std::erase(remarks, remark);
    if (there) remarks.push_back(remark);
}

}  // namespace

PhotoDraft::PhotoDraft(PhotoReading reading, const std::vector<StoredMeasure>& stored, PhotoOptions options,
                       QObject* parent)
    : QObject(parent), options_(std::move(options)) {
    state_.marks.resize(reading.animals.size());
    const auto places = placesOf(stored, reading);
    for (std::size_t k = 0; k < stored.size(); ++k)
        if (places[k]) state_.marks[*places[k]].stored = stored[k].id;
    state_.reading = std::move(reading);
}

std::optional<std::size_t> PhotoDraft::placeOf(MeasureId stored) const {
    for (std::size_t k = 0; k < state_.marks.size(); ++k)
        if (state_.marks[k].stored == stored) return k;
    return std::nullopt;
}

void PhotoDraft::push(const QString& words, DraftState after, int mergeKey) {
    undoStack_.push(new EditPhotoCommand(*this, words, state_, std::move(after), mergeKey));
}

DraftState PhotoDraft::withAnimal(std::size_t index, AnimalReading animal) const {
    DraftState after = state_;
    setRemark(animal.measurement.remarks, Remark::NotOnGirth, mark(index).brooding);
    after.reading.animals[index] = std::move(animal);
    after.marks[index].changed = true;
    return after;
}

AnimalReading PhotoDraft::withLandmarkAt(std::size_t index, LandmarkName name, PixelPoint atPx) const {
    Q_ASSERT(reading().scale);
    return withLandmarkMoved(reading(), reading().animals[index], name, atPx);
}

void PhotoDraft::moveLandmark(std::size_t index, LandmarkName name, PixelPoint atPx, bool byKey) {
    // Each landmark of each animal has a key of its own; 0 merges with nothing.
    const int key = 1 + static_cast<int>(index) * 16 + static_cast<int>(name);
    push(tr("move of %1").arg(coreText(landmarkWords(name))), withAnimal(index, withLandmarkAt(index, name, atPx)),
         byKey ? key : 0);
}

void PhotoDraft::setOutline(const Photo& photo, std::size_t index, const Outline& outline, const QString& words) {
    push(words, withAnimal(index, withOutline(photo, reading(), reading().animals[index], outline, options_)));
}

void PhotoDraft::replaceAnimals(const Photo& photo, const std::vector<std::size_t>& taken,
                                const std::vector<Outline>& outlines, const QString& words) {
    DraftState after;
    after.reading = withOutlines(photo, reading(), taken, outlines, options_);
    std::vector<bool> kept(reading().animals.size(), true);
    for (const std::size_t k : taken) kept[k] = false;
    bool first = true;
    for (const AnimalReading& animal : after.reading.animals) {
        DraftMark one{true, false, std::nullopt};
        bool before = false;
        for (std::size_t k = 0; k < kept.size() && !before; ++k) {
            before = kept[k] && reading().animals[k].outline.boundaryPx == animal.outline.boundaryPx;
            if (before) one = mark(k);
        }
        if (!before && first && !taken.empty()) {
            one.stored = mark(taken.front()).stored;
            one.brooding = mark(taken.front()).brooding;
            first = false;
        }
        after.marks.push_back(one);
    }
    push(words, std::move(after));
}

void PhotoDraft::setTailClosed(const Photo& photo, std::size_t index, bool closed) {
    const AnimalReading& animal = reading().animals[index];
    if (closed)
        push(tr("“tail closed”"), withAnimal(index, withTailClosed(reading(), animal)));
    else
        push(tr("“tail open”"), withAnimal(index, withOutline(photo, reading(), animal, animal.outline, options_)));
}

void PhotoDraft::setBrooding(std::size_t index, bool brooding) {
    DraftState after = state_;
    after.marks[index].brooding = brooding;
    after.marks[index].changed = true;
    setRemark(after.reading.animals[index].measurement.remarks, Remark::NotOnGirth, brooding);
    push(brooding ? tr("“brooding”") : tr("“not brooding”"), std::move(after));
}

void PhotoDraft::restore(const DraftState& corrected) {
    push(tr("corrections of last time"), corrected);
}

void PhotoDraft::setState(const DraftState& state) {
    state_ = state;
    emit animalsChanged();
}

void PhotoDraft::markAccepted(const std::vector<StoredMeasure>& stored) {
    undoStack_.clear();
    for (DraftMark& mark : state_.marks) mark = {false, mark.brooding, std::nullopt};
    const auto places = placesOf(stored, reading());
    for (std::size_t k = 0; k < stored.size(); ++k)
        if (places[k]) state_.marks[*places[k]].stored = stored[k].id;
}

}  // namespace ringrule
