// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/plate_markers.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <Eigen/Geometry>

#include "ringrule/geometry/plane_map.h"

namespace ringrule {
namespace {

// A found marker beside its place on the plate; image points are pixels, or a lens's rays times its focal length.
struct Pairing {
    const FoundMarker* found = nullptr;
    std::array<Eigen::Vector2d, 4> plate;
    std::array<Eigen::Vector2d, 4> image;
    double sidePx = 0.0;
};

std::vector<Pairing> pairings(const std::vector<FoundMarker>& found, const PlateLayout& plate,
                              const std::optional<PhotoLens>& lens) {
    std::vector<Pairing> pairs;
    for (const FoundMarker& marker : found) {
        const PlateMarker* printed = markerOfPlate(plate, marker.id);
        if (printed == nullptr) continue;
        Pairing pair;
        pair.found = &marker;
        const auto corners = markerCornersMm(*printed);
        for (std::size_t k = 0; k < 4; ++k) {
            const PixelPoint p = marker.cornersPx[k];
            pair.plate[k] = {corners[k].x, corners[k].y};
            pair.image[k] = lens ? Eigen::Vector2d(lens->rayFromPixel(p) * lens->focalPx()) : Eigen::Vector2d(p.x, p.y);
            pair.sidePx += 0.25 * distance(p, marker.cornersPx[(k + 1) % 4]);
        }
        pairs.push_back(pair);
    }
    return pairs;
}

std::optional<Eigen::Matrix3d> homographyOf(const std::vector<const Pairing*>& pairs) {
    std::vector<Eigen::Vector2d> plate, image;
    for (const Pairing* pair : pairs) {
        plate.insert(plate.end(), pair->plate.begin(), pair->plate.end());
        image.insert(image.end(), pair->image.begin(), pair->image.end());
    }
    return fitHomography(plate, image);
}

double squaredMiss(const Eigen::Matrix3d& imageFromPlate, const Pairing& pair) {
    double sum = 0.0;
    for (std::size_t k = 0; k < 4; ++k)
        sum += ((imageFromPlate * pair.plate[k].homogeneous()).hnormalized() - pair.image[k]).squaredNorm();
    return sum;
}

std::vector<const Pairing*> agreeing(const std::vector<Pairing>& pairs, const Eigen::Matrix3d& imageFromPlate) {
    std::vector<const Pairing*> inPlace;
    for (const Pairing& pair : pairs) {
        const bool near = std::sqrt(0.25 * squaredMiss(imageFromPlate, pair)) < 0.25 * pair.sidePx;
        const bool idTaken = std::any_of(inPlace.begin(), inPlace.end(),
                                         [&](const Pairing* other) { return other->found->id == pair.found->id; });
        if (near && !idTaken) inPlace.push_back(&pair);
    }
    return inPlace;
}

std::vector<const Pairing*> largestAgreement(const std::vector<Pairing>& pairs) {
    std::vector<const Pairing*> best;
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        for (std::size_t j = i + 1; j < pairs.size(); ++j) {
            if (best.size() == pairs.size()) return best;
            const auto map = homographyOf({&pairs[i], &pairs[j]});
            if (!map) continue;
            auto inPlace = agreeing(pairs, *map);
            if (inPlace.size() > best.size()) best = std::move(inPlace);
        }
    }
    return best;
}

}  // namespace

std::array<PlatePoint, 4> markerCornersMm(const PlateMarker& marker) {
    const double half = 0.5 * marker.sideMm;
    const PlatePoint c = marker.centreMm;
    return {PlatePoint{c.x - half, c.y - half},
            {c.x + half, c.y - half},
            {c.x + half, c.y + half},
            {c.x - half, c.y + half}};
}

const PlateMarker* markerOfPlate(const PlateLayout& plate, int id) {
    const auto found = std::find_if(plate.markers.begin(), plate.markers.end(),
                                    [id](const PlateMarker& marker) { return marker.id == id; });
    return found == plate.markers.end() ? nullptr : &*found;
}

ConsistentMarkers consistentMarkers(const std::vector<FoundMarker>& found, const PlateLayout& plate,
                                    const std::optional<PhotoLens>& lens) {
    ConsistentMarkers result;
    const auto pairs = pairings(found, plate, lens);
    auto inPlace = largestAgreement(pairs);
    if (inPlace.size() < 2) return result;
    if (const auto map = homographyOf(inPlace)) inPlace = agreeing(pairs, *map);
    const auto map = inPlace.size() < 2 ? std::nullopt : homographyOf(inPlace);
    if (!map) return result;
    double sum = 0.0;
    for (const Pairing* pair : inPlace) {
        sum += squaredMiss(*map, *pair);
        result.markers.push_back(*pair->found);
    }
    result.rmsPx = std::sqrt(sum / (4.0 * static_cast<double>(inPlace.size())));
    const double unit = lens ? 1.0 / lens->focalPx() : 1.0;
    result.imageFromPlate = Eigen::Vector3d(unit, unit, 1.0).asDiagonal() * *map;
    return result;
}

PixelPoint pixelOnPlate(const ConsistentMarkers& placed, PlatePoint atMm, const std::optional<PhotoLens>& lens) {
    const Eigen::Vector3d homogeneous = placed.imageFromPlate * Eigen::Vector3d(atMm.x, atMm.y, 1.0);
    const Eigen::Vector2d at = homogeneous.hnormalized();
    return lens ? lens->pixelFromRay(at) : PixelPoint{at.x(), at.y()};
}

FoundMarker markerOnPlate(const ConsistentMarkers& placed, const PlateMarker& printed,
                          const std::optional<PhotoLens>& lens) {
    FoundMarker marker{printed.id, {}};
    const auto cornersMm = markerCornersMm(printed);
    for (std::size_t k = 0; k < 4; ++k) marker.cornersPx[k] = pixelOnPlate(placed, cornersMm[k], lens);
    return marker;
}

bool enoughMarkers(const std::vector<FoundMarker>& markers, const PlateLayout& plate) {
    if (markers.size() != 2) return markers.size() > 2;
    const PlateMarker* a = markerOfPlate(plate, markers[0].id);
    const PlateMarker* b = markerOfPlate(plate, markers[1].id);
    return a != nullptr && b != nullptr &&
           distance(a->centreMm, b->centreMm) >= 0.5 * std::hypot(plate.widthMm, plate.heightMm);
}

}  // namespace ringrule
