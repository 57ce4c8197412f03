// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/plate_sheet.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <set>

#include "../scratch_folder.h"
#include "ringrule/error.h"
#include "ringrule/optics/box_writer.h"
#include "sheets/plate_ruler.h"
#include "sheets/plate_tiles.h"

using namespace ringrule;

namespace {

template <class Run>
ErrorKind kindOf(const Run& run) {
    try {
        run();
    } catch (const Error& error) {
        return error.kind();
    }
    FAIL("no error was thrown");
    return ErrorKind::Stopped;
}

std::vector<PlateSize> manySizes() {
    std::vector<PlateSize> sizes{{60, 60}, {60, 1000}, {1000, 60}, {120, 120}, {333.3, 90}, {1000, 1000}};
    for (const NamedPlateSize& named : namedPlateSizes()) sizes.push_back(named.size);
    return sizes;
}

}  // namespace

TEST_CASE("every plate's layout is a box file that can be read") {
    for (const PlateSize& size : manySizes()) {
        INFO(size.widthMm << " x " << size.heightMm);
        const Box box = boxForPlate(plateLayout(size), "a box");
        // Reading refuses markers that overlap, repeat an id or reach beyond the plate.
        const Box read = parseBox(boxText(box));
        CHECK(read.plate.widthMm == size.widthMm);
        CHECK(read.plate.heightMm == size.heightMm);
        CHECK(read.plate.markers.size() >= 6);
        CHECK(read.animalPlane.toleranceMm >= read.animalPlane.distanceFromPlateMm);
        CHECK_FALSE(read.media);
        CHECK_FALSE(read.lens);
    }
}

TEST_CASE("markers keep to the rims and leave the middle free") {
    for (const PlateSize& size : manySizes()) {
        INFO(size.widthMm << " x " << size.heightMm);
        const PlateLayout plate = plateLayout(size);
        const double shorter = std::min(size.widthMm, size.heightMm);
        const bool wide = size.widthMm >= size.heightMm;
        double inner = 0.0;  // furthest reach of a marker from the rim it stands along
        for (const PlateMarker& marker : plate.markers) {
            const double across = wide ? marker.centreMm.y : marker.centreMm.x;
            const double reach = std::min(across, shorter - across) + 0.5 * marker.sideMm;
            inner = std::max(inner, reach);
        }
        // The free strip is at least half of the shorter side; what is left of the two rims is markers and scale.
        CHECK(inner < 0.25 * shorter);
    }
}

TEST_CASE("half the markers may be hidden and a scale is still fixed") {
    // Three markers, or two half a diagonal apart, fix it (docs/box-file.md).
    for (const NamedPlateSize& named : namedPlateSizes()) CHECK(plateLayout(named.size).markers.size() >= 6);
    CHECK(plateLayout(plateSizeOf("longest")).markers.size() >= 12);
}

TEST_CASE("sizes are named or written as width x height") {
    CHECK(plateSizeOf("200x120").widthMm == 200.0);
    CHECK(plateSizeOf("200x120").heightMm == 120.0);
    CHECK(plateSizeOf("199.5x100").widthMm == 199.5);
    CHECK(plateSizeOf("bench").widthMm == 200.0);
    CHECK(plateSizeOf("longest").widthMm > 400.0);
    for (const char* wrong : {"", "x", "200", "200x", "x120", "200x120x3", "59x120", "200x1001", "nanx100", "infx100",
                              "-200x120", "2e9x100", "bench ", "200 x 120mm"}) {
        INFO(wrong);
        CHECK(kindOf([&] { (void)plateSizeOf(wrong); }) == ErrorKind::BadUse);
    }
}

TEST_CASE("paper is named in small or large letters") {
    CHECK(paperNamed("a4") == Paper::A4);
    CHECK(paperNamed("Letter") == Paper::Letter);
    CHECK(kindOf([] { (void)paperNamed("a3"); }) == ErrorKind::BadUse);
    // ISO 216, and 8.5 by 11 inches.
    CHECK(paperSize(Paper::A4).heightMm == 297.0);
    CHECK(paperSize(Paper::Letter).widthMm == Approx(8.5 * 25.4));
}

TEST_CASE("cuts keep clear of markers and every sheet fits the paper") {
    for (const PlateSize& size : manySizes()) {
        if (size.widthMm > 900 && size.heightMm > 900) continue;  // more sheets than anybody joins
        const PlateLayout plate = plateLayout(size);
        for (const Paper paper : {Paper::A4, Paper::Letter}) {
            INFO(size.widthMm << " x " << size.heightMm << " on " << paperName(paper));
            const PlateTiles tiles = tilesOf(plate, paper);
            CHECK(tiles.cutsXMm.front() == 0.0);
            CHECK(tiles.cutsXMm.back() == size.widthMm);
            CHECK(tiles.cutsYMm.back() == size.heightMm);
            CHECK(std::is_sorted(tiles.cutsXMm.begin(), tiles.cutsXMm.end()));
            const PaperSize sheet = paperSize(paper);
            const double room = (tiles.landscape ? sheet.heightMm : sheet.widthMm) - 2.0 * sheet_frame::kMarginMm;
            for (std::size_t k = 1; k < tiles.cutsXMm.size(); ++k)
                CHECK(tiles.cutsXMm[k] - tiles.cutsXMm[k - 1] < room);
            for (std::size_t k = 1; k + 1 < tiles.cutsXMm.size(); ++k)
                for (const PlateMarker& marker : plate.markers)
                    CHECK(std::abs(marker.centreMm.x - tiles.cutsXMm[k]) > 0.5 * marker.sideMm + marker.sideMm / 6.0);
        }
    }
}

TEST_CASE("named plates take one sheet of either paper, the longest two") {
    for (const NamedPlateSize& named : namedPlateSizes()) {
        INFO(named.name);
        for (const Paper paper : {Paper::A4, Paper::Letter})
            CHECK(tilesOf(plateLayout(named.size), paper).sheets() == (named.name == "longest" ? 2 : 1));
    }
}

TEST_CASE("each join lies between numbers that a rule can be set to") {
    const PlateLayout plate = plateLayout(plateSizeOf("longest"));
    const std::vector<int> numbers = numbersOn(plate, PlateScale::Lower);
    for (const int number : numbers)
        for (const PlateMarker& marker : plate.markers)
            CHECK((marker.centreMm.y < 0.5 * plate.heightMm ||
                   std::abs(marker.centreMm.x - number) > 0.5 * marker.sideMm + marker.sideMm / 6.0));
    for (const Paper paper : {Paper::A4, Paper::Letter}) {
        const double cut = tilesOf(plate, paper).cutsXMm[1];
        const auto within = [&](double from, double to) {
            return std::any_of(numbers.begin(), numbers.end(), [&](int mm) { return mm >= from && mm <= to; });
        };
        CHECK(within(cut - 70.0, cut - 30.0));
        CHECK(within(cut + 30.0, cut + 70.0));
    }
}

TEST_CASE("a box file that is there is not overwritten, and nothing is written beside it") {
    const ScratchFolder folder;
    const auto there = folder.write("box.json", "measured last year");
    const Box box = boxForPlate(plateLayout({100, 70}), "tray");
    CHECK(kindOf([&] { (void)writePlate(box, folder / "plate.pdf", there); }) == ErrorKind::BadUse);
    CHECK(contentOf(there) == "measured last year");
    CHECK(filesIn(folder.path()) == 1);
}

TEST_CASE("when one of the two files cannot be written neither is") {
    const ScratchFolder folder;
    const Box box = boxForPlate(plateLayout({100, 70}), "tray");
    const auto nowhere = folder.path() / "missing" / "file";
    CHECK(kindOf([&] { (void)writePlate(box, nowhere, folder / "box.json"); }) == ErrorKind::NoSpace);
    CHECK(kindOf([&] { (void)writePlate(box, folder / "plate.pdf", nowhere); }) == ErrorKind::NoSpace);
    CHECK(filesIn(folder.path()) == 0);
}
