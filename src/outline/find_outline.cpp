// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/outline/find_outline.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

#include "outline/background.h"
#include "outline/bridge.h"
#include "outline/colour_picture.h"
#include "outline/dark_plate.h"
#include "outline/eye_gap.h"
#include "outline/picture.h"
#include "outline/pieces.h"
#include "outline/plate_region.h"
#include "outline/reduced.h"
#include "outline/refine.h"
#include "outline/silhouette.h"
#include "outline/tone.h"
#include "ringrule/geometry/polygon.h"

namespace ringrule {
namespace {

constexpr double kUsualPlateMm = 200.0;  ///< width of plate that suits every length in this layer said in mm
constexpr double kCoarsePxPerMm = 3.2;   ///< enough to find a juvenile of 2 mm depth
constexpr double kFinePxPerMm = 9.0;     ///< enough for its tail
constexpr double kFineHalfPx = 24.0;  ///< an animal is contoured with its greatest half-width at least this many pixels
constexpr double kStepInHalfWidths = 0.06;  ///< between boundary points
constexpr double kLeastStepPx = 1.2;
constexpr double kPaleContrast = 0.45;  ///< below this grey may follow a mark on a pale animal and not its edge
constexpr double kEyeMm2 = 40.0;        ///< eyes of the largest animals, and what of their shade hangs on them
constexpr std::size_t kDarkSpots = 3;   ///< of a pale head seen from the front: two eyes and the mouth
constexpr double kMuchLarger = 1.08;    ///< colour is believed when it sees this much more of the animal …
constexpr double kAsLarge = 0.92;       ///< … or about as much of it …
constexpr double kFarShorter = 0.75;    ///< … within a border this much shorter: grey sees it in tatters
constexpr double kDarkPlate = 0.03;     ///< light of the plate: photos darker than this are noise …
constexpr double kClippedPlate = 0.97;  ///< … and lighter than this have lost their whites
constexpr double kEyeMm = 4.0;          ///< widest gap that an eye or a pale band makes between parts of one animal
constexpr double kLongestStepPx = 2.0;  ///< the tail's tip is only a few pixels wide at any scale

/// Pixels in a millimetre, and on a small plate in as small a part of the plate: there not only the animals but print,
/// debris and the reach of a shadow are small.
double pxPerMmOf(const Box& box, const Scale& scale) {
    const PlatePoint middle{0.5 * box.plate.widthMm, 0.5 * box.plate.heightMm};
    return std::min(1.0, box.plate.widthMm / kUsualPlateMm) / scale.mmPerPx(scale.pixelFromPlate(middle));
}

int factorFor(double pxPerMm, double wanted) {
    return std::max(1, static_cast<int>(std::lround(pxPerMm / wanted)));
}

/// The boundary turned so that the body lies on the right hand of the walk: outer boundaries clockwise as seen.
std::vector<PixelPoint> turned(std::vector<PixelPoint> contour, bool hole) {
    if ((signedArea<PixelFrame>(contour) < 0.0) != hole) std::reverse(contour.begin(), contour.end());
    return contour;
}

/// A level of `tone` in the edge's tone.
double levelForEdges(const Picture& picture, double level) {
    if (&picture.tone == &picture.edgeTone) return level;
    const auto& of = picture.tone.lightOf;
    const auto nearest = std::min_element(of.begin(), of.end(), [level](float a, float b) {
        return std::abs(static_cast<double>(a) - level) < std::abs(static_cast<double>(b) - level);
    });
    return static_cast<double>(picture.edgeTone.lightOf[static_cast<std::size_t>(nearest - of.begin())]);
}

/// Whether the lesser of two parts faces the other with an end, as a snout does, and not with a side.
bool facesWithEnd(const Bridged& whole, double pxPerMm) {
    return whole.facingPx <= 0.5 * whole.bridgesPx + 2.0 * kEyeMm * pxPerMm;
}

/// One animal traced at full resolution; no boundary when it vanished on a closer look.
Outline traceAnimal(const Picture& picture, const Silhouette& silhouette, double halfWidthPx, double pxPerMm) {
    const cv::Mat& grey = picture.grey;
    const Tone& tone = picture.edgeTone;
    RefineOptions options;
    const double longest = std::clamp(kLeastStepPx * pxPerMm / kFinePxPerMm, kLeastStepPx, kLongestStepPx);
    options.stepPx = std::clamp(kStepInHalfWidths * halfWidthPx, kLeastStepPx, longest);
    options.startBlurPx = std::clamp(0.09 * pxPerMm, 0.9, 1.8);
    options.contourLagPx = 0.5 * silhouette.stepPx;
    options.inside = levelForEdges(picture, silhouette.inside);
    options.outside = levelForEdges(picture, silhouette.outside);
    options.shadedRim = picture.paleBody;
    const RefinedBoundary outer = refineBoundary(grey, tone, turned(silhouette.outerPx, false), options);
    Outline outline;
    outline.boundaryPx = outer.pointsPx;
    outline.edgeBlurPx = outer.blurPx;
    outline.edgeSdPx = outer.sdPx;
    outline.areaPx2 = signedArea<PixelFrame>(outline.boundaryPx);
    for (const auto& hole : silhouette.holesPx) {
        outline.holesPx.push_back(refineBoundary(grey, tone, turned(hole, true), options).pointsPx);
        outline.areaPx2 += signedArea<PixelFrame>(outline.holesPx.back());
    }
    if (outer.foundShare < 0.85) outline.remarks.push_back(Remark::OutlineDoubtful);
    for (const auto& partPx : silhouette.partsPx) {
        Outline part;
        part.boundaryPx = refineBoundary(grey, tone, turned(partPx, false), options).pointsPx;
        auto whole = bridged(outline, part, kEyeMm * pxPerMm);
        if (whole && (!picture.paleBody || facesWithEnd(*whole, pxPerMm))) {
            outline = std::move(whole->outline);
        } else {
            outline.remarks.push_back(Remark::OutlineDoubtful);
        }
    }
    return outline;
}

/// One animal as it shows at the picture's own threshold, not yet traced.
struct Shown {
    Silhouette silhouette;
    double halfWidthPx = 0.0;
    bool atEdge = false;
};

/// All that shows in one picture of the plate: the photo's grey, or its colour.
struct Search {
    std::vector<Shown> shown;
    std::vector<Outline> outlines;  ///< once they are traced
    double contrast = 0.0;          ///< of the largest animal's edge, share of the plate's light
    double largestMm2 = 0.0;
    double borderMm = 0.0;  ///< length of the largest animal's border, with that of the gaps in it
    double inside = 0.0;    ///< light of the largest animal near its edge …
    double outside = 1.0;   ///< … and of the plate beside it
    bool plateSeen = false;
};

/// Where dark eyes part or pierce pale animals in the reduced picture.
cv::Mat1b eyesIn(const cv::Mat1f& ratio, const PlateRegion& region, double threshold) {
    cv::Mat1b body;
    cv::compare(ratio, threshold, body, cv::CMP_LT);
    cv::bitwise_and(body, region.plate, body);
    body.setTo(0, region.marks);
    body.setTo(0, region.rim);
    cv::Mat1f depth;
    cv::distanceTransform(body, depth, cv::DIST_L2, 3);
    double halfWidthPx = 0.0;
    cv::minMaxLoc(depth, nullptr, &halfWidthPx);
    constexpr double kLeastRadiusPx = 1.0;  // this picture only says what belongs together
    const cv::Mat1b none(body.size(), static_cast<unsigned char>(0));
    const cv::Mat1b eyes = fillEyes(body, none, halfWidthPx, kLeastRadiusPx);
    cv::Mat1b all;
    cv::bitwise_or(eyes, snoutBridges(body, halfWidthPx), all);
    return all;
}

/// With its parts and without the gaps in it.
double areaPx2(const Silhouette& silhouette) {
    double area = std::abs(signedArea<PixelFrame>(silhouette.outerPx));
    for (const auto& part : silhouette.partsPx) area += std::abs(signedArea<PixelFrame>(part));
    for (const auto& hole : silhouette.holesPx) area -= std::abs(signedArea<PixelFrame>(hole));
    return area;
}

double borderPx(const Silhouette& silhouette) {
    double length = perimeter<PixelFrame>(silhouette.outerPx);
    for (const auto& part : silhouette.partsPx) length += perimeter<PixelFrame>(part);
    for (const auto& hole : silhouette.holesPx) length += perimeter<PixelFrame>(hole);
    return length;
}

Background plateLight(const Reduced& coarse, const PlateRegion& region) {
    cv::Mat1b usable = region.plate.clone();
    usable.setTo(0, region.marks);
    return fitBackground(coarse.light, usable);
}

Search searchIn(const Picture& picture, const Reduced& coarse, const Background& background, const PlateRegion& region,
                double pxPerMm, const OutlineOptions& options) {
    Search search;
    search.plateSeen = background.fitted;
    if (!background.fitted) return search;
    cv::Mat1f ratio = dividedBy(coarse.light, background);
    const double threshold = edgeThreshold(ratio, region, background.relativeSd);
    if (threshold <= 0.0) return search;
    if (picture.paleBody) ratio.setTo(0.0F, eyesIn(ratio, region, threshold));
    const Pieces pieces = findPieces(ratio, region, threshold, pxPerMm / coarse.factor, options.smallestAnimalMm2);
    for (const Piece& piece : pieces.animals) {
        Shown shown;
        shown.halfWidthPx = piece.halfWidthMm * pxPerMm;
        shown.atEdge = piece.atEdge;
        const int factor =
            std::clamp(static_cast<int>(shown.halfWidthPx / kFineHalfPx), 1, factorFor(pxPerMm, kFinePxPerMm));
        shown.silhouette = findSilhouette(picture, coarse, region, pieces, piece, factor, pxPerMm);
        if (!shown.silhouette.found) continue;
        const double areaMm2 = areaPx2(shown.silhouette) / (pxPerMm * pxPerMm);
        if (areaMm2 > search.largestMm2) {
            search.largestMm2 = areaMm2;
            search.borderMm = borderPx(shown.silhouette) / pxPerMm;
            search.inside = levelForEdges(picture, shown.silhouette.inside);
            search.outside = levelForEdges(picture, shown.silhouette.outside);
            search.contrast = 1.0 - search.inside / std::max(search.outside, 1e-6);
        }
        search.shown.push_back(std::move(shown));
    }
    return search;
}

/// Traces what was found in `picture`; what is too small after all is dropped.
void trace(const Picture& picture, double pxPerMm, const OutlineOptions& options, Search& search) {
    const bool photographed = &picture.tone == &photoTone();
    for (const Shown& shown : search.shown) {
        const Silhouette& silhouette = shown.silhouette;
        Outline outline = traceAnimal(picture, silhouette, shown.halfWidthPx, pxPerMm);
        if (outline.areaPx2 < options.smallestAnimalMm2 * pxPerMm * pxPerMm) continue;
        if (silhouette.cut) outline.remarks.push_back(Remark::OutlineDoubtful);
        if (silhouette.glare) outline.remarks.push_back(Remark::Glare);
        if (photographed && (silhouette.outside < kDarkPlate || silhouette.outside > kClippedPlate))
            outline.remarks.push_back(Remark::BadExposure);
        if (shown.atEdge) outline.remarks.push_back(Remark::CutOff);
        search.outlines.push_back(std::move(outline));
    }
    search.shown.clear();
}

Search tracedIn(const Picture& picture, const Reduced& coarse, const PlateRegion& region, double pxPerMm,
                const OutlineOptions& options) {
    Search search = searchIn(picture, coarse, plateLight(coarse, region), region, pxPerMm, options);
    trace(picture, pxPerMm, options, search);
    return search;
}

/// Whether the grey picture may have missed an animal as light as the plate, or seen only its eye or its shaded belly.
bool showsLittle(const Search& search) {
    const auto few = search.shown.size() + search.outlines.size() <= kDarkSpots;
    return search.contrast < kPaleContrast || (few && search.largestMm2 < kEyeMm2);
}

/// Whether it shows nothing, or nothing that can be trusted.
bool leavesDoubt(const Search& search) {
    const auto& all = search.outlines;
    const auto largest = std::max_element(all.begin(), all.end(),
                                          [](const Outline& a, const Outline& b) { return a.areaPx2 < b.areaPx2; });
    if (largest == all.end()) return true;
    const auto& remarks = largest->remarks;
    return std::find(remarks.begin(), remarks.end(), Remark::OutlineDoubtful) != remarks.end();
}

/// JPEG keeps colours at half the photo's resolution, and skin differs in colour more than in light: edges seen in
/// colour alone scatter by this much more, on rendered photos.
constexpr double kColourEdgePx = 0.8;

constexpr double kMuchSmaller = 0.25;  ///< of the other search's largest animal: specks before a dark plate
constexpr double kSnoutShare = 0.25;   ///< of the smallest animal: the snout of one, beyond its eye
constexpr double kLeastOfTwo = 0.45;   ///< contrast of animal and plate in light, whichever is the paler

/// A round body is darker toward its rim, which before a dark plate draws the edge inward: by 0.3 to 0.4 px on rendered
/// photos.
constexpr double kShadedRimPx = 0.7;

/// Parts of one animal that its dark eye takes apart before a dark plate, put together: the lesser faces the other with
/// an end, not with a side.
void joinAcrossEyes(std::vector<Outline>& outlines, double smallestPx2, double pxPerMm) {
    for (std::size_t i = 0; i < outlines.size(); ++i) {
        for (std::size_t j = 0; j < outlines.size(); ++j) {
            if (i == j || outlines[i].areaPx2 < smallestPx2) continue;
            if (outlines[j].areaPx2 > 0.5 * outlines[i].areaPx2) continue;
            auto whole = bridged(outlines[i], outlines[j], kEyeMm * pxPerMm);
            if (!whole || !facesWithEnd(*whole, pxPerMm)) continue;
            outlines[i] = std::move(whole->outline);
            outlines.erase(outlines.begin() + static_cast<std::ptrdiff_t>(j));
            i = 0, j = 0;
        }
    }
}

/// Before a dark plate: animals paler than it, or else those still darker than it. Nothing when neither stands out.
Search searchBeforeDark(const Photo& photo, const Reduced& coarse, const PlateRegion& region, double pxPerMm,
                        const OutlineOptions& options) {
    const PlateRegion patched = withWhitePatches(coarse, region);
    const UpturnedTones tones = upturnedTones(coarse, patched);
    const cv::Rect part(coarse.originPx, coarse.light.size() * coarse.factor);
    const Reduced upturned = reducedLight(photo.grey, tones.ratio, part, coarse.factor);
    OutlineOptions parts = options;
    parts.smallestAnimalMm2 *= kSnoutShare;
    Search pale = tracedIn({photo.grey, tones.ratio, tones.difference, true}, upturned, patched, pxPerMm, parts);
    Search dark = tracedIn({photo.grey, photoTone(), photoTone()}, coarse, patched, pxPerMm, options);
    const bool isPale = !pale.outlines.empty() && pale.largestMm2 > kMuchSmaller * dark.largestMm2;
    const double paleContrast = 1.0 - (1.0 - pale.outside) / std::max(1.0 - pale.inside, 1e-6);
    if (std::max(isPale ? paleContrast : dark.contrast, 0.0) < kLeastOfTwo) return {};
    const double smallestPx2 = options.smallestAnimalMm2 * pxPerMm * pxPerMm;
    joinAcrossEyes(pale.outlines, smallestPx2, pxPerMm);
    std::erase_if(pale.outlines, [&](const Outline& outline) { return outline.areaPx2 < smallestPx2; });
    for (Outline& outline : pale.outlines) outline.edgeSdPx = std::hypot(outline.edgeSdPx, kShadedRimPx);
    Search seen = isPale ? std::move(pale) : std::move(dark);
    for (Outline& outline : seen.outlines) outline.remarks.push_back(Remark::BeforeDarkPlate);
    return seen;
}

/// Whether colour shows more of the animal than grey, or as much of it in fewer tatters.
bool showsBetter(const Search& colour, const Search& grey) {
    if (colour.largestMm2 > kMuchLarger * grey.largestMm2) return true;
    return colour.largestMm2 > kAsLarge * grey.largestMm2 && colour.borderMm < kFarShorter * grey.borderMm;
}

/// What the photo's colour shows, traced, when that is better than what grey showed.
std::optional<Search> searchInColour(const Photo& photo, const Reduced& coarse, const PlateRegion& region,
                                     double pxPerMm, const OutlineOptions& options, const Search& grey) {
    const double smallestPx = options.smallestAnimalMm2 * std::pow(pxPerMm / coarse.factor, 2);
    const auto colour = colourPicture(photo, coarse, region, smallestPx);
    if (!colour) return std::nullopt;
    const Picture picture{colour->grey, colour->tone, colour->tone};
    Search search = searchIn(picture, colour->coarse, colour->background, region, pxPerMm, options);
    if (!showsBetter(search, grey)) return std::nullopt;
    trace(picture, pxPerMm, options, search);
    for (Outline& outline : search.outlines) {
        outline.edgeSdPx = std::hypot(outline.edgeSdPx, kColourEdgePx);
        outline.remarks.push_back(Remark::SeenByColour);
    }
    return search;
}

/// Before a pale plate: what grey shows, or colour where that shows more.
Search searchBeforePale(const Photo& photo, const Reduced& coarse, const PlateRegion& region, double pxPerMm,
                        const OutlineOptions& options) {
    const Picture picture{photo.grey, photoTone(), photoTone()};
    Search search = searchIn(picture, coarse, plateLight(coarse, region), region, pxPerMm, options);
    if (!search.plateSeen) return search;
    const auto inColour = [&] { return searchInColour(photo, coarse, region, pxPerMm, options, search); };
    if (showsLittle(search)) {
        if (auto colour = inColour()) return std::move(*colour);
        trace(picture, pxPerMm, options, search);
        return search;
    }
    trace(picture, pxPerMm, options, search);
    if (!leavesDoubt(search)) return search;
    auto colour = inColour();
    return colour ? std::move(*colour) : std::move(search);
}

}  // namespace

Outcome<std::vector<Outline>> findOutlines(const Photo& photo, const Box& box, const FoundPlate& plate,
                                           const Scale& scale, const OutlineOptions& options) {
    const Refusal noAnimal{"no-animal", "No animal was found before the plate. Check that it hangs in front of it."};
    const Refusal cannotSeparate{"cannot-separate",
                                 "The animal cannot be told from the plate behind it. Improve the light and repeat."};
    const double pxPerMm = pxPerMmOf(box, scale);
    const cv::Rect part = plateBounds(photo.grey, box, scale);
    const int factor = factorFor(pxPerMm, kCoarsePxPerMm);
    const Reduced coarse = reducedLight(photo, photoTone(), part, factor);
    if (coarse.light.empty()) return noAnimal;
    const PlateRegion region = plateRegion(coarse, box, plate, scale);
    const Search search = plateIsDark(coarse, region) ? searchBeforeDark(photo, coarse, region, pxPerMm, options)
                                                      : searchBeforePale(photo, coarse, region, pxPerMm, options);
    if (!search.plateSeen) return cannotSeparate;
    if (search.outlines.empty()) return noAnimal;
    if (std::ssize(search.outlines) > options.maxAnimals) return cannotSeparate;
    return search.outlines;
}

}  // namespace ringrule
