// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QUndoCommand>

#include "app/photo_draft.h"

namespace ringrule {

/// One move of one landmark: the animal before and after, by value.
class MoveLandmarkCommand : public QUndoCommand {
public:
    struct State {
        AnimalReading animal;
        bool changed = false;
    };

    MoveLandmarkCommand(PhotoDraft& draft, std::size_t index, LandmarkName name, bool byKey, State before, State after);

    void undo() override;
    void redo() override;
    [[nodiscard]] int id() const override { return 1; }
    bool mergeWith(const QUndoCommand* other) override;

private:
    PhotoDraft& draft_;
    std::size_t index_;
    LandmarkName name_;
    bool byKey_;
    State before_;
    State after_;
};

}  // namespace ringrule
