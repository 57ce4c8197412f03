// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QBuffer>
#include <QByteArray>
#include <QPainter>
#include <QPdfWriter>
#include <filesystem>
#include <utility>
#include <vector>

#include "ringrule/sheets/paper.h"

namespace ringrule {

/// Pages of one PDF document, drawn in millimetres from each page's top-left corner, at true scale.
class PaperPages {
public:
    explicit PaperPages(const QString& title);

    /// Begins a page; what is painted from now on stands on it.
    void begin(Paper paper, bool landscape);
    [[nodiscard]] QPainter& painter() { return painter_; }

    /// The document. No page can follow.
    [[nodiscard]] QByteArray finished();

private:
    QByteArray bytes_;
    QBuffer buffer_;
    QPdfWriter writer_;
    QPainter painter_;
};

/// Writes all files or, but for a disk that fails at the last moment, none; each whole or as it was. Throws
/// `Error(NoSpace)`.
void writeTogether(const std::vector<std::pair<std::filesystem::path, QByteArray>>& files);

}  // namespace ringrule
