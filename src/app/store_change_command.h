// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QUndoCommand>
#include <cstdint>
#include <optional>
#include <vector>

#include "app/collection.h"

namespace ringrule {

/// A change of the collection, known by the lines it wrote in the change log. Undo takes them back, the last first, and
/// writes lines of its own, which redo takes back in turn: so the log says all that ever happened. A change that cannot
/// be taken back (somebody changed it again meanwhile) says so and is forgotten.
class StoreChangeCommand : public QUndoCommand {
public:
    StoreChangeCommand(Collection& collection, const QString& words, std::vector<std::int64_t> lines,
                       std::optional<PhotoId> photo);
    void undo() override;
    void redo() override;

private:
    void takeBack();

    Collection& collection_;
    std::vector<std::int64_t> lines_;
    std::optional<PhotoId> photo_;
    bool made_ = false;  ///< the first `redo` is the change itself, which was made already
};

/// Runs `body` in one transaction; the numbers of the lines it wrote in the change log.
[[nodiscard]] std::vector<std::int64_t> linesWritten(Store& store, const std::function<void()>& body);

}  // namespace ringrule
