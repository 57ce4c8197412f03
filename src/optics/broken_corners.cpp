// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/broken_corners.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include <Eigen/Dense>

#include "optics/expected_marker.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {
namespace {

constexpr double kFarOffPx = 0.8;     // of a marker's corners, root mean square, and …
constexpr double kFarOffTimes = 4.0;  // … this much more than the markers' median
constexpr double kMostBentPx = 0.6;   // of corners against a square's, and …
constexpr double kMostBent = 0.006;   // … of its side

double missPx(const FoundMarker& found, const FoundMarker& expected) {
    double squares = 0.0;
    for (std::size_t k = 0; k < 4; ++k) squares += std::pow(distance(found.cornersPx[k], expected.cornersPx[k]), 2);
    return std::sqrt(0.25 * squares);
}

// What is left of the miss once the expected marker is shifted, turned and scaled to the found one. An edge off by d
// leaves d / 4.
double bentPx(const FoundMarker& found, const FoundMarker& expected) {
    Eigen::Matrix<double, 8, 4> terms;
    Eigen::Matrix<double, 8, 1> misses;
    for (std::size_t k = 0; k < 4; ++k) {
        const auto row = static_cast<Eigen::Index>(2 * k);
        const PixelPoint e = expected.cornersPx[k] - expected.cornersPx[0],
                         d = found.cornersPx[k] - expected.cornersPx[k];
        terms.row(row) << 1.0, 0.0, e.x, -e.y;
        terms.row(row + 1) << 0.0, 1.0, e.y, e.x;
        misses(row) = d.x;
        misses(row + 1) = d.y;
    }
    const Eigen::Vector4d fit = terms.colPivHouseholderQr().solve(misses);
    return 0.5 * (misses - terms * fit).norm();
}

std::optional<FoundMarker> expectedByOthers(const FoundMarker& marker, const std::vector<FoundMarker>& all,
                                            const PlateLayout& plate, const std::optional<PhotoLens>& lens) {
    std::vector<FoundMarker> others = all;
    std::erase_if(others, [&marker](const FoundMarker& other) { return other.id == marker.id; });
    const ConsistentMarkers placed = consistentMarkers(others, plate, lens);
    const PlateMarker* printed = markerOfPlate(plate, marker.id);
    if (placed.markers.size() < 3 || printed == nullptr) return std::nullopt;
    return markerOnPlate(placed, *printed, lens);
}

}  // namespace

ConsistentMarkers withMendedCorners(const ConsistentMarkers& placed, const cv::Mat& grey, const PlateLayout& plate,
                                    const MarkerDictionary& dictionary, const std::optional<PhotoLens>& lens) {
    if (placed.markers.size() < 4) return placed;
    std::vector<double> misses;
    for (const FoundMarker& marker : placed.markers)
        misses.push_back(missPx(marker, markerOnPlate(placed, *markerOfPlate(plate, marker.id), lens)));
    const double limit = std::max(kFarOffPx, kFarOffTimes * median(misses));
    if (*std::max_element(misses.begin(), misses.end()) <= limit) return placed;

    std::vector<FoundMarker> kept;
    for (std::size_t i = 0; i < placed.markers.size(); ++i) {
        FoundMarker marker = placed.markers[i];
        const auto expected =
            misses[i] > 0.5 * limit ? expectedByOthers(marker, placed.markers, plate, lens) : std::nullopt;
        if (expected && missPx(marker, *expected) > limit) {
            const auto again = markerAsExpected(grey, *expected, dictionary, lens);
            if (again && missPx(*again, *expected) < missPx(marker, *expected)) marker = *again;
            const double side = distance(marker.cornersPx[0], marker.cornersPx[2]) / std::sqrt(2.0);
            if (bentPx(marker, *expected) > std::max(kMostBentPx, kMostBent * side)) continue;
        }
        kept.push_back(marker);
    }
    return consistentMarkers(kept, plate, lens);
}

}  // namespace ringrule
