// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <memory>
#include <optional>

#include "ringrule/outline/empty_box.h"
#include "ringrule/records/store.h"

namespace ringrule {

/// The photo of the empty box that lies in a session folder's sub-folder `empty`, if there is one. Throws
/// `Error(BadUse)` when there are several.
[[nodiscard]] std::optional<std::filesystem::path> emptyBoxPhotoIn(const std::filesystem::path& folder);

/// What a photo of the empty box tells of its plate. Throws `Error(BadPhoto)` when the photo cannot be read or shows no
/// plate.
[[nodiscard]] std::shared_ptr<const EmptyBox> readEmptyBox(const std::filesystem::path& photo, const Box& box);

/// Keeps a copy of the photo in the collection's `calibration/` folder for measuring the session's photos again. Throws
/// `Error(NoSpace)` or `Error(BadStore)`.
void keepEmptyBoxPhoto(const Store& store, SessionId session, const std::filesystem::path& photo);

/// The photo that was kept for a session in the collection at `folder`; absent when none was.
[[nodiscard]] std::optional<std::filesystem::path> emptyBoxPhotoKept(const std::filesystem::path& folder,
                                                                     SessionId session);

}  // namespace ringrule
