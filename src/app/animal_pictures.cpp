// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/animal_pictures.h"

#include <QImageReader>
#include <QPolygonF>
#include <algorithm>

#include "app/animal_photos.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

/// As wide as a dense screen shows it.
constexpr int kWidthPx = 168;
constexpr std::size_t kAtOnce = 12;

using Picture = std::pair<AnimalId, QImage>;

}  // namespace

QImage smallPictureOf(const Store& store, AnimalId animal, int widthPx) {
    const std::vector<AnimalPhoto> photos = sidePhotosOf(store, animal);
    if (photos.empty()) return {};
    QPolygonF outline;
    for (const PixelPoint& p : photos.back().outlinePx) outline << QPointF(p.x, p.y);
    QRectF bounds = outline.boundingRect();
    const double room = 0.06 * std::max(bounds.width(), bounds.height());
    bounds.adjust(-room, -room, room, room);
    QImageReader reader(QString::fromStdString(photos.back().original.string()));
    reader.setAutoTransform(true);
    reader.setDecideFormatFromContent(true);
    const QSize whole = reader.size();
    // A JPEG is read at a half, quarter or eighth at once, which is much quicker than whole.
    int part = 1;
    while (part < 8 && bounds.width() / (2.0 * part) >= widthPx) part *= 2;
    if (whole.isValid()) reader.setScaledSize(whole / part);
    const QImage picture = reader.read();
    if (picture.isNull()) return {};
    const double scale = whole.isValid() ? 1.0 / part : 1.0;
    const QImage cut =
        picture.copy(QRectF(bounds.topLeft() * scale, bounds.size() * scale).toAlignedRect() & picture.rect());
    return cut.width() > widthPx ? cut.scaledToWidth(widthPx, Qt::SmoothTransformation) : cut;
}

AnimalPictures::AnimalPictures(const Collection& collection, QObject* parent)
    : QObject(parent), collection_(collection) {
    connect(&collection, &Collection::opened, this, &AnimalPictures::forget);
    connect(&collection, &Collection::reloaded, this, &AnimalPictures::forget);
    connect(&collection, &Collection::photoChanged, this, &AnimalPictures::forget);
    connect(&runner_, &JobRunner::finished, this, &AnimalPictures::readWanted);
}

void AnimalPictures::forget() {
    known_.clear();
    wanted_.clear();
    asked_.clear();
}

QImage AnimalPictures::of(AnimalId animal) {
    const auto found = known_.find(animal);
    if (found != known_.end()) return found->second;
    if (asked_.insert(animal).second) {
        wanted_.push_back(animal);
        // After the painting that asked for it.
        if (wanted_.size() == 1) QMetaObject::invokeMethod(this, &AnimalPictures::readWanted, Qt::QueuedConnection);
    }
    return {};
}

void AnimalPictures::readWanted() {
    if (runner_.running() || wanted_.empty() || !collection_.isOpen()) return;
    const std::size_t count = std::min(kAtOnce, wanted_.size());
    const std::vector<AnimalId> some(wanted_.begin(), wanted_.begin() + static_cast<std::ptrdiff_t>(count));
    wanted_.erase(wanted_.begin(), wanted_.begin() + static_cast<std::ptrdiff_t>(count));
    const std::filesystem::path folder = collection_.folder();
    runner_.start<std::vector<Picture>>(
        tr("Reading the photo"),
        [folder, some](const Progress&) {
            std::vector<Picture> pictures;
            const Store store = Store::open(folder);
            for (const AnimalId animal : some) pictures.emplace_back(animal, smallPictureOf(store, animal, kWidthPx));
            return pictures;
        },
        [this, folder](const std::vector<Picture>& pictures) {
            if (!collection_.isOpen() || folder != collection_.folder()) return;
            for (const Picture& picture : pictures)
                if (asked_.contains(picture.first)) known_.insert(picture);
            emit arrived();
        });
}

}  // namespace ringrule
