// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "optics/dictionary.h"
#include "ringrule/optics/plate.h"

namespace ringrule {

/// A photo at 1/`factor` of its size.
struct ReducedImage {
    cv::Mat grey;
    int factor = 1;
};

/// The photo reduced by averaging whole blocks. A factor of 1 shares the pixels.
[[nodiscard]] ReducedImage reduced(const cv::Mat& grey, int factor);

struct DetectionOptions {
    /// Share of the dictionary's own error correction that is used: none where a wrong id would do harm.
    double errorCorrection = 0.0;
};

/// The dictionary's markers in a reduced image, in pixels of the full photo, to about a pixel of the reduced one.
[[nodiscard]] std::vector<FoundMarker> detectMarkers(const ReducedImage& image, const MarkerDictionary& dictionary,
                                                     const DetectionOptions& options = {});

}  // namespace ringrule
