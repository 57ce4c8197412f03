// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstdlib>
#include <optional>

#include "ringrule/error.h"
#include "ringrule/sheets/plate_sheet.h"
#include "sheets/plate_ruler.h"

namespace ringrule {
namespace {

constexpr std::array kNamedSizes{
    NamedPlateSize{"tray", {100.0, 70.0}, "fry and broods in a tray, up to 30 mm"},
    NamedPlateSize{"small", {150.0, 90.0}, "young animals up to 100 mm"},
    NamedPlateSize{"bench", {200.0, 120.0}, "pipefish up to 150 mm, lying seahorses"},
    NamedPlateSize{"tall", {150.0, 210.0}, "standing seahorses up to 160 mm"},
    NamedPlateSize{"long", {240.0, 110.0}, "pipefish up to 200 mm"},
    NamedPlateSize{"longest", {440.0, 140.0}, "pipefish up to 400 mm, on joined sheets"},
};

constexpr double kMarkerShare = 0.1;  // of the shorter side
constexpr double kSmallestMarkerMm = 7.0;
constexpr double kLargestMarkerMm = 18.0;
constexpr int kMarkersInDictionary = 50;
constexpr int kMostAlongRim = 25;  // two rims use up the dictionary's 50

double tenths(double mm) {
    return std::round(mm * 10.0) / 10.0;
}

std::vector<double> evenly(double from, double to, int count) {
    std::vector<double> places;
    for (int i = 0; i < count; ++i) places.push_back(tenths(from + (to - from) * i / (count - 1)));
    return places;
}

std::optional<double> numberIn(std::string_view text) {
    const std::string copy(text);
    char* end = nullptr;
    const double value = std::strtod(copy.c_str(), &end);
    if (copy.empty() || end != copy.c_str() + copy.size() || !std::isfinite(value)) return std::nullopt;
    return value;
}

[[noreturn]] void refuseSize(std::string_view text, const std::string& why) {
    throw Error(ErrorKind::BadUse, "plate size \"" + std::string(text) + "\" " + why);
}

/// Plates of other sizes carry other markers, so that the box file of one is no match for a photo of another.
int firstMarkerOf(const PlateSize& size, int markers) {
    const int blocks = kMarkersInDictionary / markers;
    const auto sizeNumber = static_cast<int>(std::lround((size.widthMm + 3.0 * size.heightMm) / 10.0)) + 1;
    return sizeNumber % blocks * markers;
}

}  // namespace

std::span<const NamedPlateSize> namedPlateSizes() {
    return kNamedSizes;
}

PlateSize plateSizeOf(std::string_view text) {
    const auto named = std::find_if(kNamedSizes.begin(), kNamedSizes.end(),
                                    [text](const NamedPlateSize& each) { return each.name == text; });
    if (named != kNamedSizes.end()) return named->size;
    const std::size_t by = text.find('x');
    const auto width = numberIn(text.substr(0, by));
    const auto height = by == std::string_view::npos ? std::nullopt : numberIn(text.substr(by + 1));
    if (!width || !height) refuseSize(text, "is neither a name (see --help) nor width x height in mm, as in 200x120");
    for (const double side : {*width, *height})
        if (side < kShortestPlateMm || side > kLongestPlateMm)
            refuseSize(text, "is out of bounds: sides run from 60 to 1000 mm");
    return {*width, *height};
}

PlateLayout plateLayout(const PlateSize& size) {
    const double shorter = std::min(size.widthMm, size.heightMm);
    assert(shorter >= kShortestPlateMm && std::max(size.widthMm, size.heightMm) <= kLongestPlateMm);
    const PlateRuler ruler(shorter);
    PlateLayout plate{"DICT_4X4_50", size.widthMm, size.heightMm, {}};
    const double side = std::round(2.0 * std::clamp(kMarkerShare * shorter, kSmallestMarkerMm, kLargestMarkerMm)) / 2.0;
    const double half = 0.5 * side;
    const double rim = side / 3.0;  // two cells of quiet
    const double left = ruler.stripMm() + half, right = size.widthMm - rim - half;
    const double top = rim + half, bottom = size.heightMm - ruler.stripMm() - half;
    const bool wide = size.widthMm >= size.heightMm;
    const double span = wide ? right - left : bottom - top;
    const double step = std::max(0.5 * shorter, 3.0 * side);
    const int along = std::clamp(static_cast<int>(std::lround(span / step)) + 1, 3, kMostAlongRim);
    int id = firstMarkerOf(size, 2 * along);
    for (const double y : evenly(top, bottom, wide ? 2 : along))
        for (const double x : evenly(left, right, wide ? along : 2)) plate.markers.push_back({id++, {x, y}, side});
    return plate;
}

Box boxForPlate(const PlateLayout& plate, const std::string& name) {
    Box box;
    box.name = name;
    box.plate = plate;
    box.cardDictionary = "DICT_5X5_1000";
    // Between the plate's face and twice this before it: the larger the plate, the larger the animals it is for.
    const double middle = std::round(std::clamp(0.07 * std::min(plate.widthMm, plate.heightMm), 3.0, 12.0));
    box.animalPlane = {middle, middle};
    return box;
}

}  // namespace ringrule
