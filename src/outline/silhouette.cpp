// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/silhouette.h"

#include "outline/eye_gap.h"
#include "outline/furrow.h"
#include "outline/shaded_fin.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace ringrule {
namespace {

constexpr double kMarginMm = 3.0;        ///< around the piece's reach
constexpr double kLevelReachMm = 2.0;    ///< light is averaged within this distance
constexpr float kBorderWeight = 0.02F;   ///< of border pixels in the light inside
constexpr float kPalestSkin = 0.30F;     ///< of the way from the body's darker third to the plate
constexpr double kHoleMm2 = 0.08;        ///< smaller light spots are skin
constexpr double kPartMm2 = 1.0;         ///< smaller parts are crumbs
constexpr double kHoleShare = 0.70;      ///< of the step: a hole must be this near to the plate's light
constexpr double kPaleHoleShare = 0.80;  ///< … and of a pale body, whose furrows are nearly as dark as the plate
// … but for a large one: the gap of a coil lies in the coil's own shade, at 0.54 of the step or more in 4,000 rendered
// photos, where no light patch of skin was larger than 0.002 of the body, and the webs of dark fins reached 0.525.
constexpr double kLargeHoleShare = 0.53;
constexpr double kLargeHole = 0.003;      ///< of the body's area …
constexpr int kLargeHolePx = 12;          ///< … and so wide: more than its own blurred rim
constexpr double kPlateLike = 0.12;       ///< of the step: what differs less from the plate is plate
constexpr double kNotchPlateLike = 0.24;  ///< and in a notch, beside whose rim the lens mixes the body's light in
constexpr double kGlareShare = 1.15;      ///< of the plate's light: brighter spots are reflections

/// Mean of `light` by `weight` over a square window, at half the picture's resolution, for levels are smooth; `overall`
/// where the window holds next to no weight.
cv::Mat1f localMean(const cv::Mat1f& light, const cv::Mat1f& weight, float overall, int reach) {
    cv::Mat1f weighted;
    cv::multiply(light, weight, weighted);
    const cv::Size half((light.cols + 1) / 2, (light.rows + 1) / 2);
    cv::Mat1f sum;
    cv::Mat1f share;
    cv::resize(weighted, sum, half, 0.0, 0.0, cv::INTER_LINEAR);
    cv::resize(weight, share, half, 0.0, 0.0, cv::INTER_LINEAR);
    cv::blur(sum, sum, {reach + 1, reach + 1}, {-1, -1}, cv::BORDER_CONSTANT);
    cv::blur(share, share, {reach + 1, reach + 1}, {-1, -1}, cv::BORDER_CONSTANT);
    constexpr float kLittle = 0.004F;
    cv::Mat1f mean(half);
    for (int y = 0; y < half.height; ++y) {
        for (int x = 0; x < half.width; ++x) {
            mean(y, x) = (sum(y, x) + kLittle * overall) / (share(y, x) + kLittle);
        }
    }
    cv::resize(mean, mean, light.size(), 0.0, 0.0, cv::INTER_LINEAR);
    return mean;
}

/// A quantile of the light where `mask` is set; 0 when it is empty.
float quantileIn(const cv::Mat1f& light, const cv::Mat1b& mask, double share) {
    std::vector<float> values;
    for (int y = 0; y < light.rows; ++y) {
        for (int x = 0; x < light.cols; ++x) {
            if (mask(y, x) != 0) values.push_back(light(y, x));
        }
    }
    if (values.empty()) return 0.0F;
    const auto at = values.begin() + static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
    std::nth_element(values.begin(), at, values.end());
    return *at;
}

struct Levels {
    cv::Mat1f threshold;
    double inside = 0.0;
    double outside = 0.0;
};

/// The piece without what is far nearer to the plate than to the body: fins that hung on it at the coarse threshold.
cv::Mat1b withoutFins(const cv::Mat1f& light, const cv::Mat1b& piece, const cv::Mat1b& usable) {
    const float body = quantileIn(light, piece, 0.35);
    const float plate = quantileIn(light, usable, 0.6);
    cv::Mat1b dark;
    cv::compare(light, static_cast<double>(body + 0.6F * (plate - body)), dark, cv::CMP_LT);
    dark &= piece;
    return dark;
}

/// The piece as a mask in a window of the coarse picture, and half-way levels around it, refined by turns.
Levels localLevels(const cv::Mat1f& light, const cv::Mat1b& piece, const cv::Mat1b& other, const cv::Mat1b& usable,
                   double pxPerMm) {
    const int reach = std::max(2, static_cast<int>(std::lround(kLevelReachMm * pxPerMm)));
    const int margin = 2 * std::max(1, static_cast<int>(std::lround(0.8 * pxPerMm))) + 1;
    const cv::Mat near = cv::getStructuringElement(cv::MORPH_RECT, {margin, margin});
    const cv::Mat small = cv::Mat1b::ones(3, 3);
    cv::Mat1b body = withoutFins(light, piece, usable);
    Levels levels;
    for (int round = 0; round < 2; ++round) {
        cv::Mat1b core;
        cv::erode(body, core, small);
        // A pixel on the border is part plate: in a thin tail there are no others, and the body's darker third stands
        // in.
        cv::Mat1f inner(light.size(), 0.0F);
        inner.setTo(kBorderWeight, body);
        inner.setTo(1.0F, core);
        cv::Mat1b grown;
        cv::dilate(body, grown, small);
        cv::Mat1b out = usable.clone();
        out.setTo(0, grown);
        out.setTo(0, other);
        cv::Mat1f outer(light.size(), 0.0F);
        outer.setTo(1.0F, out);
        const float darker = quantileIn(light, body, 0.35);
        const float plate = static_cast<float>(cv::mean(light, out)[0]);
        cv::Mat1f inside = localMean(light, inner, darker, reach);
        const cv::Mat1f outside = localMean(light, outer, plate, reach);
        // What is lighter than skin gets is a fin that the piece began with.
        cv::threshold(inside, inside, static_cast<double>(darker + kPalestSkin * (plate - darker)), 0.0,
                      cv::THRESH_TRUNC);
        cv::addWeighted(inside, 0.5, outside, 0.5, 0.0, levels.threshold);
        levels.inside = cv::mean(inside, body)[0];
        levels.outside = cv::mean(outside, body)[0];
        cv::Mat1b reachable;
        cv::dilate(body, reachable, near);
        cv::compare(light, levels.threshold, body, cv::CMP_LT);
        body &= reachable;
        body &= usable;
        body.setTo(0, other);
    }
    return levels;
}

/// The outer contour that runs most along the seed, or the count of contours when none does.
std::size_t contourOver(const std::vector<std::vector<cv::Point>>& contours, const std::vector<cv::Vec4i>& tree,
                        const cv::Mat1b& seed) {
    std::size_t best = contours.size();
    std::ptrdiff_t most = 11;
    for (std::size_t i = 0; i < contours.size(); ++i) {
        if (tree[i][3] >= 0 || std::ssize(contours[i]) <= most) continue;
        const auto along =
            std::count_if(contours[i].begin(), contours[i].end(), [&seed](cv::Point at) { return seed(at) != 0; });
        if (along > most) most = along, best = i;
    }
    return best;
}

/// Outer contours other than `main` that run along the seed and hold this much: parts beyond a pale band or a dark eye.
std::vector<std::size_t> partsOver(const std::vector<std::vector<cv::Point>>& contours,
                                   const std::vector<cv::Vec4i>& tree, const cv::Mat1b& seed, std::size_t main,
                                   double leastPx2) {
    std::vector<std::size_t> parts;
    for (std::size_t i = 0; i < contours.size(); ++i) {
        if (i == main || tree[i][3] >= 0 || cv::contourArea(contours[i]) < leastPx2) continue;
        const auto along =
            std::count_if(contours[i].begin(), contours[i].end(), [&seed](cv::Point at) { return seed(at) != 0; });
        if (2 * along > std::ssize(contours[i])) parts.push_back(i);
    }
    return parts;
}

std::vector<PixelPoint> inPhoto(const Reduced& picture, const std::vector<cv::Point>& contour) {
    std::vector<PixelPoint> points;
    points.reserve(contour.size());
    for (const cv::Point& at : contour) points.push_back(picture.photoFromReduced(at.x, at.y));
    return points;
}

/// What a light spot inside the body is, by its light against the plate's.
enum class Spot { Skin, Plate, Glare };

Spot spotIn(const cv::Mat1f& light, const Levels& levels, const std::vector<cv::Point>& hole, double holeShare) {
    const cv::Rect bounds = cv::boundingRect(hole);
    cv::Mat1b inside(bounds.size(), static_cast<unsigned char>(0));
    cv::fillPoly(inside, std::vector<std::vector<cv::Point>>{hole}, cv::Scalar(255), cv::LINE_8, 0, -bounds.tl());
    cv::Mat1b core;
    cv::erode(inside, core, cv::Mat1b::ones(3, 3));
    if (cv::countNonZero(core) < 4) core = inside;
    const double seen = cv::mean(light(bounds), core)[0];
    if (seen > kGlareShare * levels.outside) return Spot::Glare;
    return seen > levels.inside + holeShare * (levels.outside - levels.inside) ? Spot::Plate : Spot::Skin;
}

cv::Rect grownWithin(const cv::Rect& rect, int by, const cv::Size& size) {
    return cv::Rect(rect.x - by, rect.y - by, rect.width + 2 * by, rect.height + 2 * by) & cv::Rect({0, 0}, size);
}

/// The part of the coarse picture in which one piece is traced.
struct Window {
    cv::Rect bounds;
    cv::Mat1b own;     ///< the piece
    cv::Mat1b other;   ///< other animals
    cv::Mat1b usable;  ///< plate without print
};

Window windowOf(const Reduced& coarse, const PlateRegion& region, const Pieces& pieces, const Piece& piece,
                double coarsePxPerMm) {
    Window window;
    const int margin = static_cast<int>(std::ceil(kMarginMm * coarsePxPerMm));
    window.bounds = grownWithin(piece.reach, margin, coarse.light.size());
    cv::compare(pieces.labels(window.bounds), piece.label, window.own, cv::CMP_EQ);
    window.other = cv::Mat1b(window.bounds.size(), static_cast<unsigned char>(0));
    for (const Piece& neighbour : pieces.animals) {
        if (neighbour.label == piece.label || (neighbour.bounds & window.bounds).empty()) continue;
        cv::Mat1b theirs;
        cv::compare(pieces.labels(window.bounds), neighbour.label, theirs, cv::CMP_EQ);
        window.other |= theirs;
    }
    window.usable = region.plate(window.bounds).clone();
    window.usable.setTo(0, region.marks(window.bounds));
    return window;
}

/// What is darker than the local threshold in the finer picture, on the plate and not another animal; `looser`: by how
/// much of the way from there to the plate the threshold is moved.
cv::Mat1b darkIn(const Reduced& fine, const Window& window, const Levels& levels, double looser = 0.0) {
    cv::Mat1b forbidden;
    cv::compare(window.usable, 0, forbidden, cv::CMP_EQ);
    forbidden |= window.other;
    cv::resize(forbidden, forbidden, fine.light.size(), 0.0, 0.0, cv::INTER_NEAREST);
    cv::Mat1f threshold;
    cv::resize(levels.threshold, threshold, fine.light.size(), 0.0, 0.0, cv::INTER_LINEAR);
    if (looser > 0.0) cv::addWeighted(threshold, 1.0 - looser, threshold, 0.0, looser * levels.outside, threshold);
    cv::Mat1b dark;
    cv::compare(fine.light, threshold, dark, cv::CMP_LT);
    dark.setTo(0, forbidden);
    // Nothing may touch the window's border, where contours are not followed.
    dark.row(0).setTo(0), dark.row(dark.rows - 1).setTo(0), dark.col(0).setTo(0), dark.col(dark.cols - 1).setTo(0);
    return dark;
}

/// Of gaps that look like eyes those with a pupil: about as dark, in the upturned picture as light, as the darkest.
/// What is plate all over is none: iris, pupil and spark differ from it.
cv::Mat1b pupilsAmong(const cv::Mat1b& gaps, const cv::Mat1f& upturned, const Levels& levels, double plateLike) {
    cv::Mat1f smooth;
    cv::blur(upturned, smooth, {5, 5});
    cv::Mat1b pupils(gaps.size(), static_cast<unsigned char>(0));
    if (cv::countNonZero(gaps) == 0) return pupils;
    std::vector<std::vector<cv::Point>> borders;
    cv::findContours(gaps, borders, cv::RETR_EXTERNAL, cv::CHAIN_APPROX_NONE);
    std::vector<std::pair<double, cv::Mat1b>> eyes;
    double darkest = 0.0;
    for (std::size_t i = 0; i < borders.size(); ++i) {
        cv::Mat1b whole(gaps.size(), static_cast<unsigned char>(0));
        cv::drawContours(whole, borders, static_cast<int>(i), cv::Scalar(255), cv::FILLED);
        cv::Mat1b core;
        cv::erode(whole, core, cv::Mat1b::ones(3, 3));
        const double off = cv::mean(cv::abs(upturned - levels.outside), core)[0];
        if (off < plateLike * (levels.outside - levels.inside)) continue;
        cv::bitwise_and(whole, gaps, whole);
        double here = 0.0;
        cv::minMaxLoc(smooth, nullptr, &here, nullptr, nullptr, whole);
        eyes.emplace_back(here - levels.outside, whole);
        darkest = std::max(darkest, here - levels.outside);
    }
    for (const auto& [dark, eye] : eyes) {
        if (dark >= 0.5 * darkest) pupils |= eye;
    }
    return pupils;
}

// A body's area in squares of its half-width: 213 rendered seahorses have 15 to 29, 287 pipefish 46 to 147, and of the
// real fish of tests/outside the stout ones 6 to 8.
constexpr double kStout = 8.0;
constexpr double kSlender = 30.0;
constexpr double kPalestWithFin = 0.55;  ///< of the plate's light: a paler body's skin is as light as a fin in places
constexpr double kDim = 0.35;            ///< of the step from body to plate: no skin is that light for long
constexpr double kLeastDimShare = 0.02;  ///< of the square of the half-width, two pixels inside all rims
constexpr double kLooser = 0.5;  ///< of the way from threshold to plate: fins a little dimmer than the threshold
constexpr double kLeastEyeShare = 0.10;  ///< of the body's half-width: smaller gaps are no eyes

/// Before a dark plate: fins out of the mask, dark eyes into it. Of several gaps that look like eyes some may be those
/// of a coil.
void settlePaleBody(const Reduced& fine, const Window& window, const Levels& levels, double halfWidthPx,
                    cv::Mat1b& body) {
    cv::Mat1b others;
    cv::resize(window.other, others, body.size(), 0.0, 0.0, cv::INTER_NEAREST);
    const auto eyesIn = [&](const cv::Mat1b& mask) {
        cv::Mat1b filled = mask.clone();
        const cv::Mat1b gaps = fillEyes(filled, others, halfWidthPx, kLeastEyeShare * halfWidthPx);
        return pupilsAmong(gaps, fine.light, levels, kPlateLike);
    };
    dropFins({fine.light, eyesIn(body), darkIn(fine, window, levels, kLooser), halfWidthPx}, body);
    body |= eyesIn(body);
    // Once no fin is left, for between a fin's rim and the body lie notches too.
    body |= pupilsAmong(eyeNotches(body, others, halfWidthPx), fine.light, levels, kNotchPlateLike);
    body |= furrowsIn({fine.light, levels.inside, levels.outside}, body, halfWidthPx);
}

/// Whether something about as light as the threshold hangs on a body as stout as a seahorse: more of it than a blurred
/// rim. The fins of a body as slender as a pipefish are small, and the one at its tail is told along the midline; other
/// fish, stouter still, have pale bands, and fins that a person would call theirs.
bool mayHoldFin(const Reduced& fine, const Levels& levels, const cv::Mat1b& body, double halfWidthPx) {
    const double squarePx = halfWidthPx * halfWidthPx;
    const int areaPx = cv::countNonZero(body);
    if (areaPx < kStout * squarePx || areaPx > kSlender * squarePx) return false;
    if (levels.inside > kPalestWithFin * levels.outside) return false;
    cv::Mat1b dim;
    cv::compare(fine.light, levels.inside + kDim * (levels.outside - levels.inside), dim, cv::CMP_GT);
    dim &= body;
    cv::erode(dim, dim, cv::Mat1b::ones(5, 5));
    return cv::countNonZero(dim) > kLeastDimShare * squarePx;
}

}  // namespace

Silhouette findSilhouette(const Picture& picture, const Reduced& coarse, const PlateRegion& region,
                          const Pieces& pieces, const Piece& piece, int factor, double pxPerMm) {
    Silhouette silhouette;
    silhouette.stepPx = factor;
    const double coarsePxPerMm = pxPerMm / coarse.factor;
    const Window window = windowOf(coarse, region, pieces, piece, coarsePxPerMm);
    const Levels levels =
        localLevels(coarse.light(window.bounds), window.own, window.other, window.usable, coarsePxPerMm);
    silhouette.inside = levels.inside;
    silhouette.outside = levels.outside;
    const cv::Point corner = coarse.originPx + window.bounds.tl() * coarse.factor;
    const Reduced fine =
        reducedLight(picture.grey, picture.tone, {corner, window.bounds.size() * coarse.factor}, factor);
    if (fine.light.empty()) return silhouette;
    cv::Mat1b dark = darkIn(fine, window, levels);
    const double halfWidthPx = piece.halfWidthMm * pxPerMm / factor;
    const bool plain = &picture.tone == &photoTone();  // in colour alone skin is uneven, and holds gaps of its own
    if (picture.paleBody) {
        settlePaleBody(fine, window, levels, halfWidthPx, dark);
    } else if (plain && mayHoldFin(fine, levels, dark, halfWidthPx)) {
        const cv::Mat1b noEyes(dark.size(), static_cast<unsigned char>(0));
        dropFins({fine.light, noEyes, darkIn(fine, window, levels, kLooser), halfWidthPx}, dark);
    }
    cv::Mat1b seed;
    cv::resize(window.own, seed, fine.light.size(), 0.0, 0.0, cv::INTER_NEAREST);
    const int around = 2 * coarse.factor / factor + 1;
    cv::dilate(seed, seed, cv::Mat1b::ones(around, around));
    std::vector<std::vector<cv::Point>> contours;
    std::vector<cv::Vec4i> tree;
    cv::findContours(dark, contours, tree, cv::RETR_CCOMP, cv::CHAIN_APPROX_NONE);
    const std::size_t outer = contourOver(contours, tree, seed);
    if (outer == contours.size()) return silhouette;
    silhouette.found = true;
    const cv::Rect inner(2, 2, dark.cols - 4, dark.rows - 4);
    silhouette.cut = std::any_of(contours[outer].begin(), contours[outer].end(),
                                 [&inner](cv::Point at) { return !inner.contains(at); });
    silhouette.outerPx = inPhoto(fine, contours[outer]);
    for (const std::size_t part : partsOver(contours, tree, seed, outer, kPartMm2 * std::pow(pxPerMm / factor, 2))) {
        silhouette.partsPx.push_back(inPhoto(fine, contours[part]));
    }
    const double leastHolePx = kHoleMm2 * std::pow(pxPerMm / factor, 2);
    for (std::size_t i = 0; i < contours.size(); ++i) {
        if (tree[i][3] != static_cast<int>(outer) || cv::contourArea(contours[i]) < leastHolePx) continue;
        const cv::Size hole = cv::boundingRect(contours[i]).size();
        const bool large = plain && cv::contourArea(contours[i]) > kLargeHole * cv::contourArea(contours[outer]) &&
                           std::min(hole.width, hole.height) >= kLargeHolePx;
        const double share = picture.paleBody ? kPaleHoleShare : large ? kLargeHoleShare : kHoleShare;
        const Spot spot = spotIn(fine.light, levels, contours[i], share);
        if (spot == Spot::Plate) silhouette.holesPx.push_back(inPhoto(fine, contours[i]));
        if (spot == Spot::Glare) silhouette.glare = true;
    }
    return silhouette;
}

}  // namespace ringrule
