// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/edit_photo_command.h"

namespace ringrule {

EditPhotoCommand::EditPhotoCommand(PhotoDraft& draft, const QString& words, DraftState before, DraftState after,
                                   int mergeKey)
    : QUndoCommand(words), draft_(draft), before_(std::move(before)), after_(std::move(after)), mergeKey_(mergeKey) {}

void EditPhotoCommand::undo() {
    draft_.setState(before_);
}

void EditPhotoCommand::redo() {
    draft_.setState(after_);
}

bool EditPhotoCommand::mergeWith(const QUndoCommand* other) {
    const auto* next = dynamic_cast<const EditPhotoCommand*>(other);
    if (next == nullptr || mergeKey_ == 0 || next->mergeKey_ != mergeKey_) return false;
    after_ = next->after_;
    return true;
}

}  // namespace ringrule
