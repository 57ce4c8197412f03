// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QImage>
#include <map>
#include <set>
#include <vector>

#include "app/collection.h"
#include "app/job_runner.h"

namespace ringrule {

/// Small pictures of animals, each cut from its newest photo from the side. They are read off the window's thread,
/// those asked for first, and kept until the collection's measures change.
class AnimalPictures : public QObject {
    Q_OBJECT

public:
    explicit AnimalPictures(const Collection& collection, QObject* parent = nullptr);

    /// The animal's picture, or an empty one while it is read or when there is none.
    [[nodiscard]] QImage of(AnimalId animal);
    [[nodiscard]] bool busy() const { return runner_.running() || !wanted_.empty(); }

signals:
    /// Pictures asked for are there.
    void arrived();

private:
    void forget();
    void readWanted();

    const Collection& collection_;
    JobRunner runner_;
    std::map<AnimalId, QImage> known_;
    std::vector<AnimalId> wanted_;
    std::set<AnimalId> asked_;
};

/// The picture of an animal, cut to its outline and at most `widthPx` wide; empty when no side photo of it counts.
[[nodiscard]] QImage smallPictureOf(const Store& store, AnimalId animal, int widthPx);

}  // namespace ringrule
