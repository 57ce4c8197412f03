// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/photo_draft.h"

#include "app/move_landmark_command.h"

namespace ringrule {

PhotoDraft::PhotoDraft(PhotoReading reading, QObject* parent)
    : QObject(parent), reading_(std::move(reading)), changed_(reading_.animals.size(), false) {}

void PhotoDraft::moveLandmark(std::size_t index, LandmarkName name, PixelPoint atPx, bool byKey) {
    Q_ASSERT(reading_.scale);
    const AnimalReading& before = reading_.animals[index];
    AnimalReading after = withLandmarkMoved(reading_, before, name, atPx);
    undoStack_.push(
        new MoveLandmarkCommand(*this, index, name, byKey, {before, changed_[index]}, {std::move(after), true}));
}

void PhotoDraft::setAnimal(std::size_t index, const AnimalReading& animal, bool changed) {
    reading_.animals[index] = animal;
    changed_[index] = changed;
    emit animalChanged(index);
}

void PhotoDraft::markAccepted() {
    undoStack_.clear();
    changed_.assign(changed_.size(), false);
}

}  // namespace ringrule
