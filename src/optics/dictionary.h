// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace ringrule {

/// One of OpenCV's predefined sets of square markers.
struct MarkerDictionary {
    int opencvId = -1;  ///< cv::aruco::PREDEFINED_DICTIONARY_NAME
    int markers = 0;    ///< ids run from 0 to markers − 1
    int bits = 0;       ///< data cells along a side; the black border adds one on each
};

/// The set of that name as OpenCV spells it, e.g. "DICT_4X4_50", or nothing.
[[nodiscard]] std::optional<MarkerDictionary> markerDictionary(std::string_view name);

/// Names of all sets, those with few data cells first, of these those with few markers first. The markers of a set begin
/// those of every larger one with as many cells.
[[nodiscard]] std::vector<std::string_view> markerDictionaryNames();

}  // namespace ringrule
