// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStyledItemDelegate>

#include "app/animal_pictures.h"

namespace ringrule {

/// A row of the list of animals: a small picture before the code, a small line of length over time.
class AnimalRowDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    AnimalRowDelegate(const Collection& collection, AnimalPictures& pictures, QObject* parent = nullptr);

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    void paintLine(QPainter& painter, const QRectF& room, const QPolygonF& lengths, const QColor& ink) const;

    const Collection& collection_;
    AnimalPictures& pictures_;
};

}  // namespace ringrule
