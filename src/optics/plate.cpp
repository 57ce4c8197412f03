// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/plate.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>

#include <Eigen/Geometry>

#include <opencv2/core.hpp>

#include "optics/dictionary.h"
#include "optics/marker_corners.h"
#include "optics/marker_detection.h"
#include "optics/plate_markers.h"

namespace ringrule {
namespace {

// Plate markers may be told with the dictionary's error correction: a wrong id is not where the plate says it is.
constexpr DetectionOptions kPlateDetection{0.6};
// Long side to which a photo is reduced before markers are looked for.
constexpr double kSearchSidePx = 1000.0;

struct Search {
    std::vector<FoundMarker> all;  // of the plate's dictionary, corners refined
    ConsistentMarkers placed;
};

Search searchPlate(const ReducedImage& image, const cv::Mat& grey, const Box& box, const MarkerDictionary& dictionary,
                   const std::optional<PhotoLens>& lens) {
    Search search;
    for (const FoundMarker& marker : detectMarkers(image, dictionary, kPlateDetection))
        if (auto refined = refinedCorners(grey, marker, dictionary.bits + 2, lens)) search.all.push_back(*refined);
    search.placed = consistentMarkers(search.all, box.plate, lens);
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
Search searchFiner(Search best, int factor, const cv::Mat& grey, const Box& box, const MarkerDictionary& dictionary,
                   const std::optional<PhotoLens>& lens) {
    while (factor > 1) {
        factor /= 2;
        Search search = searchPlate(reduced(grey, factor), grey, box, dictionary, lens);
        if (search.placed.markers.size() >= best.placed.markers.size()) best = std::move(search);
        if (enoughMarkers(best.placed.markers, box.plate)) break;
    }
    return best;
}

PixelPoint middleOf(const FoundMarker& marker) {
    const auto& c = marker.cornersPx;
    return (c[0] + c[1] + c[2] + c[3]) * 0.25;
}

double sidePx(const FoundMarker& marker) {
    return 0.5 * (distance(marker.cornersPx[0], marker.cornersPx[1]) + distance(marker.cornersPx[1], marker.cornersPx[2]));
}

std::vector<FoundMarker> findCards(const ReducedImage& image, const MarkerDictionary& dictionary,
                                   const std::vector<FoundMarker>& plateMarkers) {
    std::vector<FoundMarker> cards;
    const auto tooNear = [](const FoundMarker& a, const FoundMarker& b) {
        return distance(middleOf(a), middleOf(b)) < 0.5 * sidePx(b);
    };
    for (const FoundMarker& card : detectMarkers(image, dictionary)) {
        const auto clashes = [&](const FoundMarker& other) { return tooNear(card, other); };
        if (std::any_of(plateMarkers.begin(), plateMarkers.end(), clashes)) continue;
        if (std::any_of(cards.begin(), cards.end(), clashes)) continue;
        cards.push_back(card);
    }
    std::sort(cards.begin(), cards.end(),
              [](const FoundMarker& a, const FoundMarker& b) { return middleOf(a).x < middleOf(b).x; });
    return cards;
}

// Cards in the image in which the plate was found or, where its cells are few pixels wide there, at twice the resolution.
std::vector<FoundMarker> cardsOf(const ReducedImage& coarse, const cv::Mat& grey, const MarkerDictionary& dictionary,
                                 const std::vector<FoundMarker>& plateMarkers) {
    auto cards = findCards(coarse, dictionary, plateMarkers);
    constexpr double kComfortableSidePx = 48.0;  // leaves a card of half that size 3 px a cell
    const bool small = sidePx(plateMarkers.front()) < kComfortableSidePx * coarse.factor;
    if (cards.empty() && small && coarse.factor > 1)
        cards = findCards(reduced(grey, coarse.factor / 2), dictionary, plateMarkers);
    return cards;
}

bool looksMirrored(const ReducedImage& image, const cv::Mat& grey, const Box& box, const MarkerDictionary& dictionary) {
    ReducedImage mirrored{{}, image.factor};
    cv::Mat mirroredGrey;
    cv::flip(image.grey, mirrored.grey, 1);
    // Blocks were counted from the left; so must they be in the mirrored full image.
    cv::flip(grey.colRange(0, image.grey.cols * image.factor), mirroredGrey, 1);
    const Search search = searchPlate(mirrored, mirroredGrey, box, dictionary, std::nullopt);
    return search.placed.markers.size() >= 2;
}

Refusal refusalFor(const Search& search, const Box& box) {
    const std::string wanted = std::to_string(box.plate.markers.size());
    if (search.all.empty())
        return {"no-plate", "No scale plate was found in the photo. Put the plate behind the animal, in focus and evenly lit."};
    if (contradicts(search, box.plate) || (search.placed.markers.empty() && search.all.size() > 1))
        return {"plate-mismatch",
                "The markers in the photo are not where the box file says. Choose the box file of this plate."};
    return {"too-few-markers", "Only " + std::to_string(std::max<std::size_t>(1, search.placed.markers.size())) +
                                   " of the plate's " + wanted + " markers can be seen. Uncover and clean the plate."};
}

std::array<PixelPoint, 4> plateCorners(const ConsistentMarkers& placed, const PlateLayout& plate,
                                       const std::optional<PhotoLens>& lens) {
    const std::array<Eigen::Vector2d, 4> cornersMm{Eigen::Vector2d{0.0, 0.0},
                                                   {plate.widthMm, 0.0},
                                                   {plate.widthMm, plate.heightMm},
                                                   {0.0, plate.heightMm}};
    std::array<PixelPoint, 4> corners;
    for (std::size_t k = 0; k < 4; ++k) {
        const Eigen::Vector2d at = (placed.imageFromPlate * cornersMm[k].homogeneous()).hnormalized();
        corners[k] = lens ? lens->pixelFromRay(at) : PixelPoint{at.x(), at.y()};
    }
    return corners;
}

}  // namespace

Outcome<FoundPlate> findPlate(const Photo& photo, const Box& box) {
    const cv::Mat& grey = photo.grey;
    const MarkerDictionary plateDictionary = *markerDictionary(box.plate.dictionary);
    std::optional<PhotoLens> lens;
    if (box.lens) lens = PhotoLens::of(*box.lens, grey.cols, grey.rows, photo.exifOrientation);

    const int coarsest = std::max(1, static_cast<int>(std::lround(std::max(grey.cols, grey.rows) / kSearchSidePx)));
    const ReducedImage coarse = reduced(grey, coarsest);
    Search best = searchPlate(coarse, grey, box, plateDictionary, lens);
    if (!satisfied(best, box.plate)) best = searchFiner(std::move(best), coarsest, grey, box, plateDictionary, lens);
    if (!enoughMarkers(best.placed.markers, box.plate) || contradicts(best, box.plate)) {
        if (looksMirrored(coarse, grey, box, plateDictionary))
            return Refusal{"plate-mirrored", "The photo is mirrored. Switch off mirroring in the camera and repeat."};
        return refusalFor(best, box);
    }

    FoundPlate plate;
    plate.markers = std::move(best.placed.markers);
    plate.cornersPx = plateCorners(best.placed, box.plate, lens);
    plate.cornerRmsPx = best.placed.rmsPx;
    plate.expectedMarkers = static_cast<int>(box.plate.markers.size());
    plate.cards = cardsOf(coarse, grey, *markerDictionary(box.cardDictionary), plate.markers);
    return plate;
}

}  // namespace ringrule
