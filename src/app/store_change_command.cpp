// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/store_change_command.h"

#include "ringrule/error.h"

namespace ringrule {

std::vector<std::int64_t> linesWritten(Store& store, const std::function<void()>& body) {
    std::vector<std::int64_t> lines;
    // Nobody else writes between the two looks at the log: both are inside the transaction.
    store.together([&] {
        const std::int64_t before = store.newestChange();
        body();
        for (std::int64_t line = before + 1; line <= store.newestChange(); ++line) lines.push_back(line);
    });
    return lines;
}

StoreChangeCommand::StoreChangeCommand(Collection& collection, const QString& words, std::vector<std::int64_t> lines,
                                       std::optional<PhotoId> photo)
    : QUndoCommand(words), collection_(collection), lines_(std::move(lines)), photo_(photo) {}

void StoreChangeCommand::takeBack() {
    try {
        lines_ = linesWritten(*collection_.store_, [this] {
            for (auto line = lines_.rbegin(); line != lines_.rend(); ++line) collection_.store_->undo(*line);
        });
    } catch (const Error& error) {
        setObsolete(true);
        emit collection_.problem(QString::fromStdString(error.what()));
        return;
    }
    collection_.changedBackTo(text(), photo_);
}

void StoreChangeCommand::undo() {
    takeBack();
}

void StoreChangeCommand::redo() {
    if (made_) takeBack();
    made_ = true;
}

}  // namespace ringrule
