// SPDX-License-Identifier: GPL-3.0-or-later
// Plates measured back from their print: 600 dots an inch, markers found by OpenCV.
#include <catch2/catch.hpp>
#include <cmath>

#include <opencv2/imgproc.hpp>

#include "../scratch_folder.h"
#include "paper_raster.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/optics/box_check.h"
#include "ringrule/optics/box_writer.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/scale.h"
#include "ringrule/outline/find_outline.h"
#include "ringrule/sheets/card_sheet.h"
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

// What a camera square to the plate makes of a cut-out: a little soft, its light by the sRGB curve.
Photo photographed(const cv::Mat1b& print) {
    cv::Mat1b soft;
    cv::GaussianBlur(print, soft, {}, 1.0);
    return photoOf(asLight(soft, 0.7));
}

struct Seen {
    FoundPlate plate;
    Outcome<std::vector<Outline>> outlines;
};

Seen seenIn(const cv::Mat1b& print, const Box& box) {
    const Photo photo = photographed(print);
    const auto plate = findPlate(photo, box);
    REQUIRE(plate);
    const auto scale = Scale::fromPlate(box, plate.value(), photo.grey.cols, photo.grey.rows);
    REQUIRE(scale);
    return {plate.value(), findOutlines(photo, box, plate.value(), scale.value())};
}

// An ellipse in the free middle of a cut-out, 0.6 of the plate long and 6 mm thick; returns its area.
double addAnimal(cv::Mat1b& print, const Box& box, double pxPerMm, unsigned char value) {
    const bool wide = box.plate.widthMm > box.plate.heightMm;
    const int half = cvRound(0.3 * std::max(box.plate.widthMm, box.plate.heightMm) * pxPerMm);
    const int thick = cvRound(3.0 * pxPerMm);
    cv::ellipse(print, {print.cols / 2, print.rows / 2}, wide ? cv::Size(half, thick) : cv::Size(thick, half), 0, 0,
                360, cv::Scalar(value), cv::FILLED);
    // OpenCV's fill paints its boundary: half a pixel to each side.
    return CV_PI * (half + 0.5) * (thick + 0.5);
}

// A printed card cut out along its lines.
cv::Mat1b cardOf(const ScratchFolder& folder, int number, const std::string& name, int dotsPerInch) {
    const auto pdf = folder / "cards.pdf";
    CardSheetOptions options;
    options.names[number] = name;
    (void)writeCards({number}, pdf, options);
    const raster::Page page = raster::pageOf(pdf, 1, dotsPerInch);
    const auto found = raster::markersOn(raster::pageOf(pdf, 1, 300), cv::aruco::DICT_5X5_1000);
    REQUIRE(found.contains(number));
    const cv::Point2d corner = (found.at(number)[0] - cv::Point2d(2.0, 2.0)) * page.pxPerMm;
    return page.grey(
        cv::Rect(cvRound(corner.x), cvRound(corner.y), cvRound(25.0 * page.pxPerMm), cvRound(14.0 * page.pxPerMm)));
}

// What a photo of the plate, here a quarter as fine as the raster, says of its box.
PlateCheck checked(const raster::Page& page, const Box& box) {
    cv::Mat1b small;
    cv::resize(page.grey, small, {}, 0.25, 0.25, cv::INTER_AREA);
    cv::copyMakeBorder(small, small, 40, 40, 40, 40, cv::BORDER_CONSTANT, cv::Scalar(110));
    const Photo photo = photographed(small);
    const auto plate = findPlate(photo, box);
    REQUIRE(plate);
    const auto scale = Scale::fromPlate(box, plate.value(), photo.grey.cols, photo.grey.rows);
    REQUIRE(scale);
    return checkPlate(box, plate.value(), scale.value());
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

TEST_CASE("plates of one number of markers and other sizes share no marker, so that none is taken for the other") {
    const auto first = [](const char* name) { return plateLayout(plateSizeOf(name)).markers.front().id; };
    for (const NamedPlateSize& size : namedPlateSizes()) {
        const PlateLayout plate = plateLayout(size.size);
        CHECK(plate.markers.back().id - plate.markers.front().id + 1 == std::ssize(plate.markers));
        CHECK(plate.markers.back().id < 50);  // of DICT_4X4_50
    }
    // These three have nearly the same proportions: with the same markers one passes for another of another scale.
    CHECK(first("tray") != first("small"));
    CHECK(first("small") != first("bench"));
    CHECK(first("tray") != first("bench"));
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

    // Laid down half a millimetre apart, a photo shows it even where nobody held a rule to it.
    CHECK(checked(whole, plate.box).holds());
    const int gap = cvRound(0.5 * pxPerMm), at = cvRound(cut * pxPerMm);
    raster::Page apart{cv::Mat1b(joined.rows, joined.cols + gap, static_cast<unsigned char>(255)), pxPerMm};
    joined.colRange(0, at).copyTo(apart.grey.colRange(0, at));
    joined.colRange(at, joined.cols).copyTo(apart.grey.colRange(at + gap, apart.grey.cols));
    CHECK_FALSE(checked(apart, plate.box).holds());
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

TEST_CASE("a plate printed too small gives true lengths once the bars are typed in") {
    constexpr double kPrinter = 0.992;  // of the stated size, both ways
    const ScratchFolder folder;
    const Written plate = written(folder, plateSizeOf("bench"), {Paper::A4, PlateTone::Pale, "box.json"});
    raster::Page page = raster::pageOf(plate.pdf, 1, 300);
    page.pxPerMm /= kPrinter;
    const auto bar = raster::longestBlackRun(page.grey, page.pxPerMm);
    const double scaleOfBar = (bar.second - bar.first) / 200.0;
    (void)rescaleBoxFile(folder / "box.json", {scaleOfBar, scaleOfBar});
    const Box box = readBox(folder / "box.json");
    const cv::Mat1b light = asLight(page.grey, 0.8);
    const auto found = findPlate(photoOf(light), box);
    REQUIRE(found);
    const auto scale = Scale::fromPlate(box, found.value(), light.cols, light.rows);
    REQUIRE(scale);
    const PixelPoint from{1000.0, 900.0}, to{2600.0, 1300.0};
    const double lengthMm = distance(scale.value().plateFromPixel(from), scale.value().plateFromPixel(to));
    // The bar is read to a pixel of 0.085 mm in 200 mm.
    CHECK(lengthMm == Approx(distance(from, to) / page.pxPerMm).epsilon(5e-4));
}

TEST_CASE("no print of a pale plate is taken for an animal, and an animal before it is found alone") {
    const auto size = GENERATE(values<std::string>({"tray", "small", "bench", "tall", "long"}));
    const int dotsPerInch = GENERATE(150, 400);
    INFO(size << " at " << dotsPerInch << " dots an inch");
    const ScratchFolder folder;
    const Written plate = written(folder, plateSizeOf(size), {Paper::A4, PlateTone::Pale, "box.json"});
    const raster::Page page = raster::pageOf(plate.pdf, 1, dotsPerInch);
    cv::Mat1b print = cutOut(page, plate.box);
    const Seen empty = seenIn(print, plate.box);
    REQUIRE_FALSE(empty.outlines);
    CHECK(empty.outlines.refusal().reason == "no-animal");

    const double areaPx2 = addAnimal(print, plate.box, page.pxPerMm, 30);
    const Seen seen = seenIn(print, plate.box);
    REQUIRE(seen.outlines);
    REQUIRE(seen.outlines.value().size() == 1);
    // A tenth of a pixel all round is 0.6 % of a body 35 px thick.
    CHECK(seen.outlines.value()[0].areaPx2 == Approx(areaPx2).epsilon(0.01));
}

TEST_CASE("a printed card before a printed plate tells its number and is no animal") {
    const int dotsPerInch = GENERATE(150, 300);
    INFO(dotsPerInch << " dots an inch");
    const ScratchFolder folder;
    const Written plate = written(folder, plateSizeOf("bench"), {Paper::A4, PlateTone::Pale, "box.json"});
    const raster::Page page = raster::pageOf(plate.pdf, 1, dotsPerInch);
    cv::Mat1b print = cutOut(page, plate.box);
    const cv::Mat1b card = cardOf(folder, 17, "Juniper", dotsPerInch);
    card.copyTo(
        print(cv::Rect(60 + cvRound(40.0 * page.pxPerMm), 60 + cvRound(25.0 * page.pxPerMm), card.cols, card.rows)));
    (void)addAnimal(print, plate.box, page.pxPerMm, 30);
    const Seen seen = seenIn(print, plate.box);
    REQUIRE(seen.plate.cards.size() == 1);
    CHECK(seen.plate.cards[0].id == 17);
    REQUIRE(seen.outlines);
    CHECK(seen.outlines.value().size() == 1);
}

TEST_CASE("before a printed dark plate there is no animal until a pale one hangs there") {
    const int dotsPerInch = GENERATE(150, 300);
    const ScratchFolder folder;
    const Written plate = written(folder, plateSizeOf("bench"), {Paper::A4, PlateTone::Dark, "box.json"});
    const raster::Page page = raster::pageOf(plate.pdf, 1, dotsPerInch);
    cv::Mat1b print = cutOut(page, plate.box);
    CHECK_FALSE(seenIn(print, plate.box).outlines);
    const double areaPx2 = addAnimal(print, plate.box, page.pxPerMm, 200);
    const Seen seen = seenIn(print, plate.box);
    REQUIRE(seen.outlines);
    REQUIRE(seen.outlines.value().size() == 1);
    // A tenth of a pixel all round is 0.6 % of a body 35 px thick.
    CHECK(seen.outlines.value()[0].areaPx2 == Approx(areaPx2).epsilon(0.01));
}
