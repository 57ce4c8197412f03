// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/colour_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

#include "outline/components.h"

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

constexpr int kTile = 4;              ///< side of the tiles that are drawn, in cells
constexpr int kAround = 4;            ///< cells about what is coloured or dark that are drawn with it
constexpr float kShows = 0.25F;       ///< of the animal's step from the plate
constexpr double kLeastShows = 0.25;  ///< of the smallest animal: less is noise
constexpr double kMostShows = 0.35;   ///< of the plate: what shows all over is the plate's own colour
constexpr int kSparkCells = 2;        ///< widest spark in an eye

using Light3 = std::array<float, 3>;

/// The photo at half its resolution, which is that of the colours in most files: all three of one size.
struct Planes {
    cv::Mat grey, cb, cr;
};

/// A plane of colour at half the photo's resolution; empty when its size is none that a photo's colour has.
cv::Mat halved(const cv::Mat& plane, const cv::Size& photo) {
    const cv::Size half = photo / 2;
    if (plane.empty()) return {};
    const int across = static_cast<int>(std::lround(static_cast<double>(photo.width) / plane.cols));
    const int down = static_cast<int>(std::lround(static_cast<double>(photo.height) / plane.rows));
    const auto fits = [](int photoPx, int planePx, int times) {
        return times >= 1 && planePx == (photoPx + times - 1) / times;
    };
    if (!fits(photo.width, plane.cols, across) || !fits(photo.height, plane.rows, down)) return {};
    const auto cut = [](int halfPx, int times) { return (2 * halfPx + times - 1) / times; };
    const cv::Mat whole = plane(cv::Rect(0, 0, cut(half.width, across), cut(half.height, down)));
    if (whole.size() == half) return whole;
    cv::Mat small;
    cv::resize(whole, small, half, 0.0, 0.0, cv::INTER_AREA);
    return small;
}

std::optional<Planes> planesOf(const Photo& photo) {
    const Chroma chroma = decodeChroma(photo);
    const cv::Size size = photo.grey.size();
    Planes planes{photo.halfGrey.empty() ? halved(photo.grey, size) : photo.halfGrey, halved(chroma.cb, size),
                  halved(chroma.cr, size)};
    if (planes.grey.empty() || planes.cb.empty() || planes.cr.empty()) return std::nullopt;
    return planes;
}

/// The cells in which colours are told apart: twice as wide as the reduced picture's pixels, some 0.6 mm.
struct Grid {
    cv::Point originPx;  ///< of the half picture
    int factor = 1;      ///< pixels of the half picture along a cell's side
    cv::Size size;       ///< cells

    [[nodiscard]] cv::Rect inHalf(const cv::Rect& cells) const {
        return {originPx + cells.tl() * factor, cells.size() * factor};
    }
};

/// What cb and cr add to grey for each colour, in grey values (ITU-T T.871), and the light of what comes of it, which
/// may lie beyond 0 … 255.
struct ColourSteps {
    static constexpr int kBeyond = 256;
    std::array<int, 256> blue{}, greenByBlue{}, greenByRed{}, red{};  ///< those of green in 1/65536
    std::array<float, 3 * kBeyond> light{};

    ColourSteps() {
        for (int i = 0; i < 256; ++i) {
            const auto at = static_cast<std::size_t>(i);
            const double off = i - 128.0;
            blue[at] = static_cast<int>(std::lround(1.772 * off)) + kBeyond;
            red[at] = static_cast<int>(std::lround(1.402 * off)) + kBeyond;
            greenByBlue[at] = static_cast<int>(std::lround(-0.344136 * 65536.0 * off)) + kBeyond * 65536 + 32768;
            greenByRed[at] = static_cast<int>(std::lround(-0.714136 * 65536.0 * off));
        }
        for (int i = 0; i < std::ssize(light); ++i)
            light[static_cast<std::size_t>(i)] =
                photoTone().lightOf[static_cast<std::size_t>(std::clamp(i - kBeyond, 0, 255))];
    }
    [[nodiscard]] float lightAt(int value) const { return light[static_cast<std::size_t>(value)]; }
};

/// Light of blue, green and red.
Light3 lightsOf(unsigned char grey, unsigned char cb, unsigned char cr) {
    static const ColourSteps steps;
    const int green = (steps.greenByBlue[cb] + steps.greenByRed[cr]) >> 16;
    return {steps.lightAt(grey + steps.blue[cb]), steps.lightAt(grey + green), steps.lightAt(grey + steps.red[cr])};
}

/// A plane's mean in each cell.
cv::Mat1b cellsOf(const cv::Mat& plane, const Grid& grid) {
    cv::Mat1b cells;
    cv::resize(plane(grid.inHalf({{0, 0}, grid.size})), cells, grid.size, 0.0, 0.0, cv::INTER_AREA);
    return cells;
}

/// Cells that lie on the plate, all of them, and beside its marks.
cv::Mat1b usableCells(const PlateRegion& region, const Grid& grid) {
    cv::Mat1b usable = region.plate.clone();
    usable.setTo(0, region.marks);
    cv::Mat1b cells;
    cv::resize(usable(cv::Rect({0, 0}, grid.size * 2)), cells, grid.size, 0.0, 0.0, cv::INTER_AREA);
    cv::threshold(cells, cells, 254.0, 255.0, cv::THRESH_BINARY);
    return cells;
}

struct Channels {
    std::array<cv::Mat1f, 3> ratio;     ///< light of each cell over the plate's
    std::array<cv::Mat1f, 3> perPlate;  ///< one over the plate's light
};

std::optional<Channels> channelsOf(const Planes& planes, const Grid& grid, const cv::Mat1b& usable) {
    const cv::Mat1b grey = cellsOf(planes.grey, grid);
    const cv::Mat1b cb = cellsOf(planes.cb, grid);
    const cv::Mat1b cr = cellsOf(planes.cr, grid);
    std::array<cv::Mat1f, 3> light;
    for (cv::Mat1f& of : light) of.create(grey.size());
    for (int y = 0; y < grey.rows; ++y) {
        const std::array<float*, 3> to{light[0].ptr<float>(y), light[1].ptr<float>(y), light[2].ptr<float>(y)};
        for (int x = 0; x < grey.cols; ++x) {
            const Light3 here = lightsOf(grey(y, x), cb(y, x), cr(y, x));
            for (std::size_t c = 0; c < 3; ++c) to[c][x] = here[c];
        }
    }
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
    cv::GaussianBlur(range, range, {}, 0.5);
    return range;
}

double quantileOf(const cv::Mat1f& values, const cv::Mat1b& mask, double share) {
    std::vector<float> chosen;
    for (int y = 0; y < values.rows; ++y) {
        for (int x = 0; x < values.cols; ++x) {
            if (mask(y, x) != 0) chosen.push_back(values(y, x));
        }
    }
    if (chosen.empty()) return 1e9;
    const auto at = chosen.begin() + static_cast<std::ptrdiff_t>(share * static_cast<double>(chosen.size() - 1));
    std::nth_element(chosen.begin(), at, chosen.end());
    return static_cast<double>(*at);
}

/// The largest coloured piece, drawn in by a cell; empty when it is smaller than `smallest`, in cells.
cv::Mat1b colouredPiece(const cv::Mat1f& range, const cv::Mat1b& usable, double smallest) {
    const double middle = quantileOf(range, usable, 0.5);
    const double spread = quantileOf(range, usable, 0.75) - middle;
    cv::Mat1b coloured;
    cv::compare(range, middle + 8.0 * spread + 0.03, coloured, cv::CMP_GT);
    coloured &= usable;
    const Components components = componentsOf(coloured);
    const auto largest = std::max_element(components.found.begin(), components.found.end(),
                                          [](const Component& a, const Component& b) { return a.areaPx < b.areaPx; });
    if (largest == components.found.end() || largest->areaPx < smallest) return {};
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

/// How far each cell has gone to the animal's colour: 0 for the plate, 1 for the animal.
cv::Mat1f sharesOf(const Channels& channels, const Projection& projection) {
    const auto& ratio = channels.ratio;
    cv::Mat1f shares(ratio[0].size());
    for (int y = 0; y < shares.rows; ++y) {
        for (int x = 0; x < shares.cols; ++x)
            shares(y, x) = projection.shareOf({ratio[0](y, x), ratio[1](y, x), ratio[2](y, x)});
    }
    return shares;
}

/// Standard deviation of the plate's own shares, pixel by pixel of the reduced picture: four to a cell.
double spreadOf(const cv::Mat1f& shares, const cv::Mat1b& usable) {
    constexpr double kSdsToQuartile = 0.6745;
    return 2.0 * (quantileOf(shares, usable, 0.5) - quantileOf(shares, usable, 0.25)) / kSdsToQuartile;
}

/// Where the cells show something that is no print: there the picture is drawn, with what surrounds it.
cv::Mat1b worthDrawing(const cv::Mat1f& shares, const cv::Mat1b& usable, double smallest) {
    cv::Mat1b shows;
    cv::compare(shares, kShows, shows, cv::CMP_GT);
    shows &= usable;
    const Components components = componentsOf(shows);
    cv::Mat1b worth(shares.size(), static_cast<unsigned char>(0));
    for (std::size_t i = 0; i < components.found.size(); ++i) {
        const Component& component = components.found[i];
        if (component.areaPx < kLeastShows * smallest) continue;
        worth(component.bounds).setTo(255, components.labels(component.bounds) == static_cast<int>(i) + 1);
    }
    cv::dilate(worth, worth, cv::Mat1b::ones(2 * kAround + 1, 2 * kAround + 1));
    return worth;
}

/// Runs of tiles side by side that hold something worth drawing, in cells.
std::vector<cv::Rect> tilesOf(const cv::Mat1b& worth) {
    std::vector<cv::Rect> tiles;
    const cv::Rect all({0, 0}, worth.size());
    for (int y = 0; y < worth.rows; y += kTile) {
        bool onward = false;
        for (int x = 0; x < worth.cols; x += kTile) {
            const cv::Rect cells = cv::Rect(x, y, kTile, kTile) & all;
            const bool drawn = cv::countNonZero(worth(cells)) > 0;
            if (drawn && onward) {
                tiles.back() |= cells;
            } else if (drawn) {
                tiles.push_back(cells);
            }
            onward = drawn;
        }
    }
    return tiles;
}

/// The half picture along the animal's colour.
struct HalfPicture {
    cv::Mat1b value;
    cv::Mat1b pupils;      ///< set where it is dark …
    cv::Mat1b pupilCells;  ///< … and in which cells
};

/// Some cells of the half picture. The plate's light is taken to be the same all over a cell.
void drawCells(const Planes& planes, const Channels& channels, const Projection& projection, const Grid& grid,
               const cv::Rect& cells, HalfPicture& half) {
    const cv::Rect part = grid.inHalf(cells);
    for (int y = part.y; y < part.br().y; ++y) {
        const auto* grey = planes.grey.ptr<unsigned char>(y);
        const auto* cb = planes.cb.ptr<unsigned char>(y);
        const auto* cr = planes.cr.ptr<unsigned char>(y);
        auto* to = half.value.ptr<unsigned char>(y);
        auto* dark = half.pupils.ptr<unsigned char>(y);
        const int row = cells.y + (y - part.y) / grid.factor;
        for (int cell = 0; cell < cells.width; ++cell) {
            Light3 perPlate{};
            for (std::size_t c = 0; c < 3; ++c) perPlate[c] = channels.perPlate[c](row, cells.x + cell);
            const int from = part.x + cell * grid.factor;
            for (int x = from; x < from + grid.factor; ++x) {
                Light3 ratio = lightsOf(grey[x], cb[x], cr[x]);
                for (std::size_t c = 0; c < 3; ++c) ratio[c] *= perPlate[c];
                to[x] = valueOf(projection.shareOf(ratio));
                if (Projection::meanOf(ratio) < kPupil) dark[x] = half.pupilCells(row, cells.x + cell) = 255;
            }
        }
    }
}

/// The spark in an eye is as light and colourless as the plate: gaps between dark places are made dark.
void closeSparks(const Grid& grid, HalfPicture& half) {
    const int sparkPx = kSparkCells * grid.factor;
    const cv::Mat ellipse = cv::getStructuringElement(cv::MORPH_ELLIPSE, {sparkPx + 1, sparkPx + 1});
    const cv::Rect all({0, 0}, grid.size);
    cv::Mat1b near;
    for (const Component& pupil : componentsOf(half.pupilCells).found) {
        const cv::Point room(kSparkCells, kSparkCells);
        const cv::Rect part = grid.inHalf(cv::Rect(pupil.bounds.tl() - room, pupil.bounds.br() + room) & all);
        cv::morphologyEx(half.pupils(part), near, cv::MORPH_CLOSE, ellipse);
        half.value(part).setTo(kPlateValue - kBodyStep, near);
    }
}

/// The half picture where that shows anything; elsewhere as light as the plate.
cv::Mat1b halfPicture(const Planes& planes, const Channels& channels, const Projection& projection, const Grid& grid,
                      const std::vector<cv::Rect>& tiles) {
    HalfPicture half;
    half.value = cv::Mat1b(planes.grey.size(), static_cast<unsigned char>(kPlateValue));
    half.pupils = cv::Mat1b(planes.grey.size(), static_cast<unsigned char>(0));
    half.pupilCells = cv::Mat1b(grid.size, static_cast<unsigned char>(0));
    for (const cv::Rect& cells : tiles) drawCells(planes, channels, projection, grid, cells, half);
    closeSparks(grid, half);
    return half.value;
}

/// The half picture at the photo's size, linear between pixel centres, and the same reduced: two of its pixels to a
/// cell's side.
void enlarge(const cv::Mat1b& half, const Grid& grid, const std::vector<cv::Rect>& tiles, ColourPicture& picture) {
    const cv::Rect all({0, 0}, half.size());
    cv::Mat large;
    cv::Mat1b reduced;
    for (const cv::Rect& cells : tiles) {
        const cv::Rect part = grid.inHalf(cells);
        const cv::Rect around = cv::Rect(part.tl() - cv::Point(1, 1), part.size() + cv::Size(2, 2)) & all;
        cv::resize(half(around), large, around.size() * 2, 0.0, 0.0, cv::INTER_LINEAR);
        const cv::Mat own = large(cv::Rect((part.tl() - around.tl()) * 2, part.size() * 2));
        own.copyTo(picture.grey(cv::Rect(part.tl() * 2, part.size() * 2)));
        cv::resize(own, reduced, cells.size() * 2, 0.0, 0.0, cv::INTER_AREA);
        reduced.convertTo(picture.coarse.light(cv::Rect(cells.tl() * 2, cells.size() * 2)), CV_32F, 1.0 / 255.0);
    }
}

}  // namespace

std::optional<ColourPicture> colourPicture(const Photo& photo, const Reduced& coarse, const PlateRegion& region,
                                           double smallestPx) {
    if (photo.encoded.empty()) return std::nullopt;
    const auto planes = planesOf(photo);
    if (!planes) return std::nullopt;
    const Grid grid{coarse.originPx / 2, coarse.factor, coarse.light.size() / 2};
    const double smallest = smallestPx / 4.0;
    const cv::Mat1b usable = usableCells(region, grid);
    const auto channels = channelsOf(*planes, grid, usable);
    if (!channels) return std::nullopt;
    const cv::Mat1b piece = colouredPiece(colourfulness(*channels), usable, smallest);
    if (piece.empty()) return std::nullopt;
    const auto weights = weightsFor(*channels, piece);
    if (!weights) return std::nullopt;
    Projection projection;
    std::copy(weights->begin(), weights->end(), projection.weights.begin());
    const cv::Mat1f shares = sharesOf(*channels, projection);
    const std::vector<cv::Rect> tiles = tilesOf(worthDrawing(shares, usable, smallest));
    int drawn = 0;
    for (const cv::Rect& cells : tiles) drawn += cells.area();
    if (drawn > kMostShows * cv::countNonZero(usable)) return std::nullopt;
    const cv::Mat1b half = halfPicture(*planes, *channels, projection, grid, tiles);
    ColourPicture picture;
    for (std::size_t i = 0; i < 256; ++i) picture.tone.lightOf[i] = static_cast<float>(i) / 255.0F;
    picture.grey = cv::Mat(photo.grey.size(), CV_8UC1, cv::Scalar(kPlateValue));
    picture.coarse = {cv::Mat1f(coarse.light.size(), static_cast<float>(kPlateValue / 255.0)), grid.originPx * 2,
                      coarse.factor};
    picture.background.coefficients[0] = kPlateValue / 255.0;
    picture.background.size = coarse.light.size();
    picture.background.relativeSd = kBodyStep / kPlateValue * spreadOf(shares, usable);
    picture.background.fitted = true;
    enlarge(half, grid, tiles, picture);
    return picture;
}

}  // namespace ringrule
