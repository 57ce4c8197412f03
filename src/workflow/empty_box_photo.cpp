// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/empty_box_photo.h"

#include <string>

#include "records/durable_file.h"
#include "ringrule/error.h"
#include "ringrule/workflow/measure_session.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

constexpr const char* kFolder = "empty";

/// What is kept for a session, without its ending.
std::string stemFor(SessionId session) {
    return "empty-box-session-" + std::to_string(session.value);
}

}  // namespace

std::optional<fs::path> emptyBoxPhotoIn(const fs::path& folder) {
    const fs::path place = folder / kFolder;
    if (std::error_code none; !fs::is_directory(place, none)) return std::nullopt;
    const std::vector<PhotoTask> photos = photosOfFolder(place);
    if (photos.size() > 1)
        throw Error(ErrorKind::BadUse, "holds several photos of the empty box; leave the one that was taken for this session",
                    place.string());
    return photos.front().path;
}

std::shared_ptr<const EmptyBox> readEmptyBox(const fs::path& path, const Box& box) {
    const Photo photo = loadPhoto(path);
    const auto refuse = [&](const Refusal& refusal) -> Error {
        return {ErrorKind::BadPhoto, "cannot serve as photo of the empty box. " + refusal.sentence, path.string()};
    };
    const auto plate = findPlate(photo, box);
    if (!plate) throw refuse(plate.refusal());
    const auto scale = Scale::fromPlate(box, plate.value(), photo.grey.cols, photo.grey.rows);
    if (!scale) throw refuse(scale.refusal());
    const auto empty = EmptyBox::fromPhoto(photo, box, plate.value(), scale.value());
    if (!empty) throw refuse(empty.refusal());
    return std::make_shared<const EmptyBox>(empty.value());
}

void keepEmptyBoxPhoto(const Store& store, SessionId session, const fs::path& photo) {
    const fs::path folder = store.folder() / "calibration";
    std::error_code ignored;
    fs::create_directories(folder, ignored);
    copyWhole(photo, folder / (stemFor(session) + photo.extension().string()));
}

std::optional<fs::path> emptyBoxPhotoKept(const fs::path& folder, SessionId session) {
    std::error_code none;
    for (const auto& entry : fs::directory_iterator(folder / "calibration", none)) {
        if (entry.path().stem() == stemFor(session)) return entry.path();
    }
    return std::nullopt;
}

}  // namespace ringrule
