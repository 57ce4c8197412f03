// SPDX-License-Identifier: GPL-3.0-or-later
// Plates measured back from their print: 600 dots an inch, markers found by OpenCV.
#include <catch2/catch.hpp>
#include <cmath>

#include <opencv2/imgproc.hpp>

#include "../records/scratch_folder.h"
#include "paper_raster.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/scale.h"
#include "ringrule/outline/find_outline.h"
#include "ringrule/sheets/plate_sheet.h"
#include "sheets/plate_tiles.h"

using namespace ringrule;

namespace {

// A pixel is 0.042 mm; the paper promises 0.1 mm.
constexpr double kToleranceMm = 0.1;

struct Written {
    Box box;
    std::filesystem::path pdf;
    int sheets = 0;
};

Written written(const ScratchFolder& folder, const PlateSize& size, const PlateSheetOptions& options) {
    Written result;
    result.pdf = folder / "plate.pdf";
    result.sheets = writePlate(boxForPlate(plateLayout(size), "printed"), result.pdf, folder / "box.json", options);
    result.box = readBox(folder / "box.json");
    return result;
}

std::array<cv::Point2d, 4> cornersOf(const PlateMarker& marker) {
    const cv::Point2d c(marker.centreMm.x, marker.centreMm.y);
    const double h = 0.5 * marker.sideMm;
    return {c + cv::Point2d(-h, -h), c + cv::Point2d(h, -h), c + cv::Point2d(h, h), c + cv::Point2d(-h, h)};
}

using Found = std::map<int, std::vector<cv::Point2d>>;

// Where the plate's origin lies on the page: by translation alone, so that scale and turn cannot hide in it.
cv::Point2d originOn(const Found& found, const PlateLayout& plate) {
    cv::Point2d sum;
    int count = 0;
    for (const PlateMarker& marker : plate.markers) {
        if (!found.contains(marker.id)) continue;
        for (std::size_t k = 0; k < 4; ++k, ++count) sum += found.at(marker.id)[k] - cornersOf(marker)[k];
    }
    REQUIRE(count > 0);
    return sum * (1.0 / count);
}

double largestMiss(const Found& found, const PlateLayout& plate) {
    const cv::Point2d origin = originOn(found, plate);
    double largest = 0.0;
    for (const PlateMarker& marker : plate.markers)
        for (std::size_t k = 0; found.contains(marker.id) && k < 4; ++k)
            largest = std::max(largest, cv::norm(found.at(marker.id)[k] - origin - cornersOf(marker)[k]));
    return largest;
}

Photo photoOf(const cv::Mat1b& grey) {
    Photo photo;
    photo.path = "raster.png";
    photo.grey = grey;
    return photo;
}

// A raster's values are shares of paper; a photo's are light by the sRGB curve.
cv::Mat1b asLight(const cv::Mat1b& grey, double paper) {
    cv::Mat1b curve(1, 256);
    for (int value = 0; value < 256; ++value) {
        const double light = 0.03 + (paper - 0.03) * value / 255.0;  // ink is not quite black
        curve(0, value) = cv::saturate_cast<unsigned char>(
            255.0 * (light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1.0 / 2.4) - 0.055));
    }
    cv::Mat1b photo;
    cv::LUT(grey, curve, photo);
    return photo;
}

// The plate cut out along its outline, as a camera square to it would see it on a grey bench.
cv::Mat1b cutOut(const raster::Page& page, const Box& box) {
    const cv::Point2d origin = originOn(raster::markersOn(page, cv::aruco::DICT_4X4_50), box.plate) * page.pxPerMm;
    const cv::Rect part(cvRound(origin.x), cvRound(origin.y), cvRound(box.plate.widthMm * page.pxPerMm),
                        cvRound(box.plate.heightMm * page.pxPerMm));
    cv::Mat1b view;
    cv::copyMakeBorder(page.grey(part), view, 60, 60, 60, 60, cv::BORDER_CONSTANT, cv::Scalar(90));
    return view;
}

}  // namespace

TEST_CASE("printed markers lie where the box file says") {
    struct Sheet {
        const char* size;
        Paper paper;
        PlateTone tone;
    };
    const auto sheet = GENERATE(values<Sheet>({{"bench", Paper::A4, PlateTone::Pale},
                                               {"tall", Paper::Letter, PlateTone::Dark},
                                               {"tray", Paper::Letter, PlateTone::Pale}}));
    INFO(sheet.size);
    const ScratchFolder folder;
    const Written plate = written(folder, plateSizeOf(sheet.size), {sheet.paper, sheet.tone, "box.json"});
    REQUIRE(plate.sheets == 1);
    CHECK(raster::pagesOf(plate.pdf) == 2);  // the plate, and how to make it
    const raster::Page page = raster::pageOf(plate.pdf, 1);
    const Found found = raster::markersOn(page, cv::aruco::DICT_4X4_50);
    REQUIRE(found.size() == plate.box.plate.markers.size());
    CHECK(largestMiss(found, plate.box.plate) < kToleranceMm);
    for (const PlateMarker& marker : plate.box.plate.markers) {
        const auto& c = found.at(marker.id);
        for (std::size_t k = 0; k < 4; ++k)
            CHECK(cv::norm(c[(k + 1) % 4] - c[k]) == Approx(marker.sideMm).margin(kToleranceMm));
    }
}

TEST_CASE("check bars are as long as they say") {
    struct Bars {
        const char* size;
        Paper paper;
        double acrossMm;
        double downMm;
    };
    const auto bars = GENERATE(values<Bars>({{"bench", Paper::A4, 200.0, 150.0},
                                             {"bench", Paper::Letter, 200.0, 150.0},
                                             {"tall", Paper::A4, 150.0, 200.0}}));
    INFO(bars.size);
    const ScratchFolder folder;
    const Written plate = written(folder, plateSizeOf(bars.size), {bars.paper, PlateTone::Pale, "box.json"});
    const raster::Page page = raster::pageOf(plate.pdf, 1);
    const auto across = raster::longestBlackRun(page.grey, page.pxPerMm);
    CHECK(across.second - across.first == Approx(bars.acrossMm).margin(kToleranceMm));
    cv::Mat1b turned;
    cv::transpose(page.grey, turned);
    const auto down = raster::longestBlackRun(turned, page.pxPerMm);
    CHECK(down.second - down.first == Approx(bars.downMm).margin(kToleranceMm));
    // Off the strip that printers cannot reach.
    CHECK(across.first > 9.0);
    CHECK(down.second < page.heightMm() - 9.0);
}

TEST_CASE("joined sheets make one plate") {
    const auto paper = GENERATE(Paper::A4, Paper::Letter);
    const ScratchFolder folder;
    const Written plate = written(folder, plateSizeOf("longest"), {paper, PlateTone::Pale, "box.json"});
    REQUIRE(plate.sheets == 2);
    const PlateTiles tiles = tilesOf(plate.box.plate, paper);
    const double cut = tiles.cutsXMm[1];
    constexpr int kDotsPerInch = 600;
    const double pxPerMm = kDotsPerInch / raster::kMmPerInch;
    const int height = cvRound(plate.box.plate.heightMm * pxPerMm);
    cv::Mat1b joined(height, cvRound(plate.box.plate.widthMm * pxPerMm), static_cast<unsigned char>(255));
    std::size_t markers = 0;
    for (int sheet = 0; sheet < 2; ++sheet) {
        const raster::Page page = raster::pageOf(plate.pdf, sheet + 1, kDotsPerInch);
        const Found found = raster::markersOn(page, cv::aruco::DICT_4X4_50);
        markers += found.size();
        CHECK(largestMiss(found, plate.box.plate) < kToleranceMm);
        const cv::Point2d origin = originOn(found, plate.box.plate);
        // The stroke of the ring marks, above the plate, tells where to cut or to lay the cut edge.
        const cv::Point2d ring = (origin + cv::Point2d(cut, -4.1)) * pxPerMm;
        const cv::Mat1b strip = page.grey(cv::Rect(cvRound(ring.x) - 20, cvRound(ring.y) - 6, 41, 12));
        const auto stroke = raster::longestBlackRun(strip, pxPerMm);
        CHECK(0.5 * (stroke.first + stroke.second) - 20.0 / pxPerMm + cvRound(ring.x) / pxPerMm ==
              Approx(origin.x + cut).margin(kToleranceMm));
        // The page cut there and laid down.
        const int from = sheet == 0 ? 0 : cvRound(cut * pxPerMm),
                  to = sheet == 0 ? cvRound(cut * pxPerMm) : joined.cols;
        const cv::Rect part(cvRound(origin.x * pxPerMm) + from, cvRound(origin.y * pxPerMm), to - from, height);
        page.grey(part).copyTo(joined(cv::Rect(from, 0, to - from, height)));
    }
    CHECK(markers == plate.box.plate.markers.size());
    const raster::Page whole{joined, pxPerMm};
    const Found found = raster::markersOn(whole, cv::aruco::DICT_4X4_50);
    CHECK(found.size() == plate.box.plate.markers.size());
    CHECK(largestMiss(found, plate.box.plate) < kToleranceMm);
}

TEST_CASE("a plate that was printed is found with its box file, and its scale is that of the raster") {
    const auto tone = GENERATE(PlateTone::Pale, PlateTone::Dark);
    const ScratchFolder folder;
    const Written plate = written(folder, plateSizeOf("bench"), {Paper::A4, tone, "box.json"});
    const raster::Page page = raster::pageOf(plate.pdf, 1, 300);
    const cv::Mat1b light = asLight(page.grey, 0.8);
    const auto found = findPlate(photoOf(light), plate.box);
    REQUIRE(found);
    CHECK(found.value().markers.size() == plate.box.plate.markers.size());
    // Corners are refined to a few hundredths of a pixel.
    CHECK(found.value().cornerRmsPx < 0.1);
    const auto scale = Scale::fromPlate(plate.box, found.value(), light.cols, light.rows);
    REQUIRE(scale);
    const PixelPoint from{1000.0, 900.0}, to{2600.0, 1300.0};
    const double lengthMm = distance(scale.value().plateFromPixel(from), scale.value().plateFromPixel(to));
    // A tenth of a pixel over the plate's 2,362 is four hundred-thousandths.
    CHECK(lengthMm == Approx(distance(from, to) / page.pxPerMm).epsilon(1e-4));
}

TEST_CASE("no print of a pale plate is taken for an animal, and an animal before it is found alone") {
    const auto size = GENERATE(values<std::string>({"tray", "small", "bench", "tall", "long"}));
    const int dotsPerInch = GENERATE(150, 400);
    INFO(size << " at " << dotsPerInch << " dots an inch");
    const ScratchFolder folder;
    const Written plate = written(folder, plateSizeOf(size), {Paper::A4, PlateTone::Pale, "box.json"});
    const raster::Page page = raster::pageOf(plate.pdf, 1, dotsPerInch);
    cv::Mat1b view = cutOut(page, plate.box);
    const auto outlinesIn = [&](const cv::Mat1b& print) {
        cv::Mat1b grey;
        cv::GaussianBlur(print, grey, {}, 1.0);
        grey = asLight(grey, 0.7);
        const auto found = findPlate(photoOf(grey), plate.box);
        REQUIRE(found);
        const auto scale = Scale::fromPlate(plate.box, found.value(), grey.cols, grey.rows);
        REQUIRE(scale);
        return findOutlines(photoOf(grey), plate.box, found.value(), scale.value());
    };
    const auto empty = outlinesIn(view);
    REQUIRE_FALSE(empty);
    CHECK(empty.refusal().reason == "no-animal");

    // An ellipse in the free middle, 0.6 of the plate long and 6 mm thick.
    const bool wide = plate.box.plate.widthMm > plate.box.plate.heightMm;
    const double half = 0.3 * std::max(plate.box.plate.widthMm, plate.box.plate.heightMm) * page.pxPerMm;
    const cv::Size axes(cvRound(half), cvRound(3.0 * page.pxPerMm));
    cv::ellipse(view, {view.cols / 2, view.rows / 2}, wide ? axes : cv::Size(axes.height, axes.width), 0, 0, 360,
                cv::Scalar(30), cv::FILLED);
    const auto animals = outlinesIn(view);
    REQUIRE(animals);
    REQUIRE(animals.value().size() == 1);
    // OpenCV's fill paints its boundary, half a pixel to each side: 3 % of a body 35 px thick; 1 % for its edge.
    const double areaPx2 = CV_PI * (axes.width + 0.5) * (axes.height + 0.5);
    CHECK(animals.value()[0].areaPx2 == Approx(areaPx2).epsilon(0.01));
}
