// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/animal_row_delegate.h"

#include <QApplication>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>

#include "app/animal_table_model.h"

namespace ringrule {
namespace {

constexpr int kPictureWidth = 78;
constexpr int kLineWidth = 86;
constexpr int kInset = 12;
/// Lengths that differ by less than this part are drawn as good as level: what photos scatter is no growth.
constexpr double kLeastSpan = 0.15;

}  // namespace

AnimalRowDelegate::AnimalRowDelegate(const Collection& collection, AnimalPictures& pictures, QObject* parent)
    : QStyledItemDelegate(parent), collection_(collection), pictures_(pictures) {}

QSize AnimalRowDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    if (index.column() == AnimalTableModel::Code) size.rwidth() += kPictureWidth + kInset;
    if (index.column() == AnimalTableModel::Growth) size.setWidth(kLineWidth + 2 * kInset);
    return size;
}

void AnimalRowDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    if (index.column() == AnimalTableModel::Growth) {
        QStyledItemDelegate::paint(painter, option, index);
        const auto lengths = index.data(AnimalTableModel::kLineRole).value<QPolygonF>();
        paintLine(*painter, QRectF(option.rect).adjusted(kInset, 5, -kInset, -6), lengths,
                  option.palette.color(QPalette::Text));
        return;
    }
    if (index.column() != AnimalTableModel::Code) {
        QStyledItemDelegate::paint(painter, option, index);
        return;
    }
    QStyleOptionViewItem blank = option;
    initStyleOption(&blank, index);
    const QString code = blank.text;
    blank.text.clear();
    QApplication::style()->drawControl(QStyle::CE_ItemViewItem, &blank, painter, option.widget);
    painter->save();
    painter->setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
    const QRectF room(option.rect.left() + kInset, option.rect.top() + 2.0, kPictureWidth, option.rect.height() - 5.0);
    const QImage picture = pictures_.of(AnimalId{index.data(AnimalTableModel::kAnimalRole).toLongLong()});
    if (!picture.isNull()) {
        QRectF place(QPointF(), QSizeF(picture.size()).scaled(room.size(), Qt::KeepAspectRatio));
        place.moveCenter(room.center());
        QPainterPath rounded;
        rounded.addRoundedRect(place, 3, 3);
        painter->setClipPath(rounded);
        painter->drawImage(place, picture);
        painter->setClipping(false);
    }
    painter->setPen(option.palette.color(QPalette::Text));
    painter->setFont(option.font);
    painter->drawText(option.rect.adjusted(kPictureWidth + 2 * kInset, 0, -4, -2), Qt::AlignVCenter | Qt::AlignLeft,
                      code);
    painter->restore();
}

void AnimalRowDelegate::paintLine(QPainter& painter, const QRectF& room, const QPolygonF& lengths,
                                  const QColor& ink) const {
    const auto& days = collection_.review().days;
    if (lengths.size() < 2 || days.size() < 2) return;
    const double first = static_cast<double>(days.back().time_since_epoch().count());
    const double last = static_cast<double>(days.front().time_since_epoch().count());
    double low = lengths.front().y(), high = low;
    for (const QPointF& p : lengths) {
        low = std::min(low, p.y());
        high = std::max(high, p.y());
    }
    const double span = std::max(high - low, kLeastSpan * high), middle = 0.5 * (low + high);
    QPolygonF line;
    for (const QPointF& p : lengths)
        line << QPointF(room.left() + room.width() * (p.x() - first) / (last - first),
                        room.center().y() - room.height() * (p.y() - middle) / span);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(ink, 1.3));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(line);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawEllipse(line.back(), 2.2, 2.2);
    painter.restore();
}

}  // namespace ringrule
