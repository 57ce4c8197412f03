// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/colour_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

#include "outline/background.h"
#include "outline/components.h"
#include "outline/reduced.h"

namespace ringrule {
namespace {

constexpr double kLeastColour =
    0.06;  ///< length of the animal's colour, grey taken out, in shares of the plate's light
constexpr double kPlateValue = 153.0;  ///< grey value of the plate in the picture made …
constexpr double kBodyStep = 128.0;    ///< … and how far below it the animal lies
constexpr float kDeepestShadow =
    0.6F;  ///< light over the plate's: what is darker is a part of the animal of any colour, its eye
constexpr float kDarkSpan = 0.4F;
constexpr float kPupil = 0.2F;  ///< light over the plate's: darker than any pale skin

constexpr int kTile = 8;              ///< side of the tiles that are drawn at full resolution, in reduced pixels
constexpr int kAround = 8;            ///< reduced pixels about what is coloured or dark that are drawn with it
constexpr float kShows = 0.25F;       ///< of the animal's step from the plate
constexpr double kLeastShows = 0.25;  ///< of the smallest animal: less is noise
constexpr int kSparkCells = 4;        ///< widest spark in an eye, in reduced pixels of about 0.3 mm

using Light3 = std::array<float, 3>;

/// The photo's grey values and its colour, each at the resolution that is stored.
struct Planes {
    cv::Mat grey;
    Chroma chroma;
    int across = 1, down = 1;  ///< photo pixels to one of the chroma's
};

std::optional<Planes> planesOf(const Photo& photo) {
    Planes planes{photo.grey, decodeChroma(photo)};
    const cv::Size colour = planes.chroma.cb.size();
    if (colour.empty() || planes.chroma.cr.size() != colour) return std::nullopt;
    planes.across = static_cast<int>(std::lround(static_cast<double>(photo.grey.cols) / colour.width));
    planes.down = static_cast<int>(std::lround(static_cast<double>(photo.grey.rows) / colour.height));
    const auto fits = [](int photoPx, int colourPx, int times) {
        return times >= 1 && colourPx == (photoPx + times - 1) / times;
    };
    if (!fits(photo.grey.cols, colour.width, planes.across) || !fits(photo.grey.rows, colour.height, planes.down))
        return std::nullopt;
    return planes;
}

/// What cb and cr add to grey for each colour, in grey values (ITU-T T.871).
struct ColourSteps {
    std::array<int, 256> blue{}, greenByBlue{}, greenByRed{}, red{};  ///< those of green in 1/65536

    ColourSteps() {
        for (int i = 0; i < 256; ++i) {
            const auto at = static_cast<std::size_t>(i);
            const double off = i - 128.0;
            blue[at] = static_cast<int>(std::lround(1.772 * off));
            red[at] = static_cast<int>(std::lround(1.402 * off));
            greenByBlue[at] = static_cast<int>(std::lround(-0.344136 * 65536.0 * off));
            greenByRed[at] = static_cast<int>(std::lround(-0.714136 * 65536.0 * off));
        }
    }
};

/// Light of blue, green and red.
Light3 lightsOf(unsigned char grey, unsigned char cb, unsigned char cr) {
    static const ColourSteps steps;
    static const std::array<float, 256>& lightOf = photoTone().lightOf;
    const auto light = [](int value) { return lightOf[static_cast<std::size_t>(std::clamp(value, 0, 255))]; };
    const int green = (steps.greenByBlue[cb] + steps.greenByRed[cr] + 32768) >> 16;
    return {light(grey + steps.blue[cb]), light(grey + green), light(grey + steps.red[cr])};
}

/// A plane's part under the reduced picture, at its size. `across` and `down`: photo pixels to one of the plane's.
cv::Mat1b reducedPlane(const cv::Mat& plane, int across, int down, const Reduced& coarse) {
    const cv::Size size = coarse.light.size();
    const cv::Rect part = cv::Rect(coarse.originPx.x / across, coarse.originPx.y / down,
                                   size.width * coarse.factor / across, size.height * coarse.factor / down) &
                          cv::Rect({0, 0}, plane.size());
    cv::Mat1b small;
    cv::resize(plane(part), small, size, 0.0, 0.0, cv::INTER_AREA);
    return small;
}

/// The part of an enlarged plane under `part`, which is given in enlarged pixels; linear between pixel centres.
cv::Mat enlarged(const cv::Mat& plane, const cv::Rect& part, int across, int down) {
    const cv::Point from(part.x / across - 1, part.y / down - 1);
    const cv::Point to((part.br().x + across - 1) / across + 1, (part.br().y + down - 1) / down + 1);
    const cv::Rect own = cv::Rect(from, to) & cv::Rect({0, 0}, plane.size());
    cv::Mat large;
    cv::resize(plane(own), large, {own.width * across, own.height * down}, 0.0, 0.0, cv::INTER_LINEAR);
    return large(cv::Rect(part.x - own.x * across, part.y - own.y * down, part.width, part.height));
}

struct Channels {
    std::array<cv::Mat1f, 3> ratio;     ///< reduced, over the plate's light
    std::array<cv::Mat1f, 3> perPlate;  ///< reduced, one over the plate's light
};

std::optional<Channels> channelsOf(const Photo& photo, const Planes& planes, const Reduced& coarse,
                                   const PlateRegion& region) {
    const cv::Mat1b grey =
        photo.halfGrey.empty() ? reducedPlane(photo.grey, 1, 1, coarse) : reducedPlane(photo.halfGrey, 2, 2, coarse);
    const cv::Mat1b cb = reducedPlane(planes.chroma.cb, planes.across, planes.down, coarse);
    const cv::Mat1b cr = reducedPlane(planes.chroma.cr, planes.across, planes.down, coarse);
    std::array<cv::Mat1f, 3> light;
    for (cv::Mat1f& of : light) of.create(grey.size());
    for (int y = 0; y < grey.rows; ++y) {
        const std::array<float*, 3> to{light[0].ptr<float>(y), light[1].ptr<float>(y), light[2].ptr<float>(y)};
        for (int x = 0; x < grey.cols; ++x) {
            const Light3 here = lightsOf(grey(y, x), cb(y, x), cr(y, x));
            for (std::size_t c = 0; c < 3; ++c) to[c][x] = here[c];
        }
    }
    cv::Mat1b usable = region.plate.clone();
    usable.setTo(0, region.marks);
    const cv::Mat1f ones(grey.size(), 1.0F);
    Channels channels;
    for (std::size_t c = 0; c < 3; ++c) {
        const Background background = fitBackground(light[c], usable);
        if (!background.fitted) return std::nullopt;
        channels.perPlate[c] = dividedBy(ones, background);
        cv::multiply(light[c], channels.perPlate[c], channels.ratio[c]);
    }
    return channels;
}

/// How far the three colours lie apart at each place: nothing for white, grey and black in any light.
cv::Mat1f colourfulness(const Channels& channels) {
    // As plain matrices: for typed ones OpenCV's max and min are hidden by those of the standard library.
    const std::array<cv::Mat, 3> ratio{channels.ratio[0], channels.ratio[1], channels.ratio[2]};
    cv::Mat most;
    cv::Mat least;
    cv::max(ratio[0], ratio[1], most);
    cv::max(most, ratio[2], most);
    cv::min(ratio[0], ratio[1], least);
    cv::min(least, ratio[2], least);
    cv::Mat1f range;
    cv::subtract(most, least, range);
    cv::GaussianBlur(range, range, {}, 0.8);
    return range;
}

double quantileOf(const cv::Mat1f& values, const cv::Mat1b& mask, double share) {
    std::vector<float> chosen;
    for (int y = 0; y < values.rows; y += 2) {
        for (int x = 0; x < values.cols; x += 2) {
            if (mask(y, x) != 0) chosen.push_back(values(y, x));
        }
    }
    if (chosen.empty()) return 1e9;
    const auto at = chosen.begin() + static_cast<std::ptrdiff_t>(share * static_cast<double>(chosen.size() - 1));
    std::nth_element(chosen.begin(), at, chosen.end());
    return static_cast<double>(*at);
}

/// The largest coloured piece, drawn in by a pixel; empty when it is smaller than `smallestPx`.
cv::Mat1b colouredPiece(const cv::Mat1f& range, const PlateRegion& region, double smallestPx) {
    cv::Mat1b usable = region.plate.clone();
    usable.setTo(0, region.marks);
    const double middle = quantileOf(range, usable, 0.5);
    const double spread = quantileOf(range, usable, 0.75) - middle;
    cv::Mat1b coloured;
    cv::compare(range, middle + 8.0 * spread + 0.03, coloured, cv::CMP_GT);
    coloured &= usable;
    const Components components = componentsOf(coloured);
    const auto largest = std::max_element(components.found.begin(), components.found.end(),
                                          [](const Component& a, const Component& b) { return a.areaPx < b.areaPx; });
    if (largest == components.found.end() || largest->areaPx < smallestPx) return {};
    cv::Mat1b piece;
    cv::compare(components.labels, static_cast<int>(largest - components.found.begin()) + 1, piece, cv::CMP_EQ);
    cv::Mat1b core;
    cv::erode(piece, core, cv::Mat1b::ones(3, 3));
    return cv::countNonZero(core) > 8 ? core : piece;
}

/// Weights of the three ratios that give 0 for the plate in any light and 1 for the animal.
std::optional<std::array<double, 3>> weightsFor(const Channels& channels, const cv::Mat1b& piece) {
    std::array<double, 3> weights{};
    double grey = 0.0;
    for (std::size_t c = 0; c < 3; ++c) weights[c] = cv::mean(channels.ratio[c], piece)[0];
    for (const double weight : weights) grey += weight / 3.0;
    double squared = 0.0;
    for (double& weight : weights) weight -= grey, squared += weight * weight;
    if (std::sqrt(squared) < kLeastColour) return std::nullopt;
    for (double& weight : weights) weight /= squared;
    return weights;
}

/// What a place is by its light over the plate's: how far it has gone to the animal's colour, or into darkness where
/// that is plainer.
struct Projection {
    std::array<float, 3> weights{};

    [[nodiscard]] float shareOf(const Light3& ratio) const {
        const float dark = std::clamp((kDeepestShadow - meanOf(ratio)) / kDarkSpan, 0.0F, 1.0F);
        return std::max(weights[0] * ratio[0] + weights[1] * ratio[1] + weights[2] * ratio[2], dark);
    }
    [[nodiscard]] static float meanOf(const Light3& ratio) { return (ratio[0] + ratio[1] + ratio[2]) / 3.0F; }
};

unsigned char valueOf(float share) {
    constexpr auto kPlate = static_cast<float>(kPlateValue);
    constexpr auto kStep = static_cast<float>(kBodyStep);
    return static_cast<unsigned char>(std::clamp(kPlate - kStep * share + 0.5F, 0.0F, 255.0F));
}

/// The spark in an eye is as light and colourless as the plate: gaps between dark places are dark.
cv::Mat1b withoutSparks(const cv::Mat1b& pupils, int sparkPx) {
    cv::Mat1b closed;
    cv::morphologyEx(pupils, closed, cv::MORPH_CLOSE,
                     cv::getStructuringElement(cv::MORPH_ELLIPSE, {sparkPx + 1, sparkPx + 1}));
    return closed;
}

/// The reduced picture along the animal's colour: 0 for the plate, 1 for the animal; `pupils` is set where it is dark.
cv::Mat1f reducedShares(const Channels& channels, const Projection& projection, cv::Mat1b& pupils) {
    const auto& ratio = channels.ratio;
    cv::Mat1f shares(ratio[0].size());
    pupils.create(ratio[0].size());
    for (int y = 0; y < shares.rows; ++y) {
        for (int x = 0; x < shares.cols; ++x) {
            const Light3 here{ratio[0](y, x), ratio[1](y, x), ratio[2](y, x)};
            shares(y, x) = projection.shareOf(here);
            pupils(y, x) = Projection::meanOf(here) < kPupil ? 255 : 0;
        }
    }
    shares.setTo(1.0F, withoutSparks(pupils, kSparkCells));
    return shares;
}

/// Where the reduced picture shows something that is no print: there it is drawn at full resolution, with its
/// surroundings.
cv::Mat1b worthDrawing(const cv::Mat1f& shares, const PlateRegion& region, double smallestPx) {
    cv::Mat1b shows;
    cv::compare(shares, kShows, shows, cv::CMP_GT);
    shows &= region.plate;
    shows.setTo(0, region.marks);
    const Components components = componentsOf(shows);
    cv::Mat1b worth(shares.size(), static_cast<unsigned char>(0));
    for (std::size_t i = 0; i < components.found.size(); ++i) {
        const Component& component = components.found[i];
        if (component.areaPx < kLeastShows * smallestPx) continue;
        worth(component.bounds).setTo(255, components.labels(component.bounds) == static_cast<int>(i) + 1);
    }
    cv::dilate(worth, worth, cv::Mat1b::ones(2 * kAround + 1, 2 * kAround + 1));
    return worth;
}

/// Some cells of the reduced picture at the photo's resolution, along the animal's colour, and where they are dark. The
/// plate's light is taken to be the same all over a cell: a cell is about 0.3 mm.
void drawCells(const Planes& planes, const Channels& channels, const Projection& projection, const Reduced& coarse,
               const cv::Rect& cells, cv::Mat& grey, cv::Mat1b& pupils) {
    const int factor = coarse.factor;
    const cv::Rect part(cells.tl() * factor, cells.size() * factor);
    const cv::Rect inPhoto = part + coarse.originPx;
    const cv::Mat cb = enlarged(planes.chroma.cb, inPhoto, planes.across, planes.down);
    const cv::Mat cr = enlarged(planes.chroma.cr, inPhoto, planes.across, planes.down);
    for (int y = 0; y < part.height; ++y) {
        const auto* from = planes.grey.ptr<unsigned char>(inPhoto.y + y) + inPhoto.x;
        const auto* blue = cb.ptr<unsigned char>(y);
        const auto* red = cr.ptr<unsigned char>(y);
        auto* to = grey.ptr<unsigned char>(inPhoto.y + y) + inPhoto.x;
        auto* dark = pupils.ptr<unsigned char>(part.y + y) + part.x;
        const int row = cells.y + y / factor;
        for (int cell = 0; cell < cells.width; ++cell) {
            Light3 perPlate{};
            for (std::size_t c = 0; c < 3; ++c) perPlate[c] = channels.perPlate[c](row, cells.x + cell);
            for (int x = cell * factor; x < (cell + 1) * factor; ++x) {
                Light3 ratio = lightsOf(from[x], blue[x], red[x]);
                for (std::size_t c = 0; c < 3; ++c) ratio[c] *= perPlate[c];
                to[x] = valueOf(projection.shareOf(ratio));
                dark[x] = Projection::meanOf(ratio) < kPupil ? 255 : 0;
            }
        }
    }
}

/// The dark places of the reduced picture, each with room for a spark beside it, in pixels of the plate's part.
std::vector<cv::Rect> aroundPupils(const cv::Mat1b& pupils, int factor) {
    cv::Mat1b joined;
    cv::dilate(pupils, joined, cv::Mat1b::ones(2 * kSparkCells + 1, 2 * kSparkCells + 1));
    std::vector<cv::Rect> around;
    for (const Component& component : componentsOf(joined).found)
        around.emplace_back(component.bounds.tl() * factor, component.bounds.size() * factor);
    return around;
}

/// The photo along the animal's colour where that shows anything; elsewhere as light as the plate.
cv::Mat projected(const Planes& planes, const Channels& channels, const Projection& projection, const Reduced& coarse,
                  const cv::Mat1b& worth, const cv::Mat1b& coarsePupils) {
    cv::Mat grey(planes.grey.size(), CV_8UC1, cv::Scalar(kPlateValue));
    const cv::Size size = worth.size() * coarse.factor;
    cv::Mat1b pupils(size, static_cast<unsigned char>(0));
    const cv::Rect all({0, 0}, worth.size());
    for (int y = 0; y < worth.rows; y += kTile) {
        // Tiles side by side are drawn as one.
        cv::Rect run;
        for (int x = 0; x <= worth.cols; x += kTile) {
            const cv::Rect cells = cv::Rect(x, y, kTile, kTile) & all;
            if (!cells.empty() && cv::countNonZero(worth(cells)) > 0) {
                run |= cells;
                continue;
            }
            if (!run.empty()) drawCells(planes, channels, projection, coarse, run, grey, pupils);
            run = {};
        }
        if (!run.empty()) drawCells(planes, channels, projection, coarse, run, grey, pupils);
    }
    const cv::Rect plate(coarse.originPx, size);
    cv::Mat1b seen;
    cv::bitwise_and(coarsePupils, worth, seen);
    for (const cv::Rect& around : aroundPupils(seen, coarse.factor)) {
        const cv::Mat1b closed = withoutSparks(pupils(around), kSparkCells * coarse.factor);
        grey(plate)(around).setTo(kPlateValue - kBodyStep, closed);
    }
    return grey;
}

}  // namespace

std::optional<ColourPicture> colourPicture(const Photo& photo, const Reduced& coarse, const PlateRegion& region,
                                           double smallestPx) {
    if (photo.encoded.empty()) return std::nullopt;
    const auto planes = planesOf(photo);
    if (!planes) return std::nullopt;
    const auto channels = channelsOf(photo, *planes, coarse, region);
    if (!channels) return std::nullopt;
    const cv::Mat1b piece = colouredPiece(colourfulness(*channels), region, smallestPx);
    if (piece.empty()) return std::nullopt;
    const auto weights = weightsFor(*channels, piece);
    if (!weights) return std::nullopt;
    Projection projection;
    std::copy(weights->begin(), weights->end(), projection.weights.begin());
    cv::Mat1b pupils;
    const cv::Mat1f shares = reducedShares(*channels, projection, pupils);
    ColourPicture picture;
    picture.grey = projected(*planes, *channels, projection, coarse, worthDrawing(shares, region, smallestPx), pupils);
    for (std::size_t i = 0; i < 256; ++i) picture.tone.lightOf[i] = static_cast<float>(i) / 255.0F;
    picture.coarse.originPx = coarse.originPx;
    picture.coarse.factor = coarse.factor;
    picture.coarse.light.create(shares.size());
    std::transform(shares.begin(), shares.end(), picture.coarse.light.begin(),
                   [&](float share) { return picture.tone.lightOf[valueOf(share)]; });
    return picture;
}

}  // namespace ringrule
