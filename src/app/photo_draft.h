// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QUndoStack>
#include <optional>

#include "ringrule/records/store.h"
#include "ringrule/workflow/measure_photo.h"

namespace ringrule {

/// What a draft knows of each animal beside its reading.
struct DraftMark {
    bool changed = false;             ///< differs from what was accepted or read
    bool brooding = false;            ///< a keeper says so, for the session's day
    std::optional<MeasureId> stored;  ///< the measure that it would replace; absent: a new one
};

/// A photo's animals as they stand, with their marks.
struct DraftState {
    PhotoReading reading;
    std::vector<DraftMark> marks;  ///< one an animal
};

/// A photo's reading while a keeper corrects it. Every correction is one entry of `undoStack()`; nothing is stored
/// before it is accepted. Corrections are refused, and nothing changes, by what the engine refuses.
class PhotoDraft : public QObject {
    Q_OBJECT

public:
    PhotoDraft(PhotoReading reading, const std::vector<StoredMeasure>& stored, PhotoOptions options,
               QObject* parent = nullptr);

    [[nodiscard]] const DraftState& state() const { return state_; }
    [[nodiscard]] const PhotoReading& reading() const { return state_.reading; }
    [[nodiscard]] const DraftMark& mark(std::size_t index) const { return state_.marks[index]; }
    /// Whether `index`, of `reading().animals`, differs from what was accepted or read.
    [[nodiscard]] bool changed(std::size_t index) const { return mark(index).changed; }
    [[nodiscard]] QUndoStack& undoStack() { return undoStack_; }
    /// The animal that a stored measure is about.
    [[nodiscard]] std::optional<std::size_t> placeOf(MeasureId stored) const;

    /// The animal as it would be with a landmark there; nothing changes.
    [[nodiscard]] AnimalReading withLandmarkAt(std::size_t index, LandmarkName name, PixelPoint atPx) const;
    /// Measures the animal again with one landmark moved. Steps of one landmark by keyboard that follow each other
    /// become one entry.
    void moveLandmark(std::size_t index, LandmarkName name, PixelPoint atPx, bool byKey = false);
    /// Measures the animal again with another outline.
    void setOutline(const Photo& photo, std::size_t index, const Outline& outline, const QString& words);
    /// Animals taken out and others put in for them, as `withOutlines`; the first new one stands for the first taken
    /// out.
    void replaceAnimals(const Photo& photo, const std::vector<std::size_t>& taken, const std::vector<Outline>& outlines,
                        const QString& words);
    /// Says that the animal's tail closes on itself, or has the tail read from the photo again.
    void setTailClosed(const Photo& photo, std::size_t index, bool closed);
    void setBrooding(std::size_t index, bool brooding);

    /// Corrections of an earlier run made again, as one entry.
    void restore(const DraftState& corrected);
    /// Puts a state in place; what undo and redo do.
    void setState(const DraftState& state);
    /// The animals as they stand are stored, as these measures: nothing is left to undo.
    void markAccepted(const std::vector<StoredMeasure>& stored);

signals:
    void animalsChanged();

private:
    void push(const QString& words, DraftState after, int mergeKey = 0);
    /// The state with one animal in place of another, changed.
    [[nodiscard]] DraftState withAnimal(std::size_t index, AnimalReading animal) const;

    DraftState state_;
    PhotoOptions options_;
    QUndoStack undoStack_;
};

}  // namespace ringrule
