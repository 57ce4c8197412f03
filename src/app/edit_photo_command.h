// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QUndoCommand>

#include "app/photo_draft.h"

namespace ringrule {

/// One correction of a photo: its animals before and after, by value.
class EditPhotoCommand : public QUndoCommand {
public:
    /// Commands that follow each other with the same `mergeKey` become one; 0 merges with nothing.
    EditPhotoCommand(PhotoDraft& draft, const QString& words, DraftState before, DraftState after, int mergeKey);

    void undo() override;
    void redo() override;
    [[nodiscard]] int id() const override { return 1; }
    bool mergeWith(const QUndoCommand* other) override;

private:
    PhotoDraft& draft_;
    DraftState before_;
    DraftState after_;
    int mergeKey_;
};

}  // namespace ringrule
