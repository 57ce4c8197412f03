// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/box_writer.h"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "../scratch_folder.h"
#include "drawn_box.h"
#include "ringrule/error.h"

using namespace ringrule;

namespace {

ErrorKind rescaleError(const std::filesystem::path& box, const PrintScale& scale) {
    try {
        (void)rescaleBoxFile(box, scale);
    } catch (const Error& error) {
        return error.kind();
    }
    FAIL("no error was thrown");
    return ErrorKind::Stopped;
}

}  // namespace

TEST_CASE("a box written is the box read") {
    const Box box = drawn::benchBox();
    const Box read = parseBox(boxText(box));
    CHECK(read.name == box.name);
    CHECK(read.cardDictionary == box.cardDictionary);
    CHECK(read.plate.dictionary == box.plate.dictionary);
    CHECK(read.plate.widthMm == box.plate.widthMm);
    REQUIRE(read.plate.markers.size() == box.plate.markers.size());
    for (std::size_t i = 0; i < box.plate.markers.size(); ++i) {
        CHECK(read.plate.markers[i].id == box.plate.markers[i].id);
        CHECK(read.plate.markers[i].centreMm.x == box.plate.markers[i].centreMm.x);
        CHECK(read.plate.markers[i].centreMm.y == box.plate.markers[i].centreMm.y);
        CHECK(read.plate.markers[i].sideMm == box.plate.markers[i].sideMm);
    }
    CHECK(read.animalPlane.distanceFromPlateMm == box.animalPlane.distanceFromPlateMm);
    CHECK(read.animalPlane.toleranceMm == box.animalPlane.toleranceMm);
    REQUIRE(read.media);
    CHECK(read.media->cameraToWindowMm == box.media->cameraToWindowMm);
    CHECK(read.media->windowThicknessMm == box.media->windowThicknessMm);
    CHECK(read.media->windowIndex == box.media->windowIndex);
    CHECK(read.media->waterToPlateMm == box.media->waterToPlateMm);
    CHECK(read.media->salinityPpt == box.media->salinityPpt);
    CHECK(read.media->temperatureC == box.media->temperatureC);
    REQUIRE(read.lens);
    CHECK(read.lens->focalXPx == box.lens->focalXPx);
    CHECK(read.lens->centreYPx == box.lens->centreYPx);
    CHECK(read.lens->distortion == box.lens->distortion);
    CHECK(read.lens->imageHeightPx == box.lens->imageHeightPx);
}

TEST_CASE("lens and media stay out when they are not known") {
    Box box = drawn::benchBox();
    box.lens.reset();
    box.media.reset();
    const Box read = parseBox(boxText(box));
    CHECK_FALSE(read.lens);
    CHECK_FALSE(read.media);
}

TEST_CASE("a name with quotes and any script survives") {
    Box box = drawn::benchBox();
    box.name = "Bay \"3\" \\ M\xC3\xB6we";
    CHECK(parseBox(boxText(box)).name == box.name);
}

TEST_CASE("the print's scale corrects places, size and markers") {
    const ScratchFolder folder;
    const auto file = folder / "box.json";
    writeBox(drawn::benchBox(), file);
    const RescaledPlate plate = rescaleBoxFile(file, {0.99, 0.996});
    CHECK(plate.widthMm == Approx(198.0));
    CHECK(plate.heightMm == Approx(119.52));
    CHECK(plate.before.across == 1.0);
    const Box read = readBox(file);
    CHECK(read.plate.widthMm == Approx(198.0));
    // Marker 3 of the test bench stands at (188, 12).
    CHECK(read.plate.markers[3].centreMm.x == Approx(188.0 * 0.99));
    CHECK(read.plate.markers[3].centreMm.y == Approx(12.0 * 0.996));
    CHECK(read.plate.markers[3].sideMm == Approx(12.0 * 0.993));  // the mean of both
    CHECK(read.lens);
    CHECK(read.animalPlane.distanceFromPlateMm == 8.0);  // measured by the keeper, not printed
    CHECK(filesIn(folder.path()) == 1);
}

TEST_CASE("a later correction replaces the earlier one") {
    const ScratchFolder folder;
    const auto once = folder / "once.json", twice = folder / "twice.json";
    for (const auto& file : {once, twice}) writeBox(drawn::benchBox(), file);
    (void)rescaleBoxFile(once, {1.01, 1.008});
    (void)rescaleBoxFile(twice, {0.97, 0.972});
    const RescaledPlate again = rescaleBoxFile(twice, {1.01, 1.008});
    CHECK(again.before.across == 0.97);
    const Box a = readBox(once), b = readBox(twice);
    for (std::size_t i = 0; i < a.plate.markers.size(); ++i) {
        // Files keep a millionth of a millimetre.
        CHECK(b.plate.markers[i].centreMm.x == Approx(a.plate.markers[i].centreMm.x).margin(5e-6));
        CHECK(b.plate.markers[i].sideMm == Approx(a.plate.markers[i].sideMm).margin(5e-6));
    }
    (void)rescaleBoxFile(twice, {1.0, 1.0});
    CHECK(readBox(twice).plate.widthMm == Approx(200.0).margin(5e-6));
}

TEST_CASE("fields that Ringrule does not know stay") {
    const ScratchFolder folder;
    auto json = nlohmann::json::parse(boxText(drawn::benchBox()));
    json["bought"] = {{"from", "the print shop"}, {"on", "2031-01-02"}};
    json["plate"]["note"] = "laminated matt";
    const auto file = folder.write("box.json", json.dump());
    (void)rescaleBoxFile(file, {0.99, 0.99});
    const auto after = nlohmann::json::parse(contentOf(file));
    CHECK(after["bought"] == json["bought"]);
    CHECK(after["plate"]["note"] == "laminated matt");
    CHECK(after["media"] == json["media"]);
}

TEST_CASE("a correction that cannot be right leaves the file as it was") {
    const ScratchFolder folder;
    const auto file = folder / "box.json";
    writeBox(drawn::benchBox(), file);
    const std::string before = contentOf(file);
    for (const PrintScale& scale : {PrintScale{0.89, 0.89}, {1.2, 1.2}, {1.0, 1.02}, {std::nan(""), 1.0}, {0.0, 0.0}})
        CHECK(rescaleError(file, scale) == ErrorKind::BadUse);
    CHECK(contentOf(file) == before);
    CHECK(rescaleError(folder / "none.json", {0.99, 0.99}) == ErrorKind::BadBox);
    const auto broken = folder.write("broken.json", R"({"format": "ringrule-box/1"})");
    CHECK(rescaleError(broken, {0.99, 0.99}) == ErrorKind::BadBox);
    auto json = nlohmann::json::parse(before);
    json["plate"]["print_scale"] = "99 %";
    const auto odd = folder.write("odd.json", json.dump());
    CHECK(rescaleError(odd, {0.99, 0.99}) == ErrorKind::BadBox);
    CHECK(contentOf(odd) == json.dump());
}

TEST_CASE("a box file in a folder that is not there is the disk's failure") {
    const ScratchFolder folder;
    try {
        writeBox(drawn::benchBox(), folder.path() / "missing" / "box.json");
        FAIL("no error was thrown");
    } catch (const Error& error) {
        CHECK(error.kind() == ErrorKind::NoSpace);
    }
    CHECK(filesIn(folder.path()) == 0);
}
