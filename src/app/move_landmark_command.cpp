// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/move_landmark_command.h"

#include <QCoreApplication>

#include "ringrule/sheets/landmark_mark.h"

namespace ringrule {

MoveLandmarkCommand::MoveLandmarkCommand(PhotoDraft& draft, std::size_t index, LandmarkName name, bool byKey,
                                         State before, State after)
    : draft_(draft), index_(index), name_(name), byKey_(byKey), before_(std::move(before)), after_(std::move(after)) {
    const std::string_view words = landmarkWords(name);
    setText(QCoreApplication::translate("MoveLandmarkCommand", "move of %1")
                .arg(QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()))));
}

void MoveLandmarkCommand::undo() {
    draft_.setAnimal(index_, before_.animal, before_.changed);
}

void MoveLandmarkCommand::redo() {
    draft_.setAnimal(index_, after_.animal, after_.changed);
}

bool MoveLandmarkCommand::mergeWith(const QUndoCommand* other) {
    const auto* next = dynamic_cast<const MoveLandmarkCommand*>(other);
    if (next == nullptr || !byKey_ || !next->byKey_ || next->index_ != index_ || next->name_ != name_) return false;
    after_ = next->after_;
    return true;
}

}  // namespace ringrule
