// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/two_line_delegate.h"

#include <QPainter>

namespace ringrule {
namespace {
constexpr int kPadding = 10;
constexpr int kSignWidth = 30;
constexpr int kLineGap = 3;

/// The sign's own colour, lighter on dark ground.
QColor signInk(const QStyleOptionViewItem& option, const QModelIndex& index) {
    const auto ink = index.data(SignColourRole).value<QColor>();
    if (!ink.isValid()) return option.palette.color(QPalette::Text);
    return option.palette.color(QPalette::Base).lightness() < 128 ? ink.lighter(150) : ink;
}

}  // namespace

QSize TwoLineDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const {
    return {160, 2 * option.fontMetrics.height() + kLineGap + 2 * kPadding - 2};
}

void TwoLineDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    const QRect row = option.rect.adjusted(2, 1, -2, -1);
    if (selected || option.state.testFlag(QStyle::State_MouseOver)) {
        QColor ground = option.palette.color(QPalette::Highlight);
        ground.setAlpha(selected ? 42 : 18);
        painter->setPen(Qt::NoPen);
        painter->setBrush(ground);
        painter->drawRoundedRect(row, 5, 5);
    }
    if (selected) {
        painter->setPen(Qt::NoPen);
        painter->setBrush(option.palette.color(QPalette::Highlight));
        painter->drawRoundedRect(QRect(row.left(), row.top() + 6, 3, row.height() - 12), 1.5, 1.5);
    }
    const QRect sign(row.left() + kPadding - 2, row.top(), kSignWidth - 6, row.height());
    painter->setPen(signInk(option, index));
    QFont signFont = option.font;
    signFont.setPixelSize(qRound(1.35 * QFontInfo(option.font).pixelSize()));
    painter->setFont(signFont);
    painter->drawText(sign, Qt::AlignCenter, index.data(SignRole).toString());

    const int lineHeight = option.fontMetrics.height();
    const QRect text = row.adjusted(kPadding + kSignWidth - 4, kPadding - 2, -kPadding, 0);
    QFont first = option.font;
    first.setWeight(QFont::DemiBold);
    painter->setFont(first);
    painter->setPen(option.palette.color(QPalette::Text));
    painter->drawText(
        QRect(text.left(), text.top(), text.width(), lineHeight), Qt::AlignLeft | Qt::AlignVCenter,
        QFontMetrics(first).elidedText(index.data(Qt::DisplayRole).toString(), Qt::ElideRight, text.width()));
    painter->setFont(option.font);
    painter->setPen(option.palette.color(QPalette::PlaceholderText));
    painter->drawText(
        QRect(text.left(), text.top() + lineHeight + kLineGap, text.width(), lineHeight),
        Qt::AlignLeft | Qt::AlignVCenter,
        option.fontMetrics.elidedText(index.data(SecondLineRole).toString(), Qt::ElideRight, text.width()));
    painter->restore();
}

}  // namespace ringrule
