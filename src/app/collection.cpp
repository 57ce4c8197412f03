// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/collection.h"

#include <algorithm>
#include <tuple>

#include "app/natural_order.h"
#include "ringrule/error.h"
#include "ringrule/workflow/collection_review.h"

namespace ringrule {

void Collection::open(const std::filesystem::path& folder) {
    take(Store::open(folder));
}

void Collection::create(const std::filesystem::path& folder) {
    take(Store::create(folder));
}

void Collection::take(Store store) {
    store_.emplace(std::move(store));
    store_->setKeeper(keeper_.toStdString());
    review_ = {};
    lookBack_.reset();
    undo_.clear();
    readHusbandry();
    emit opened();
    emit reviewChanged();
}

void Collection::setKeeper(const QString& initials) {
    keeper_ = initials;
    if (store_) store_->setKeeper(initials.toStdString());
}

void Collection::reload() {
    readHusbandry();
    emit reloaded();
    emit measuresChanged();
}

void Collection::readHusbandry() {
    animals_ = store_->animals();
    std::stable_sort(animals_.begin(), animals_.end(),
                     [](const Animal& a, const Animal& b) { return naturalLess(a.code, b.code); });
    tanks_ = store_->tanks();
    diets_ = store_->diets();
    sessions_ = store_->sessions();
    std::stable_sort(sessions_.begin(), sessions_.end(),
                     [](const Session& a, const Session& b) { return a.on > b.on; });
}

const Animal* Collection::animal(AnimalId id) const {
    const auto found = std::find_if(animals_.begin(), animals_.end(), [&](const Animal& a) { return a.id == id; });
    return found == animals_.end() ? nullptr : &*found;
}

const Tank* Collection::tank(TankId id) const {
    const auto found = std::find_if(tanks_.begin(), tanks_.end(), [&](const Tank& t) { return t.id == id; });
    return found == tanks_.end() ? nullptr : &*found;
}

QString Collection::dietName(DietId id) const {
    for (const Diet& diet : diets_)
        if (diet.id == id && !diet.name.empty()) return QString::fromStdString(diet.name);
    return dietCode(id);
}

QString Collection::dietCode(DietId id) const {
    for (const Diet& diet : diets_)
        if (diet.id == id) return QString::fromStdString(diet.code);
    return tr("not told");
}

std::optional<AnimalId> Collection::animalOfCard(int card) const {
    const auto found =
        std::find_if(animals_.begin(), animals_.end(), [card](const Animal& a) { return a.card == card; });
    return found == animals_.end() ? std::nullopt : std::optional(found->id);
}

QString Collection::animalCode(std::optional<AnimalId> id) const {
    const Animal* known = id ? animal(*id) : nullptr;
    return known != nullptr ? QString::fromStdString(known->code) : tr("not identified");
}

void Collection::setReview(Review review) {
    setReviews(std::move(review), {});
}

void Collection::setReviews(Review newest, std::optional<Review> lookBack) {
    review_ = std::move(newest);
    lookBack_ = std::move(lookBack);
    emit reviewChanged();
}

std::vector<BoxFile> Collection::boxFiles() const {
    std::vector<BoxFile> files;
    std::error_code none;
    for (const auto& entry : std::filesystem::directory_iterator(calibrationFolder(), none)) {
        if (entry.path().extension() != ".json") continue;
        try {
            files.push_back({entry.path(), readBox(entry.path())});
        } catch (const Error&) {
            // Other JSON may lie beside the boxes; a broken box is reported where one is chosen.
        }
    }
    std::sort(files.begin(), files.end(), [](const BoxFile& a, const BoxFile& b) {
        return std::tie(a.box.name, a.path) < std::tie(b.box.name, b.path);
    });
    return files;
}

std::vector<Box> Collection::boxes() const {
    std::vector<Box> boxes;
    for (BoxFile& file : boxFiles()) boxes.push_back(std::move(file.box));
    return boxes;
}

std::optional<Box> Collection::box(const std::string& name) const {
    for (Box& box : boxes())
        if (box.name == name) return std::move(box);
    return std::nullopt;
}

void Collection::keepBox(const std::filesystem::path& boxFile) {
    keepBoxFile(*store_, boxFile);
}

}  // namespace ringrule
