// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <functional>
#include <string_view>
#include <vector>

#include "ringrule/error.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/workflow/measure_photo.h"

namespace ringrule {

/// Called with the fraction done and what is being done; returning false stops the run.
using Progress = std::function<bool(double fraction, std::string_view stage)>;

/// A photo to measure and what it shows.
struct PhotoTask {
    std::filesystem::path path;
    View view = View::Side;
};

/// The view that a photo's folder tells by its name ("front", "above", "mirror"); side when it tells none.
[[nodiscard]] View viewOfFolder(const std::filesystem::path& photo);

/// The photos of a session folder in order of name: those in its sub-folders `above`, `front` and `mirror` show that
/// view, all others the side; one in `empty` shows the empty box and is not among them. Throws `Error(BadUse)` when
/// there is none.
[[nodiscard]] std::vector<PhotoTask> photosOfFolder(const std::filesystem::path& folder);

/// A photo's reading, or why it could not be read.
struct PhotoResult {
    PhotoTask task;
    std::optional<PhotoReading> reading;
    std::string errorMessage;
};

/// Called with each photo's result, in order.
using OnResult = std::function<void(const PhotoResult&)>;

/// Measures photos on `jobs` threads (0: one a core), one photo a thread; results in the order of `tasks`. `onResult`,
/// if given, is called in that order as results come in; it and `progress` are called on the calling thread only.
/// Throws `Error(Stopped)` when progress says stop, after the photos being worked on are done.
[[nodiscard]] std::vector<PhotoResult> measurePhotos(const std::vector<PhotoTask>& tasks, const Box& box,
                                                     const PhotoOptions& options, int jobs,
                                                     const Progress& progress = {}, const OnResult& onResult = {});

}  // namespace ringrule
