// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <vector>

#include <opencv2/core.hpp>

#include "optics/dictionary.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/optics/plate.h"

namespace ringrule {

/// A photo at 1/`factor` of its size.
struct ReducedImage {
    cv::Mat grey;
    int factor = 1;
};

/// The photo reduced by averaging whole blocks. A factor of 1 shares the pixels.
[[nodiscard]] ReducedImage reduced(const cv::Mat& grey, int factor);

/// The same of a photo's grey, by way of its halved picture where the factor is even.
[[nodiscard]] ReducedImage reduced(const Photo& photo, int factor);

/// Corners of a dark square in pixels of the full photo, clockwise as seen.
using Square = std::array<PixelPoint, 4>;

/// Dark squares of a reduced image, their corners to about a pixel of it.
struct DetectedSquares {
    std::vector<FoundMarker> markers;  ///< those that bear a marker of the dictionary
    std::vector<Square> others;
};

struct DetectionOptions {
    double errorCorrection = 0.0;  ///< share of the wrong bits that the dictionary could correct which is forgiven
    int windowPx = 13;             ///< of the adaptive threshold
};

/// The dictionary's markers.
[[nodiscard]] DetectedSquares detectMarkers(const ReducedImage& image, const MarkerDictionary& dictionary,
                                            const DetectionOptions& options = {});

/// The marker in a square found before, every bit of it as the dictionary has it, or nothing.
[[nodiscard]] std::optional<FoundMarker> readMarker(const ReducedImage& image, const Square& square,
                                                    const MarkerDictionary& dictionary);

}  // namespace ringrule
