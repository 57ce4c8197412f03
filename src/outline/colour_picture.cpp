// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/colour_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

#include "outline/background.h"
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

struct Channels {
    std::array<cv::Mat, 3> full;        ///< CV_8UC1 each
    std::array<cv::Mat1f, 3> ratio;     ///< reduced, over the plate's light
    std::array<cv::Mat1f, 3> perPlate;  ///< reduced, one over the plate's light
};

std::optional<Channels> channelsOf(const cv::Mat& colour, const Reduced& coarse, const PlateRegion& region) {
    Channels channels;
    std::vector<cv::Mat> split;
    cv::split(colour, split);
    cv::Mat1b usable = region.plate.clone();
    usable.setTo(0, region.marks);
    const cv::Rect part(coarse.originPx, coarse.light.size() * coarse.factor);
    for (std::size_t c = 0; c < 3; ++c) {
        channels.full[c] = split[c];
        const cv::Mat1f light = reducedLight(split[c], photoTone(), part, coarse.factor).light;
        const Background background = fitBackground(light, usable);
        if (!background.fitted) return std::nullopt;
        channels.ratio[c] = dividedBy(light, background);
        cv::divide(channels.ratio[c], light + 1e-4F, channels.perPlate[c]);
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
    cv::Mat1i labels;
    cv::Mat stats;
    cv::Mat centroids;
    const int count = cv::connectedComponentsWithStats(coloured, labels, stats, centroids, 8, CV_32S);
    int largest = 0;
    for (int label = 1; label < count; ++label) {
        if (largest == 0 || stats.at<int>(label, cv::CC_STAT_AREA) > stats.at<int>(largest, cv::CC_STAT_AREA))
            largest = label;
    }
    if (largest == 0 || stats.at<int>(largest, cv::CC_STAT_AREA) < smallestPx) return {};
    cv::Mat1b piece;
    cv::compare(labels, largest, piece, cv::CMP_EQ);
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

/// The projection at full resolution, or darkness where that is plainer, over the reduced picture's part of the photo.
cv::Mat projected(const Channels& channels, const std::array<double, 3>& weights, const Reduced& coarse) {
    cv::Mat grey(channels.full[0].size(), CV_8UC1, cv::Scalar(kPlateValue));
    const cv::Size size = coarse.light.size() * coarse.factor;
    std::array<cv::Mat1f, 3> scaled;
    for (std::size_t c = 0; c < 3; ++c) {
        cv::resize(channels.perPlate[c], scaled[c], size, 0.0, 0.0, cv::INTER_LINEAR);
    }
    cv::Mat1b pupils(size);
    for (int y = 0; y < size.height; ++y) {
        unsigned char* to = grey.ptr<unsigned char>(coarse.originPx.y + y) + coarse.originPx.x;
        for (int x = 0; x < size.width; ++x) {
            float sum = 0.0F;
            float light = 0.0F;
            for (std::size_t c = 0; c < 3; ++c) {
                const unsigned char value =
                    channels.full[c].ptr<unsigned char>(coarse.originPx.y + y)[coarse.originPx.x + x];
                const float ratio = photoTone().lightOf[value] * scaled[c](y, x);
                sum += ratio * static_cast<float>(weights[c]);
                light += ratio / 3.0F;
            }
            const float dark = std::clamp((kDeepestShadow - light) / kDarkSpan, 0.0F, 1.0F);
            pupils(y, x) = light < kPupil ? 255 : 0;
            to[x] =
                cv::saturate_cast<unsigned char>(kPlateValue - kBodyStep * static_cast<double>(std::max(sum, dark)));
        }
    }
    // The spark in an eye is as light and colourless as the plate. A factor of the reduced picture is about 0.3 mm; no
    // spark is wider than four.
    const int spark = 4 * coarse.factor + 1;
    cv::morphologyEx(pupils, pupils, cv::MORPH_CLOSE, cv::getStructuringElement(cv::MORPH_ELLIPSE, {spark, spark}));
    grey(cv::Rect(coarse.originPx, size)).setTo(kPlateValue - kBodyStep, pupils);
    return grey;
}

}  // namespace

std::optional<ColourPicture> colourPicture(const Photo& photo, const Reduced& coarse, const PlateRegion& region,
                                           double smallestPx) {
    if (photo.encoded.empty()) return std::nullopt;
    const cv::Mat colour = decodeColour(photo);
    if (colour.size() != photo.grey.size()) return std::nullopt;
    const auto channels = channelsOf(colour, coarse, region);
    if (!channels) return std::nullopt;
    const cv::Mat1b piece = colouredPiece(colourfulness(*channels), region, smallestPx);
    if (piece.empty()) return std::nullopt;
    const auto weights = weightsFor(*channels, piece);
    if (!weights) return std::nullopt;
    ColourPicture picture;
    picture.grey = projected(*channels, *weights, coarse);
    for (std::size_t i = 0; i < 256; ++i) picture.tone.lightOf[i] = static_cast<float>(i) / 255.0F;
    return picture;
}

}  // namespace ringrule
