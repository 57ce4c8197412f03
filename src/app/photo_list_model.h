// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractListModel>
#include <vector>

#include "app/collection.h"
#include "app/photo_state.h"

namespace ringrule {

/// The photos of one session with their measures, in the order in which they were added.
class PhotoListModel : public QAbstractListModel {
    Q_OBJECT

public:
    struct Row {
        StoredPhoto photo;
        std::vector<StoredMeasure> measures;  ///< left to right in the photo
        PhotoState state = PhotoState::NotMeasured;
    };

    explicit PhotoListModel(Collection& collection, QObject* parent = nullptr);

    void showSession(std::optional<SessionId> session);
    [[nodiscard]] const Row& row(int row) const { return rows_[static_cast<std::size_t>(row)]; }
    [[nodiscard]] int rowOf(PhotoId photo) const;
    [[nodiscard]] int countOf(PhotoState state) const;
    /// The first row in this state, or −1.
    [[nodiscard]] int firstOf(PhotoState state) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    [[nodiscard]] Row read(const StoredPhoto& photo) const;
    void refresh(PhotoId photo);
    [[nodiscard]] QString titleOf(const Row& row) const;

    Collection& collection_;
    std::vector<Row> rows_;
};

}  // namespace ringrule
