// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/current_box.h"

#include <QDate>
#include <QRegularExpression>
#include <algorithm>

#include "ringrule/husbandry/date.h"
#include "ringrule/workflow/box_checks.h"

namespace ringrule {
namespace {

/// A file name of letters, digits and hyphens out of a box's name.
std::string fileNameOf(const std::string& name) {
    QString text = QString::fromStdString(name).toLower();
    text.replace(QRegularExpression(QStringLiteral("[^\\p{L}\\p{N}]+")), QStringLiteral("-"));
    while (text.startsWith(QLatin1Char('-'))) text.remove(0, 1);
    while (text.endsWith(QLatin1Char('-'))) text.chop(1);
    return (text.isEmpty() ? QStringLiteral("box") : text).toStdString() + ".json";
}

}  // namespace

std::string CurrentBox::machineDay() {
    return QDate::currentDate().toString(Qt::ISODate).toStdString();
}

CurrentBox::CurrentBox(Collection& collection, QObject* parent) : QObject(parent), collection_(collection) {
    connect(&collection_, &Collection::opened, this, [this] { readFiles(); });
    connect(&collection_, &Collection::reloaded, this,
            [this] { readFiles(index_ >= 0 ? file() : std::filesystem::path()); });
    if (collection_.isOpen()) readFiles();
}

void CurrentBox::readFiles(std::filesystem::path chosen) {  // NOLINT(performance-unnecessary-value-param)
    files_ = collection_.boxFiles();
    const auto found =
        std::find_if(files_.begin(), files_.end(), [&](const BoxFile& file) { return file.path == chosen; });
    index_ = files_.empty() ? -1 : found == files_.end() ? 0 : static_cast<int>(found - files_.begin());
    look();
}

void CurrentBox::choose(int index) {
    index_ = index;
    look();
}

void CurrentBox::look() {
    checks_.clear();
    steps_.clear();
    if (index_ >= 0) {
        checks_ = boxHistory(collection_.store(), box().name);
        // A collection may be of a later day than the machine's clock says.
        std::string today = machineDay();
        if (!collection_.sessions().empty()) today = std::max(today, formatDate(collection_.sessions().front().on));
        steps_ = boxSetup(box(), checks_, today);
    }
    emit changed();
}

std::string CurrentBox::cardNumbers() const {
    std::vector<int> numbers;
    for (const auto& [number, name] : cardNames()) numbers.push_back(number);
    std::string text;
    for (std::size_t k = 0; k < numbers.size();) {
        std::size_t last = k;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
        if (!text.empty()) text += ",";
        text += std::to_string(numbers[k]);
        if (last > k) text += "-" + std::to_string(numbers[last]);
        k = last + 1;
    }
    return text;
}

std::map<int, std::string> CurrentBox::cardNames() const {
    std::map<int, std::string> names;
    for (const Animal& animal : collection_.animals())
        if (animal.card) names[*animal.card] = animal.name.empty() ? animal.code : animal.code + " " + animal.name;
    return names;
}

void CurrentBox::make(const NewBox& wanted) {
    const std::filesystem::path path = collection_.calibrationFolder() / fileNameOf(wanted.name);
    PlateSheetOptions sheet = wanted.sheet;
    sheet.boxFile = path.filename().string();
    std::filesystem::create_directories(collection_.calibrationFolder());
    (void)writePlate(boxForPlate(plateLayout(wanted.size), wanted.name), wanted.pdf, path, sheet);
    readFiles(path);
}

void CurrentBox::add(const std::filesystem::path& boxFile) {
    const std::string name = readBox(boxFile).name;
    collection_.keepBox(boxFile);
    readFiles();
    for (std::size_t k = 0; k < files_.size(); ++k)
        if (files_[k].box.name == name) choose(static_cast<int>(k));
}

void CurrentBox::correctPrint(const PrintScale& scale) {
    (void)rescaleBoxFile(file(), scale, machineDay());
    readFiles(file());
}

void CurrentBox::useLens(const FittedLens& fitted) {
    writeLens(fitted.lens, fitted.origin, file(), fitted.covariance);
    readFiles(file());
}

void CurrentBox::setWater(const Media& media) {
    writeMedia(media, file());
    readFiles(file());
}

void CurrentBox::setAnimalPlane(const AnimalPlane& plane) {
    writeAnimalPlane(plane, file());
    readFiles(file());
}

void CurrentBox::keepCheck(const BoxCheckRecord& check) {
    collection_.addBoxCheck(check);
    look();
}

}  // namespace ringrule
