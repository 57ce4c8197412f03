// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/photo_strip.h"

#include <QImageReader>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QtConcurrent>
#include <algorithm>
#include <array>
#include <cmath>

#include "app/core_text.h"
#include "app/day_text.h"
#include "ringrule/sheets/number_text.h"

namespace ringrule {
namespace {

constexpr double kGap = 8.0;
constexpr double kMostUnitsPerMm = 9.0;
/// Upright animals stand side by side, no taller than this.
constexpr double kTallest = 300.0;
/// As sharp as a dense screen shows it.
constexpr double kPicturePxPerMm = 2.0 * kMostUnitsPerMm;
constexpr double kRoom = 0.06;

struct CutRequest {
    std::filesystem::path original;
    QRectF px;
    QSizeF mm;
};

QImage readCut(const CutRequest& request) {
    QImageReader reader(QString::fromStdString(request.original.string()));
    reader.setAutoTransform(true);
    reader.setDecideFormatFromContent(true);
    const QImage whole = reader.read();
    if (whole.isNull()) return {};
    const QImage cut = whole.copy(request.px.toAlignedRect());
    const int most = static_cast<int>(std::ceil(request.mm.width() * kPicturePxPerMm));
    return cut.width() <= most ? cut : cut.scaledToWidth(most, Qt::SmoothTransformation);
}

/// The longest of 1, 2, 5, 10 … mm that is no longer than `mostMm`.
double roundLength(double mostMm) {
    double length = 1.0;
    for (const double each : std::array{1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0})
        if (each <= mostMm) length = each;
    return length;
}

QRectF boundsOf(const std::vector<PixelPoint>& outline) {
    QPolygonF points;
    for (const PixelPoint& p : outline) points << QPointF(p.x, p.y);
    return points.boundingRect();
}

QString captionOf(const AnimalPhoto& photo) {
    const QString day = dayText(photo.on);
    return photo.lengthMm.known() ? day + '\n' + numberText(photo.lengthMm, "mm") : day;
}

}  // namespace

PhotoStrip::PhotoStrip(QWidget* parent) : QWidget(parent) {
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(&reading_, &QFutureWatcher<QImage>::resultReadyAt, this, [this](int index) {
        if (index < static_cast<int>(pictures_.size()))
            pictures_[static_cast<std::size_t>(index)] = reading_.resultAt(index);
        update();
    });
    connect(&reading_, &QFutureWatcher<QImage>::finished, this, &PhotoStrip::allRead);
}

PhotoStrip::~PhotoStrip() {
    reading_.disconnect(this);
    reading_.cancel();
    reading_.waitForFinished();
}

void PhotoStrip::setPhotos(std::vector<AnimalPhoto> photos) {
    reading_.cancel();
    photos_ = std::move(photos);
    cuts_.clear();
    pictures_.assign(photos_.size(), {});
    QList<CutRequest> requests;
    QStringList words;
    for (const AnimalPhoto& photo : photos_) {
        const QRectF animal = boundsOf(photo.outlinePx);
        const double room = kRoom * std::max(animal.width(), animal.height());
        const QRectF px = animal.adjusted(-room, -room, room, room);
        cuts_.push_back({px, px.size() * photo.mmPerPx});
        requests << CutRequest{photo.original, px, cuts_.back().mm};
        words << captionOf(photo).replace('\n', QStringLiteral(", "));
    }
    setAccessibleDescription(words.join(QStringLiteral("; ")));
    if (!requests.isEmpty()) reading_.setFuture(QtConcurrent::mapped(requests, readCut));
    updateGeometry();
    update();
}

double PhotoStrip::captionWidth() const {
    double wide = 0.0;
    for (const AnimalPhoto& photo : photos_)
        for (const QString& line : captionOf(photo).split('\n'))
            wide = std::max(wide, fontMetrics().horizontalAdvance(line) + kGap);
    return wide;
}

PhotoStrip::Layout PhotoStrip::layoutFor(double width) const {
    Layout layout;
    double widest = 1.0, tallest = 1.0, together = 0.0;
    for (const Cut& cut : cuts_) {
        widest = std::max(widest, cut.mm.width());
        tallest = std::max(tallest, cut.mm.height());
        together += cut.mm.width();
    }
    layout.stacked = widest > 1.3 * tallest;
    const double captions = 2.0 * fontMetrics().lineSpacing() + 2.0;
    const double left = layout.stacked ? captionWidth() : 0.0;
    const double gaps = layout.stacked ? 0.0 : kGap * std::max<double>(0.0, static_cast<double>(cuts_.size()) - 1.0);
    const double room = std::max(40.0, width - left - gaps);
    layout.unitsPerMm = std::min(kMostUnitsPerMm, room / (layout.stacked ? widest : std::max(1.0, together)));
    if (!layout.stacked) layout.unitsPerMm = std::min(layout.unitsPerMm, kTallest / tallest);
    double x = left, y = 0.0;
    for (const Cut& cut : cuts_) {
        const QSizeF size = cut.mm * layout.unitsPerMm;
        if (layout.stacked) {
            const double row = std::max(size.height(), captions);
            layout.places.emplace_back(QPointF(x, y + 0.5 * (row - size.height())), size);
            y += row + kGap;
        } else {
            layout.places.emplace_back(QPointF(x, tallest * layout.unitsPerMm - size.height()), size);
            x += std::max(size.width(), captionWidth()) + kGap;
        }
    }
    if (!layout.stacked) y = tallest * layout.unitsPerMm + captions + kGap;
    layout.height = y + fontMetrics().lineSpacing() + 10.0;
    return layout;
}

QRectF PhotoStrip::placeOf(std::size_t index) const {
    return layoutFor(width()).places[index];
}

double PhotoStrip::unitsPerMm() const {
    return layoutFor(width()).unitsPerMm;
}

QSize PhotoStrip::sizeHint() const {
    return {480, heightForWidth(480)};
}

int PhotoStrip::heightForWidth(int width) const {
    return photos_.empty() ? fontMetrics().lineSpacing() + 8 : static_cast<int>(std::ceil(layoutFor(width).height));
}

void PhotoStrip::paintScaleBar(QPainter& painter, const Layout& layout) const {
    const double lengthMm = roundLength(0.25 * width() / layout.unitsPerMm);
    const double y = layout.height - 6.0, x = layout.places.front().left(), length = lengthMm * layout.unitsPerMm;
    painter.setPen(QPen(palette().color(QPalette::Text), 1.6));
    painter.drawLine(QPointF(x, y), QPointF(x + length, y));
    for (const double end : {x, x + length}) painter.drawLine(QPointF(end, y - 4.0), QPointF(end, y + 3.0));
    painter.drawText(QPointF(x + length + kGap, y + 4.0), tr("%1 mm").arg(lengthMm));
}

void PhotoStrip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
    if (photos_.empty()) {
        painter.setPen(palette().color(QPalette::PlaceholderText));
        painter.drawText(rect(), Qt::AlignLeft | Qt::AlignVCenter, tr("No photo from the side that counts yet."));
        return;
    }
    const Layout layout = layoutFor(width());
    for (std::size_t k = 0; k < photos_.size(); ++k) {
        const QRectF& place = layout.places[k];
        QPainterPath rounded;
        rounded.addRoundedRect(place, 4, 4);
        painter.fillPath(rounded, palette().color(QPalette::AlternateBase));
        if (!pictures_[k].isNull()) {
            painter.save();
            painter.setClipPath(rounded);
            painter.drawImage(place, pictures_[k]);
            painter.restore();
        }
        painter.setPen(palette().color(QPalette::Text));
        const double lines = 2.0 * fontMetrics().lineSpacing() + 2.0;
        const QRectF caption = layout.stacked
                                   ? QRectF(0.0, place.center().y() - 0.5 * lines, place.left() - kGap, lines)
                                   : QRectF(place.left(), place.bottom() + 2.0, captionWidth(), lines);
        painter.drawText(caption, Qt::AlignLeft | (layout.stacked ? Qt::AlignVCenter : Qt::AlignTop),
                         captionOf(photos_[k]));
    }
    paintScaleBar(painter, layout);
}

void PhotoStrip::mouseReleaseEvent(QMouseEvent* event) {
    const Layout layout = layoutFor(width());
    for (std::size_t k = 0; k < photos_.size(); ++k)
        if (layout.places[k].contains(event->position())) {
            emit photoChosen(photos_[k]);
            return;
        }
}

}  // namespace ringrule
