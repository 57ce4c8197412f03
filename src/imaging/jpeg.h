// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include <opencv2/core.hpp>

namespace ringrule {

enum class JpegState { Whole, CutShort, Damaged };

/// What a JPEG holds before its pixels are decoded. `state` is `CutShort` when the file ends before the image does.
struct JpegLayout {
    JpegState state = JpegState::Damaged;
    int widthPx = 0;
    int heightPx = 0;
    std::span<const unsigned char> exif;  ///< the TIFF structure inside the EXIF segment, or empty
};

/// The layout of JPEG bytes, found by walking from marker to marker (ITU-T T.81, annex B).
[[nodiscard]] JpegLayout readJpegLayout(std::span<const unsigned char> bytes);

struct JpegPixels {
    JpegState state = JpegState::Damaged;
    cv::Mat grey;  ///< CV_8UC1, as stored
};

/// The luminance of JPEG bytes. OpenCV's reader fills what is missing with grey and only prints a warning, so the
/// decoder is asked here itself whether the coded data lasted to the end.
[[nodiscard]] JpegPixels decodeJpegGrey(std::span<const unsigned char> bytes);

struct JpegChroma {
    cv::Mat cb;  ///< CV_8UC1, as stored: often at half the photo's resolution
    cv::Mat cr;
};

/// The two colour differences of JPEG bytes (ITU-T T.871) without their luminance; empty when they are stored otherwise
/// or damaged.
[[nodiscard]] JpegChroma decodeJpegChroma(std::span<const unsigned char> bytes);

}  // namespace ringrule
