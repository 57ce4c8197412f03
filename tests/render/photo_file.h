// SPDX-License-Identifier: GPL-3.0-or-later
// Writes a rendered photo as a JPEG file with a camera's usual notes (EXIF).
#pragma once

#include <filesystem>
#include <opencv2/core.hpp>
#include <string>

namespace render {

struct PhotoNotes {
    std::string takenAt;  // 2031-01-06T08:40:05; empty: no date is written
    int orientation = 1;  // 1, 3, 6 or 8
    int jpegQuality = 80;
};

// `upright` is turned as the orientation asks before it is stored. Throws
// std::runtime_error when the file cannot be written.
void writePhoto(const cv::Mat3b& upright, const PhotoNotes& notes, const std::filesystem::path& file);

}  // namespace render
