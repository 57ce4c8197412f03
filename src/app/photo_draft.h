// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QUndoStack>

#include "ringrule/workflow/measure_photo.h"

namespace ringrule {

/// A photo's reading while a keeper corrects it. Every move of a landmark is one entry of `undoStack()`; nothing is
/// stored before it is accepted.
class PhotoDraft : public QObject {
    Q_OBJECT

public:
    explicit PhotoDraft(PhotoReading reading, QObject* parent = nullptr);

    [[nodiscard]] const PhotoReading& reading() const { return reading_; }
    [[nodiscard]] QUndoStack& undoStack() { return undoStack_; }
    /// Whether `index`, of `reading().animals`, differs from what was accepted or read.
    [[nodiscard]] bool changed(std::size_t index) const { return changed_[index]; }

    /// Measures the animal again with one landmark moved, as one undo entry. Steps of one landmark by keyboard that
    /// follow each other become one entry.
    void moveLandmark(std::size_t index, LandmarkName name, PixelPoint atPx, bool byKey = false);
    /// Puts an animal in place; what undo and redo do.
    void setAnimal(std::size_t index, const AnimalReading& animal, bool changed);
    /// The animals as they stand are stored: nothing is left to undo.
    void markAccepted();

signals:
    void animalChanged(std::size_t index);

private:
    PhotoReading reading_;
    std::vector<bool> changed_;
    QUndoStack undoStack_;
};

}  // namespace ringrule
