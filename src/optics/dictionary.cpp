// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/dictionary.h"

#include <algorithm>
#include <array>

#include <opencv2/aruco/dictionary.hpp>

namespace ringrule {
namespace {

struct Entry {
    std::string_view name;
    MarkerDictionary dictionary;
};

constexpr std::array kEntries{
    Entry{"DICT_4X4_50", {cv::aruco::DICT_4X4_50, 50, 4}},
    Entry{"DICT_4X4_100", {cv::aruco::DICT_4X4_100, 100, 4}},
    Entry{"DICT_4X4_250", {cv::aruco::DICT_4X4_250, 250, 4}},
    Entry{"DICT_4X4_1000", {cv::aruco::DICT_4X4_1000, 1000, 4}},
    Entry{"DICT_5X5_50", {cv::aruco::DICT_5X5_50, 50, 5}},
    Entry{"DICT_5X5_100", {cv::aruco::DICT_5X5_100, 100, 5}},
    Entry{"DICT_5X5_250", {cv::aruco::DICT_5X5_250, 250, 5}},
    Entry{"DICT_5X5_1000", {cv::aruco::DICT_5X5_1000, 1000, 5}},
    Entry{"DICT_6X6_50", {cv::aruco::DICT_6X6_50, 50, 6}},
    Entry{"DICT_6X6_100", {cv::aruco::DICT_6X6_100, 100, 6}},
    Entry{"DICT_6X6_250", {cv::aruco::DICT_6X6_250, 250, 6}},
    Entry{"DICT_6X6_1000", {cv::aruco::DICT_6X6_1000, 1000, 6}},
    Entry{"DICT_7X7_50", {cv::aruco::DICT_7X7_50, 50, 7}},
    Entry{"DICT_7X7_100", {cv::aruco::DICT_7X7_100, 100, 7}},
    Entry{"DICT_7X7_250", {cv::aruco::DICT_7X7_250, 250, 7}},
    Entry{"DICT_7X7_1000", {cv::aruco::DICT_7X7_1000, 1000, 7}},
};

}  // namespace

std::optional<MarkerDictionary> markerDictionary(std::string_view name) {
    const auto found =
        std::find_if(kEntries.begin(), kEntries.end(), [name](const Entry& e) { return e.name == name; });
    if (found == kEntries.end()) return std::nullopt;
    return found->dictionary;
}

std::vector<std::string_view> markerDictionaryNames() {
    std::vector<std::string_view> names;
    for (const Entry& entry : kEntries) names.push_back(entry.name);
    return names;
}

}  // namespace ringrule
