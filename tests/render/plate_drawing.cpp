// SPDX-License-Identifier: GPL-3.0-or-later
#include "plate_drawing.h"

#include "optics.h"
#include "random.h"

#include <algorithm>
#include <cmath>
#include <opencv2/aruco.hpp>
#include <opencv2/imgproc.hpp>
#include <stdexcept>

namespace render {

namespace {

constexpr unsigned char kInk = 14;
constexpr unsigned char kWhite = 222;
constexpr unsigned char kDarkGround = 18;
constexpr double kPatchShare = 1.0 / 6.0;  // of a marker's side: white round it on a dark plate

cv::Ptr<cv::aruco::Dictionary> dictionaryNamed(const std::string& name) {
    if (name == "DICT_4X4_50") {
        return cv::aruco::getPredefinedDictionary(cv::aruco::DICT_4X4_50);
    }
    if (name == "DICT_5X5_1000") {
        return cv::aruco::getPredefinedDictionary(cv::aruco::DICT_5X5_1000);
    }
    throw std::runtime_error("unknown marker dictionary " + name);
}

// Fills an upright rectangle with exact coverage of the border texels.
void fillRectangle(PlatePicture& plate, cv::Rect2d mm, double value) {
    const double x0 = mm.x * plate.pxPerMm;
    const double x1 = (mm.x + mm.width) * plate.pxPerMm;
    const double y0 = mm.y * plate.pxPerMm;
    const double y1 = (mm.y + mm.height) * plate.pxPerMm;
    const auto share = [](int texel, double low, double high) {
        return std::clamp(std::min(texel + 1.0, high) - std::max(static_cast<double>(texel), low), 0.0, 1.0);
    };
    const int bottom = std::min(plate.reflectance.rows, static_cast<int>(std::ceil(y1)));
    const int right = std::min(plate.reflectance.cols, static_cast<int>(std::ceil(x1)));
    for (int y = std::max(0, static_cast<int>(y0)); y < bottom; ++y) {
        for (int x = std::max(0, static_cast<int>(x0)); x < right; ++x) {
            const double part = share(x, x0, x1) * share(y, y0, y1);
            unsigned char& texel = plate.reflectance(y, x);
            texel = cv::saturate_cast<unsigned char>(texel + part * (value - texel));
        }
    }
}

cv::Mat1b cellsOf(const std::string& dictionary, int id) {
    const auto words = dictionaryNamed(dictionary);
    cv::Mat cells;
    cv::aruco::drawMarker(words, id, words->markerSize + 2, cells, 1);
    return cells;
}

// Share of ink in a square of that size whose corner is given in cells.
double inkShare(const cv::Mat1b& cells, double x, double y, double size) {
    double ink = 0.0;
    for (int row = std::max(0, static_cast<int>(y)); row < std::min<double>(cells.rows, y + size); ++row) {
        for (int column = std::max(0, static_cast<int>(x)); column < std::min<double>(cells.cols, x + size); ++column) {
            const double wide = std::min(column + 1.0, x + size) - std::max<double>(column, x);
            const double high = std::min(row + 1.0, y + size) - std::max<double>(row, y);
            ink += cells(row, column) == 0 ? std::max(0.0, wide) * std::max(0.0, high) : 0.0;
        }
    }
    return ink / (size * size);
}

void drawMarker(PlatePicture& plate, const Marker& marker, const std::string& dictionary) {
    const cv::Mat1b cells = cellsOf(dictionary, marker.id);
    const double cell = marker.sideMm / cells.cols * plate.pxPerMm;
    const cv::Point2d corner = (marker.centreMm - cv::Point2d(0.5, 0.5) * marker.sideMm) * plate.pxPerMm;
    const int last = static_cast<int>(std::ceil(marker.sideMm * plate.pxPerMm)) + 1;
    for (int i = 0; i <= last; ++i) {
        for (int j = 0; j <= last; ++j) {
            const cv::Point texel(static_cast<int>(corner.x) + j, static_cast<int>(corner.y) + i);
            if (!cv::Rect({0, 0}, plate.reflectance.size()).contains(texel)) {
                continue;
            }
            const double ink = inkShare(cells, (texel.x - corner.x) / cell, (texel.y - corner.y) / cell, 1.0 / cell);
            unsigned char& value = plate.reflectance(texel);
            value = cv::saturate_cast<unsigned char>(value + ink * (kInk - value));
        }
    }
}

void writeText(PlatePicture& plate, const std::string& text, cv::Point2d centreMm, double heightMm,
               int ink = kInk + 20) {
    const double scale = heightMm * plate.pxPerMm / 21.0;  // Hershey capitals are 21 px high
    const int thickness = std::max(1, static_cast<int>(std::lround(0.16 * heightMm * plate.pxPerMm)));
    int base = 0;
    const cv::Size size = cv::getTextSize(text, cv::FONT_HERSHEY_SIMPLEX, scale, thickness, &base);
    const cv::Point origin(static_cast<int>(centreMm.x * plate.pxPerMm) - size.width / 2,
                           static_cast<int>(centreMm.y * plate.pxPerMm) + size.height / 2);
    cv::putText(plate.reflectance, text, origin, cv::FONT_HERSHEY_SIMPLEX, scale, cv::Scalar(ink), thickness,
                cv::LINE_AA);
}

// Millimetre ticks along the lower edge, a number every ten where no marker is near.
void drawScale(PlatePicture& plate, const Box& box, int ink) {
    const double size = box.plateMm.width / 200.0;  // of the drawing, against the bench box's plate
    const double foot = box.plateMm.height - 0.6 * size;
    const int margin = std::max(1, static_cast<int>(std::lround(5.0 * size)));
    const int last = static_cast<int>(box.plateMm.width) - margin;
    for (int mm = margin; mm <= last; ++mm) {
        const double length = size * (mm % 10 == 0 ? 3.6 : (mm % 5 == 0 ? 3.0 : 2.2));
        fillRectangle(plate, {mm - 0.1 * size, foot - length, 0.2 * size, length}, ink);
        const bool nearMarker = std::any_of(box.markers.begin(), box.markers.end(), [&](const Marker& m) {
            return std::abs(m.centreMm.x - mm) < 0.5 * m.sideMm + 4.0 * size && m.centreMm.y > 0.5 * box.plateMm.height;
        });
        if (mm % 10 == 0 && !nearMarker) {
            writeText(plate, std::to_string(mm), {static_cast<double>(mm), foot - 5.4 * size}, 2.0 * size, ink);
        }
    }
}

// Fine grain, faint clouds and a few scratches of a used plastic plate.
void addTexture(PlatePicture& plate, std::uint64_t seed) {
    Random random(seed);
    cv::RNG grain(seed);
    const cv::Size size = plate.reflectance.size();
    cv::Mat texture = cv::Mat::zeros(size, CV_16SC1);
    for (const auto& [texel, strength] : {std::pair{7, 2.2}, std::pair{60, 2.0}, std::pair{420, 3.5}}) {
        cv::Mat small(size.height / texel + 2, size.width / texel + 2, CV_16SC1);
        grain.fill(small, cv::RNG::NORMAL, 0.0, strength * 16.0);
        cv::Mat large;
        cv::resize(small, large, size, 0, 0, cv::INTER_LINEAR);
        texture += large;
    }
    for (int i = 0; i < 7; ++i) {
        const cv::Point from(random.below(size.width), random.below(size.height));
        const cv::Point to = from + cv::Point(random.below(500) - 250, random.below(300) - 150);
        cv::line(texture, from, to, cv::Scalar(random.between(-110, 60)), 2, cv::LINE_8);
    }
    cv::add(plate.reflectance, texture / 16, plate.reflectance, cv::noArray(), CV_8U);
}

void addSpecks(PlatePicture& plate, std::uint64_t seed) {
    Random random(seed);
    const int count = 4 + random.below(7);
    for (int i = 0; i < count; ++i) {
        const cv::Point place(random.below(plate.reflectance.cols), random.below(plate.reflectance.rows));
        const int radius = std::max(1, static_cast<int>(plate.reflectance.cols / 200.0 * random.between(0.08, 0.22)));
        cv::circle(plate.reflectance, place, radius, cv::Scalar(random.between(120, 190)), cv::FILLED, cv::LINE_AA);
    }
}

void addStain(PlatePicture& plate, const Stain& stain) {
    const auto texel = [&](cv::Point2d mm) {
        return cv::Point(cvRound(mm.x * plate.pxPerMm), cvRound(mm.y * plate.pxPerMm));
    };
    cv::Mat1b stroke(plate.reflectance.size(), static_cast<unsigned char>(0));
    const int wide = std::max(1, cvRound(stain.widthMm * plate.pxPerMm));
    cv::line(stroke, texel(stain.fromMm), texel(stain.toMm), cv::Scalar(255), wide, cv::LINE_AA);
    cv::Mat1f share;
    stroke.convertTo(share, CV_32F, (stain.share - 1.0) / 255.0, 1.0);
    cv::multiply(plate.reflectance, share, plate.reflectance, 1.0, CV_8U);
}

// A white card with its marker and its code, drawn upright, then turned onto the plate.
void placeCard(PlatePicture& plate, const Box& box, const Animal& animal, const Card& card) {
    const double width = cardWidthMm(card);
    const double height = 1.4 * card.markerMm;
    PlatePicture face;
    face.pxPerMm = plate.pxPerMm;
    face.reflectance = cv::Mat1b(static_cast<int>(height * face.pxPerMm), static_cast<int>(width * face.pxPerMm),
                                 static_cast<unsigned char>(238));
    const cv::Point2d marker(0.7 * card.markerMm, 0.5 * height);
    drawMarker(face, {animal.card, marker, card.markerMm}, box.cardDictionary);
    writeText(face, card.text, {0.5 * (1.25 * card.markerMm + width), 0.5 * height}, 0.30 * card.markerMm);
    const double angle = card.rotationDeg * kPi / 180.0;
    const double c = std::cos(angle);
    const double s = std::sin(angle);
    const cv::Point2d centre = card.centreMm * plate.pxPerMm;
    const cv::Point2d pivot = marker * face.pxPerMm;
    // Texel centres lie half a texel inside their span.
    const double fromX = pivot.x - 0.5;
    const double fromY = pivot.y - 0.5;
    const cv::Matx23d onPlate(c, -s, centre.x - 0.5 - c * fromX + s * fromY, s, c,
                              centre.y - 0.5 - s * fromX - c * fromY);
    cv::Mat1b mask(face.reflectance.size(), static_cast<unsigned char>(255));
    cv::Mat1b turned;
    cv::Mat1b inside;
    cv::warpAffine(mask, inside, onPlate, plate.reflectance.size(), cv::INTER_NEAREST);
    cv::warpAffine(face.reflectance, turned, onPlate, plate.reflectance.size(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
    cv::Mat1b rim;
    cv::dilate(inside, rim, cv::Mat::ones(5, 5, CV_8U));
    plate.reflectance.setTo(150, rim);
    turned.copyTo(plate.reflectance, inside);
}

}  // namespace

double cardWidthMm(const Card& card) {
    return card.markerMm * (1.6 + 0.31 * static_cast<double>(card.text.size()));
}

std::array<cv::Point2d, 4> markerCornersMm(cv::Point2d centreMm, double sideMm, double rotationDeg) {
    const double angle = rotationDeg * kPi / 180.0;
    const cv::Point2d x = cv::Point2d(std::cos(angle), std::sin(angle)) * (0.5 * sideMm);
    const cv::Point2d y = cv::Point2d(-std::sin(angle), std::cos(angle)) * (0.5 * sideMm);
    return {centreMm - x - y, centreMm + x - y, centreMm + x + y, centreMm - x + y};
}

PlatePicture drawPlate(const Box& box, const Animal& animal, const Card& card, std::uint64_t seed, bool dark,
                       const std::vector<Stain>& stains) {
    PlatePicture plate;
    plate.pxPerMm = std::floor(4000.0 / std::max(box.plateMm.width, box.plateMm.height));
    plate.reflectance = cv::Mat1b(static_cast<int>(std::lround(box.plateMm.height * plate.pxPerMm)),
                                  static_cast<int>(std::lround(box.plateMm.width * plate.pxPerMm)),
                                  dark ? kDarkGround : kWhite);
    for (const Marker& marker : box.markers) {
        const double patch = (1.0 + 2.0 * kPatchShare) * marker.sideMm;
        const cv::Point2d corner = marker.centreMm - cv::Point2d(0.5, 0.5) * patch;
        if (dark) fillRectangle(plate, {corner.x, corner.y, patch, patch}, kWhite);
        drawMarker(plate, marker, box.plateDictionary);
    }
    drawScale(plate, box, dark ? kWhite : kInk + 25);
    for (const Stain& stain : stains) addStain(plate, stain);
    if (card.shown && animal.card >= 0) {
        placeCard(plate, box, animal, card);
    }
    addTexture(plate, seedOf(1, 77));  // the same plate in every photo
    addSpecks(plate, seedOf(seed, 78));
    return plate;
}

}  // namespace render
