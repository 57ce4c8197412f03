// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/other_plates.h"

#include <algorithm>
#include <cstddef>
#include <set>

namespace ringrule {
namespace {

constexpr std::size_t kFewestMarkers = 3;  // fewer may be read by chance

// Ids of the markers of a dictionary in the squares, each once.
std::set<int> idsIn(const std::vector<Square>& squares, const ReducedImage& image, const MarkerDictionary& dictionary) {
    std::set<int> ids;
    for (const Square& square : squares) {
        if (const auto marker = readMarker(image, square, dictionary)) ids.insert(marker->id);
    }
    return ids;
}

bool sameMarker(const FoundMarker& a, const FoundMarker& b) {
    return a.id == b.id && distance(a.cornersPx[0], b.cornersPx[0]) < 0.5 * distance(b.cornersPx[0], b.cornersPx[1]);
}

}  // namespace

bool secondPlateIn(const std::vector<FoundMarker>& all, const ConsistentMarkers& placed, const PlateLayout& plate,
                   const std::optional<PhotoLens>& lens) {
    std::vector<FoundMarker> rest;
    for (const FoundMarker& marker : all) {
        const bool first = std::any_of(placed.markers.begin(), placed.markers.end(),
                                       [&marker](const FoundMarker& other) { return sameMarker(marker, other); });
        if (!first) rest.push_back(marker);
    }
    const auto second = consistentMarkers(rest, plate, lens).markers;
    const auto shared = std::count_if(second.begin(), second.end(), [&placed](const FoundMarker& marker) {
        return std::any_of(placed.markers.begin(), placed.markers.end(),
                           [&marker](const FoundMarker& other) { return other.id == marker.id; });
    });
    return second.size() >= kFewestMarkers || shared >= 2;
}

std::optional<std::string> otherMarkersIn(const std::vector<Square>& squares, const ReducedImage& image,
                                          const Box& box) {
    const auto own = markerDictionary(box.plate.dictionary), cards = markerDictionary(box.cardDictionary);
    for (const std::string_view name : markerDictionaryNames()) {
        const auto dictionary = markerDictionary(name);
        if (!own || dictionary->bits == own->bits || (cards && dictionary->bits == cards->bits)) continue;
        // The first set that has as many of them as the largest of its family is the one they were made with.
        const auto ids = idsIn(squares, image, *dictionary);
        if (ids.size() < kFewestMarkers) continue;
        const std::string largest = std::string(name.substr(0, name.rfind('_'))) + "_1000";
        if (ids.size() == idsIn(squares, image, *markerDictionary(largest)).size()) return std::string(name);
    }
    return std::nullopt;
}

}  // namespace ringrule
