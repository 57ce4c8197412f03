// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/plate.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>

#include <Eigen/Geometry>

#include <opencv2/core.hpp>

#include "optics/broken_corners.h"
#include "optics/dictionary.h"
#include "optics/expected_marker.h"
#include "optics/marker_corners.h"
#include "optics/marker_detection.h"
#include "optics/other_plates.h"
#include "optics/plate_markers.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

// Plate markers may be told with the dictionary's error correction: a wrong id is not where the plate says it is. Cards
// may not: a wrong id is another animal's.
constexpr double kPlateCorrection = 0.6;
// Long side to which a photo is reduced before markers are looked for.
constexpr double kSearchSidePx = 1000.0;

// The dictionary of a box that may have been put together by hand.
MarkerDictionary usableDictionary(const std::string& name) {
    const auto dictionary = markerDictionary(name);
    if (!dictionary) throw Error(ErrorKind::BadBox, "\"" + name + "\" is no marker dictionary of OpenCV's");
    return *dictionary;
}

struct Search {
    std::vector<FoundMarker> all;  // of the plate's dictionary, corners refined
    ConsistentMarkers placed;
    std::vector<Square> squares;  // all others, and markers again: what may be a card
};

struct Searched {
    const cv::Mat& grey;  // at full size
    const Box& box;
    MarkerDictionary dictionary;
    std::optional<PhotoLens> lens;
};

PixelPoint middleOf(const FoundMarker& marker) {
    const auto& c = marker.cornersPx;
    return (c[0] + c[1] + c[2] + c[3]) * 0.25;
}

double sidePx(const FoundMarker& marker) {
    return 0.5 *
           (distance(marker.cornersPx[0], marker.cornersPx[1]) + distance(marker.cornersPx[1], marker.cornersPx[2]));
}

bool seenBefore(const std::vector<FoundMarker>& markers, const FoundMarker& marker) {
    return std::any_of(markers.begin(), markers.end(), [&marker](const FoundMarker& other) {
        return other.id == marker.id && distance(middleOf(other), middleOf(marker)) < 0.5 * sidePx(other);
    });
}

void look(Search& search, const ReducedImage& image, const Searched& in, int windowPx) {
    DetectedSquares found = detectMarkers(image, in.dictionary, {kPlateCorrection, windowPx});
    search.squares.insert(search.squares.end(), found.others.begin(), found.others.end());
    for (const FoundMarker& marker : found.markers) {
        search.squares.push_back(marker.cornersPx);
        if (seenBefore(search.all, marker)) continue;
        if (auto refined = refinedCorners(in.grey, marker, in.dictionary.bits + 2, in.lens))
            search.all.push_back(*refined);
    }
    search.placed = consistentMarkers(search.all, in.box.plate, in.lens);
}

// Markers that were missed looked for where those that were found put them.
void lookWhereExpected(Search& search, const Searched& in) {
    if (!enoughMarkers(search.placed.markers, in.box.plate)) return;
    const std::size_t before = search.all.size();
    for (const PlateMarker& printed : in.box.plate.markers) {
        const auto& placed = search.placed.markers;
        if (std::any_of(placed.begin(), placed.end(), [&](const FoundMarker& m) { return m.id == printed.id; }))
            continue;
        const FoundMarker expected = markerOnPlate(search.placed, printed, in.lens);
        if (const auto found = markerAsExpected(in.grey, expected, in.dictionary, in.lens))
            search.all.push_back(*found);
    }
    if (search.all.size() > before) search.placed = consistentMarkers(search.all, in.box.plate, in.lens);
}

// One window of the threshold finds all markers of most photos and takes half the time of two; noise can break a square
// that the other window keeps whole.
Search searchPlate(const ReducedImage& image, const Searched& in) {
    Search search;
    for (const int windowPx : {13, 27}) {
        look(search, image, in, windowPx);
        if (search.placed.markers.size() == in.box.plate.markers.size()) break;
        lookWhereExpected(search, in);
        if (search.placed.markers.size() == in.box.plate.markers.size()) break;
    }
    return search;
}

// Whether most of the markers with ids of the plate's lie elsewhere than they should: two may agree by chance.
bool contradicts(const Search& search, const PlateLayout& plate) {
    const auto known = std::count_if(search.all.begin(), search.all.end(), [&plate](const FoundMarker& marker) {
        return markerOfPlate(plate, marker.id) != nullptr;
    });
    return known > 2 && 2 * std::ssize(search.placed.markers) < known;
}

bool satisfied(const Search& search, const PlateLayout& plate) {
    return enoughMarkers(search.placed.markers, plate) && 2 * search.placed.markers.size() >= plate.markers.size();
}

// The search repeated at twice the resolution, again and again until the markers fix a scale.
Search searchFiner(Search best, int factor, const Searched& in) {
    while (factor > 1) {
        factor /= 2;
        Search search = searchPlate(reduced(in.grey, factor), in);
        if (search.placed.markers.size() >= best.placed.markers.size()) best = std::move(search);
        if (enoughMarkers(best.placed.markers, in.box.plate)) break;
    }
    return best;
}

// Cards among squares, none twice and none of the plate's own markers, left to right.
std::vector<FoundMarker> cardsAmong(const std::vector<Square>& squares, const ReducedImage& image,
                                    const MarkerDictionary& dictionary, const std::vector<FoundMarker>& plateMarkers) {
    std::vector<FoundMarker> cards;
    for (const Square& square : squares) {
        const auto card = readMarker(image, square, dictionary);
        if (!card) continue;
        const auto clashes = [&](const FoundMarker& other) {
            return distance(middleOf(*card), middleOf(other)) < 0.5 * sidePx(other);
        };
        if (std::none_of(plateMarkers.begin(), plateMarkers.end(), clashes) &&
            std::none_of(cards.begin(), cards.end(), clashes))
            cards.push_back(*card);
    }
    std::sort(cards.begin(), cards.end(),
              [](const FoundMarker& a, const FoundMarker& b) { return middleOf(a).x < middleOf(b).x; });
    return cards;
}

// Cards in the image in which the plate was looked for first or, where cells are few pixels wide there, at twice its
// resolution.
std::vector<FoundMarker> findCards(const Search& coarseSearch, const ReducedImage& coarse, const Searched& in,
                                   const std::vector<FoundMarker>& plateMarkers) {
    const MarkerDictionary dictionary = usableDictionary(in.box.cardDictionary);
    auto cards = cardsAmong(coarseSearch.squares, coarse, dictionary, plateMarkers);
    constexpr double kComfortableSidePx = 48.0;  // leaves a card of half that size 3 px a cell
    if (!cards.empty() || coarse.factor == 1 || sidePx(plateMarkers.front()) >= kComfortableSidePx * coarse.factor)
        return cards;
    const ReducedImage finer = reduced(in.grey, coarse.factor / 2);
    DetectedSquares found = detectMarkers(finer, dictionary);
    for (const FoundMarker& marker : found.markers) found.others.push_back(marker.cornersPx);
    return cardsAmong(found.others, finer, dictionary, plateMarkers);
}

bool looksMirrored(const ReducedImage& image, const Searched& in) {
    ReducedImage mirrored{{}, image.factor};
    cv::Mat mirroredGrey;
    cv::flip(image.grey, mirrored.grey, 1);
    // Blocks were counted from the left; so must they be in the mirrored full image.
    cv::flip(in.grey.colRange(0, image.grey.cols * image.factor), mirroredGrey, 1);
    const Search search = searchPlate(mirrored, {mirroredGrey, in.box, in.dictionary, std::nullopt});
    return search.placed.markers.size() >= 2;
}

Refusal refusalFor(const Search& search, const ReducedImage& image, const Box& box) {
    const std::string wanted = std::to_string(box.plate.markers.size());
    if (search.placed.markers.empty()) {
        if (const auto other = otherMarkersIn(search.squares, image, box))
            return {"plate-other-markers", "The photo shows markers of " + *other + ", the box file's plate has " +
                                               box.plate.dictionary + ". Choose the box file of this plate."};
    }
    if (search.all.empty())
        return {"no-plate",
                "No scale plate was found in the photo. Put the plate behind the animal, in focus and evenly lit."};
    if (contradicts(search, box.plate) || (search.placed.markers.empty() && search.all.size() > 1))
        return {"plate-mismatch",
                "The markers in the photo are not where the box file says. Choose the box file of this plate."};
    return {"too-few-markers", "Only " + std::to_string(std::max<std::size_t>(1, search.placed.markers.size())) +
                                   " of the plate's " + wanted + " markers can be seen. Uncover and clean the plate."};
}

std::array<PixelPoint, 4> plateCorners(const ConsistentMarkers& placed, const PlateLayout& plate,
                                       const std::optional<PhotoLens>& lens) {
    const auto corner = [&](double x, double y) { return pixelOnPlate(placed, {x, y}, lens); };
    return {corner(0.0, 0.0), corner(plate.widthMm, 0.0), corner(plate.widthMm, plate.heightMm),
            corner(0.0, plate.heightMm)};
}

}  // namespace

Outcome<FoundPlate> findPlate(const Photo& photo, const Box& box) {
    const cv::Mat& grey = photo.grey;
    Searched in{grey, box, usableDictionary(box.plate.dictionary), std::nullopt};
    if (box.lens) in.lens = PhotoLens::of(*box.lens, grey.cols, grey.rows, photo.exifOrientation);

    const int coarsest = std::max(1, static_cast<int>(std::lround(std::max(grey.cols, grey.rows) / kSearchSidePx)));
    const ReducedImage coarse = reduced(photo, coarsest);
    const Search first = searchPlate(coarse, in);
    Search best = satisfied(first, box.plate) ? first : searchFiner(first, coarsest, in);
    if (!enoughMarkers(best.placed.markers, box.plate) || contradicts(best, box.plate)) {
        if (looksMirrored(coarse, in))
            return Refusal{"plate-mirrored",
                           "The plate is seen mirrored: through a mirror, from behind, or by a camera that mirrors. "
                           "Photograph it straight on."};
        return refusalFor(best, coarse, box);
    }
    best.placed = withMendedCorners(best.placed, grey, box.plate, in.dictionary, in.lens);
    if (secondPlateIn(best.all, best.placed, box.plate, in.lens))
        return Refusal{"two-plates",
                       "Two scale plates are in the photo. Leave one before the camera, or take away what mirrors it."};

    FoundPlate plate;
    plate.markers = std::move(best.placed.markers);
    plate.cornersPx = plateCorners(best.placed, box.plate, in.lens);
    plate.cornerRmsPx = best.placed.rmsPx;
    plate.exifOrientation = photo.exifOrientation;
    plate.cameraMake = photo.cameraMake;
    plate.cameraModel = photo.cameraModel;
    plate.focalLengthMm = photo.focalLengthMm;
    plate.expectedMarkers = static_cast<int>(box.plate.markers.size());
    plate.cards = findCards(first, coarse, in, plate.markers);
    return plate;
}

}  // namespace ringrule
