// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStyledItemDelegate>

namespace ringrule {

/// What a model gives a two-line list beside its display text.
enum TwoLineRole {
    SecondLineRole = Qt::UserRole + 1,
    SignRole,        ///< one or two characters before the text: the sign that does not need colour
    SignColourRole,  ///< QColor
};

/// Draws a list row as a title, a quieter second line and a sign before both.
class TwoLineDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

}  // namespace ringrule
