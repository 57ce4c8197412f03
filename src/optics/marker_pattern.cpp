// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/marker_pattern.h"

#include <cstdint>

#include <opencv2/aruco/dictionary.hpp>

#include "optics/dictionary.h"

namespace ringrule {

std::optional<MarkerPattern> markerPattern(std::string_view dictionary, int id) {
    const auto known = markerDictionary(dictionary);
    if (!known || id < 0 || id >= known->markers) return std::nullopt;
    const auto words = cv::aruco::getPredefinedDictionary(known->opencvId);
    const cv::Mat bits = cv::aruco::Dictionary::getBitsFromByteList(words->bytesList.row(id), known->bits);
    MarkerPattern pattern;
    pattern.cells = known->bits + 2;
    for (int row = 0; row < pattern.cells; ++row) {
        for (int column = 0; column < pattern.cells; ++column) {
            const bool border = row == 0 || column == 0 || row == pattern.cells - 1 || column == pattern.cells - 1;
            pattern.ink.push_back(border || bits.at<std::uint8_t>(row - 1, column - 1) == 0);
        }
    }
    return pattern;
}

int markerCount(std::string_view dictionary) {
    const auto known = markerDictionary(dictionary);
    return known ? known->markers : 0;
}

}  // namespace ringrule
