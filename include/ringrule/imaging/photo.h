// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include <opencv2/core.hpp>

namespace ringrule {

struct PhotoLimits {
    std::int64_t maxFileBytes = 200LL * 1024 * 1024;
    std::int64_t maxPixels = 120LL * 1000 * 1000;
    int minSidePx = 64;
};

/// A photograph as Ringrule uses it: grey pixels upright by its EXIF orientation, with what the file says of itself.
struct Photo {
    std::filesystem::path path;
    std::string contentHash;             ///< SHA-256 of the file, lower-case hexadecimal
    std::optional<std::string> takenAt;  ///< EXIF DateTimeOriginal as "YYYY-MM-DDTHH:MM:SS", local time of the camera
    std::string cameraMake;
    std::string cameraModel;
    std::optional<double> focalLengthMm{};  ///< EXIF FocalLength: of the lens, or of that one of a phone's cameras
    int exifOrientation = 1;
    cv::Mat grey;                        ///< CV_8UC1, upright
    cv::Mat halfGrey;                    ///< `grey` halved, means of 2 × 2 pixels; may be empty in a photo made by hand
    std::vector<unsigned char> encoded;  ///< the file's bytes, kept so that colour can be decoded when it is needed
};

/// The photo in `path`: JPEG, PNG or TIFF, told by its content and not by its name. Throws `Error(BadPhoto)` for a file
/// that is missing, too large, not a photo, damaged or cut short.
[[nodiscard]] Photo loadPhoto(const std::filesystem::path& path, const PhotoLimits& limits = {});

/// The same photo in colour (CV_8UC3, BGR), upright.
[[nodiscard]] cv::Mat decodeColour(const Photo& photo);

/// A photo's colour beside its grey values: how far blue and red lie above them, 128 for no colour (ITU-T T.871, where
/// blue is grey + 1.772 (cb − 128) and red is grey + 1.402 (cr − 128)).
struct Chroma {
    cv::Mat cb;  ///< CV_8UC1, upright, at the resolution stored: mostly half the photo's, a side rounded up
    cv::Mat cr;
};

/// The colour alone, a third of the work of decoding everything; 128 all over when the photo holds none. Throws
/// `Error(BadPhoto)` when the file cannot be decoded.
[[nodiscard]] Chroma decodeChroma(const Photo& photo);

}  // namespace ringrule
