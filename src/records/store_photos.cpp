// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cctype>

#include "records/photo_files.h"
#include "records/record_rows.h"
#include "records/statement.h"
#include "records/store_state.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

constexpr const char* kPhotoColumns =
    "id, session, content_hash, original_name, taken_at, width_px, height_px, view, fed_before";

std::string storedName(const std::string& contentHash, const fs::path& original) {
    std::string ending = original.extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return contentHash + ending;
}

StoredPhoto readPhoto(Statement& row) {
    StoredPhoto photo;
    photo.id = row.id<PhotoId>();
    photo.session = row.id<SessionId>();
    photo.contentHash = row.text();
    photo.originalName = row.text();
    photo.takenAt = row.text();
    photo.widthPx = row.smallNumber();
    photo.heightPx = row.smallNumber();
    photo.view = viewFromName(row.text()).value_or(View::Side);
    if (const auto fed = row.numberOrNone()) photo.fedBefore = *fed != 0;
    return photo;
}

/// Puts the original in its place unless it is there already. Whether a file was added.
bool keepOriginal(const fs::path& original, const fs::path& target, const std::string& contentHash) {
    if (fs::exists(target)) {
        if (contentHashOf(target) == contentHash) return false;
        throw Error(ErrorKind::BadStore, "this photo of the collection is damaged; restore it from a backup",
                    target.string());
    }
    copyOriginal(original, target, contentHash);
    return true;
}

}  // namespace

PhotoId Store::addPhoto(const StoredPhoto& photo, const fs::path& original) {
    const std::string hash = contentHashOf(original);
    if (!photo.contentHash.empty() && photo.contentHash != hash) {
        throw Error(ErrorKind::BadPhoto, "changed since it was measured; measure it again", original.string());
    }
    const std::string name = storedName(hash, original);
    PhotoId id;
    together([&] {
        Statement known(state_->database, "SELECT id, stored_name FROM photo WHERE content_hash = ?");
        const bool duplicate = known.bind(hash).run().next();
        if (duplicate) id = known.id<PhotoId>();
        const fs::path target = state_->folder / "photos" / (duplicate ? known.text() : name);
        if (keepOriginal(original, target, hash)) state_->copied.back().push_back(target);
        if (duplicate) return;
        id.value = nextNumber(state_->database, "photo");
        Statement(state_->database,
                  "INSERT INTO photo (id, session, content_hash, stored_name, original_name, taken_at, width_px, "
                  "height_px, view, fed_before) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
            .bind(id)
            .bind(photo.session)
            .bind(hash)
            .bind(name)
            .bind(photo.originalName.empty() ? original.filename().string() : photo.originalName)
            .bind(photo.takenAt)
            .bind(photo.widthPx)
            .bind(photo.heightPx)
            .bind(std::string(viewName(photo.view)))
            .bind(photo.fedBefore)
            .run();
    });
    return id;
}

std::vector<Session> Store::sessions() const {
    Statement rows(state_->database, "SELECT id, on_day, keeper, box_name, folder FROM session ORDER BY on_day, id");
    rows.run();
    std::vector<Session> all;
    while (rows.next()) all.push_back({rows.id<SessionId>(), rows.date(), rows.text(), rows.text(), rows.text()});
    return all;
}

std::vector<StoredPhoto> Store::photos(SessionId session) const {
    Statement rows(state_->database,
                   std::string("SELECT ") + kPhotoColumns + " FROM photo WHERE session = ? ORDER BY original_name, id");
    rows.bind(session).run();
    std::vector<StoredPhoto> all;
    while (rows.next()) all.push_back(readPhoto(rows));
    return all;
}

std::optional<StoredPhoto> Store::photoWithHash(const std::string& contentHash) const {
    Statement row(state_->database, std::string("SELECT ") + kPhotoColumns + " FROM photo WHERE content_hash = ?");
    if (!row.bind(contentHash).run().next()) return std::nullopt;
    return readPhoto(row);
}

fs::path Store::originalOf(const StoredPhoto& photo) const {
    Statement row(state_->database, "SELECT stored_name FROM photo WHERE id = ?");
    if (!row.bind(photo.id).run().next()) throw Error(ErrorKind::BadStore, "there is no such photo in this collection");
    return state_->folder / "photos" / row.text();
}

}  // namespace ringrule
