// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <filesystem>
#include <string>

#include <nlohmann/json.hpp>

#include "ringrule/error.h"
#include "ringrule/optics/box_file.h"

using namespace ringrule;
using Json = nlohmann::json;

namespace {

Json wholeBox() {
    return Json::parse(R"({
      "format": "ringrule-box/1",
      "name": "bench box",
      "plate": { "dictionary": "DICT_4X4_50", "size_mm": [200, 120],
                 "markers": [ { "id": 0, "centre_mm": [10, 10], "side_mm": 12 },
                              { "id": 1, "centre_mm": [190, 10], "side_mm": 12 },
                              { "id": 2, "centre_mm": [190, 107.5], "side_mm": 12.5 } ] },
      "cards": { "dictionary": "DICT_5X5_1000" },
      "animal_plane": { "distance_from_plate_mm": 8.0, "tolerance_mm": 2.0 },
      "media": { "camera_to_window_mm": 420, "window_thickness_mm": 5, "window_index": 1.4917,
                 "water_to_plate_mm": 60, "salinity_ppt": 32, "temperature_c": 24 },
      "lens": { "camera_matrix": [[8500, 0, 1998], [0, 8490, 1503], [0, 0, 1]],
                "distortion": [-0.15, 0.08, 0.0003, -0.0002, 0.0], "image_size_px": [4000, 3000] }
    })");
}

std::string errorOf(const std::string& text) {
    try {
        (void)parseBox(text, "calibration/box.json");
    } catch (const Error& error) {
        CHECK(error.kind() == ErrorKind::BadBox);
        CHECK(error.path() == "calibration/box.json");
        const std::string message = error.what(), prefix = "calibration/box.json: ";
        CHECK(message.find('\n') == std::string::npos);
        return message.substr(prefix.size());
    }
    return "no error";
}

// The error that comes of setting the field at a JSON pointer to a value.
std::string errorWith(const std::string& pointer, const Json& value) {
    Json box = wholeBox();
    box[Json::json_pointer(pointer)] = value;
    return errorOf(box.dump());
}

// The error that comes of taking the field away.
std::string errorWithout(const std::string& parent, const std::string& key) {
    Json box = wholeBox();
    box[Json::json_pointer(parent)].erase(key);
    return errorOf(box.dump());
}

}  // namespace

TEST_CASE("A whole box file is read as it stands", "[box_file]") {
    const Box box = parseBox(wholeBox().dump());
    CHECK(box.name == "bench box");
    CHECK(box.plate.dictionary == "DICT_4X4_50");
    CHECK(box.plate.widthMm == 200.0);
    CHECK(box.plate.heightMm == 120.0);
    REQUIRE(box.plate.markers.size() == 3);
    CHECK(box.plate.markers[2].id == 2);
    CHECK(box.plate.markers[2].centreMm == PlatePoint{190.0, 107.5});
    CHECK(box.plate.markers[2].sideMm == 12.5);
    CHECK(box.cardDictionary == "DICT_5X5_1000");
    CHECK(box.animalPlane.distanceFromPlateMm == 8.0);
    CHECK(box.animalPlane.toleranceMm == 2.0);
    REQUIRE(box.media);
    CHECK(box.media->cameraToWindowMm == 420.0);
    CHECK(box.media->windowThicknessMm == 5.0);
    CHECK(box.media->windowIndex == 1.4917);
    CHECK(box.media->waterToPlateMm == 60.0);
    CHECK(box.media->salinityPpt == 32.0);
    CHECK(box.media->temperatureC == 24.0);
    REQUIRE(box.lens);
    CHECK(box.lens->focalXPx == 8500.0);
    CHECK(box.lens->focalYPx == 8490.0);
    CHECK(box.lens->centreXPx == 1998.0);
    CHECK(box.lens->centreYPx == 1503.0);
    CHECK(box.lens->distortion == std::array<double, 5>{-0.15, 0.08, 0.0003, -0.0002, 0.0});
    CHECK(box.lens->imageWidthPx == 4000);
    CHECK(box.lens->imageHeightPx == 3000);
}

TEST_CASE("Lens and media may be left out; what is not known is passed over", "[box_file]") {
    Json json = wholeBox();
    json.erase("lens");
    json["media"] = nullptr;
    json["made_by"] = "K1";
    json["plate"]["markers"][0]["colour"] = "black";
    const Box box = parseBox(json.dump());
    CHECK_FALSE(box.lens);
    CHECK_FALSE(box.media);
}

TEST_CASE("Every field of a box file is missed by name", "[box_file]") {
    const auto [parent, key, message] = GENERATE(table<std::string, std::string, std::string>({
        {"", "format", "format is missing"},
        {"", "name", "name is missing"},
        {"", "plate", "plate is missing"},
        {"", "cards", "cards is missing"},
        {"", "animal_plane", "animal_plane is missing"},
        {"/plate", "dictionary", "plate.dictionary is missing"},
        {"/plate", "size_mm", "plate.size_mm is missing"},
        {"/plate", "markers", "plate.markers is missing"},
        {"/plate/markers/2", "id", "plate.markers[2].id is missing"},
        {"/plate/markers/2", "centre_mm", "plate.markers[2].centre_mm is missing"},
        {"/plate/markers/2", "side_mm", "plate.markers[2].side_mm is missing"},
        {"/cards", "dictionary", "cards.dictionary is missing"},
        {"/animal_plane", "distance_from_plate_mm", "animal_plane.distance_from_plate_mm is missing"},
        {"/animal_plane", "tolerance_mm", "animal_plane.tolerance_mm is missing"},
        {"/media", "camera_to_window_mm", "media.camera_to_window_mm is missing"},
        {"/media", "window_thickness_mm", "media.window_thickness_mm is missing"},
        {"/media", "window_index", "media.window_index is missing"},
        {"/media", "water_to_plate_mm", "media.water_to_plate_mm is missing"},
        {"/media", "salinity_ppt", "media.salinity_ppt is missing"},
        {"/media", "temperature_c", "media.temperature_c is missing"},
        {"/lens", "camera_matrix", "lens.camera_matrix is missing"},
        {"/lens", "distortion", "lens.distortion is missing"},
        {"/lens", "image_size_px", "lens.image_size_px is missing"},
    }));
    CHECK(errorWithout(parent, key) == message);
}

TEST_CASE("Values of the wrong kind or out of reach are refused by name", "[box_file]") {
    const auto [pointer, value, message] = GENERATE(table<std::string, Json, std::string>({
        {"/format", 1, "format must be text in quotes"},
        {"/format", "ringrule-box/2",
         "the box file is of version \"ringrule-box/2\"; this program reads \"ringrule-box/1\": update the program"},
        {"/format", "something",
         "format is \"something\": this is not a box file, which says \"ringrule-box/1\" there"},
        {"/name", "", "name is empty: give the box a name"},
        {"/plate", 3, "plate must be an object in braces"},
        {"/plate/dictionary", "DICT_3X3",
         "plate.dictionary is \"DICT_3X3\", which is no marker dictionary of OpenCV's"},
        {"/plate/size_mm", Json::array({200}), "plate.size_mm must have 2 entries, not 1"},
        {"/plate/size_mm", "200", "plate.size_mm must be a list in brackets"},
        {"/plate/size_mm/1", 0, "plate.size_mm[1] must be more than 0, not 0"},
        {"/plate/size_mm/0", 200000, "plate.size_mm[0] is more than 10 m: lengths are in millimetres"},
        {"/plate/markers", Json::array(),
         "plate.markers must have at least 2 entries: one marker does not hold a scale"},
        {"/plate/markers/1/id", 0, "plate.markers[1].id is 0 again: each marker needs its own"},
        {"/plate/markers/1/id", 50, "plate.markers[1].id must lie from 0 to 49, not 50"},
        {"/plate/markers/1/id", -1, "plate.markers[1].id must lie from 0 to 49, not -1"},
        {"/plate/markers/1/id", 1.5, "plate.markers[1].id must be a whole number"},
        {"/plate/markers/1/side_mm", -12, "plate.markers[1].side_mm must be more than 0, not -12"},
        {"/plate/markers/1/side_mm", "12", "plate.markers[1].side_mm must be a number"},
        {"/plate/markers/1/centre_mm/0", 195,
         "plate.markers[1] reaches beyond the plate: centre_mm, side_mm and size_mm do not agree"},
        {"/plate/markers/1/centre_mm", Json::array({15, 12}), "plate.markers[1] overlaps the marker with id 0"},
        {"/cards/dictionary", "DICT_4X4_50", "cards.dictionary is the plate's own: cards need another dictionary"},
        {"/animal_plane/distance_from_plate_mm", -1,
         "animal_plane.distance_from_plate_mm must lie from 0 to 10000, not -1"},
        {"/animal_plane/distance_from_plate_mm", 61,
         "animal_plane.distance_from_plate_mm is more than media.water_to_plate_mm: the animal would be in or before "
         "the "
         "window"},
        {"/animal_plane/tolerance_mm", true, "animal_plane.tolerance_mm must be a number"},
        {"/media/camera_to_window_mm", 0, "media.camera_to_window_mm must be more than 0, not 0"},
        {"/media/window_index", 0.9, "media.window_index must lie from 1 to 2, not 0.9"},
        {"/media/window_thickness_mm", -5, "media.window_thickness_mm must lie from 0 to 500, not -5"},
        {"/media/water_to_plate_mm", -60, "media.water_to_plate_mm must lie from 0 to 10000, not -60"},
        {"/media/window_index", 2.1, "media.window_index must lie from 1 to 2, not 2.1"},
        {"/media/salinity_ppt", 350, "media.salinity_ppt must lie from 0 to 45, not 350"},
        {"/media/temperature_c", 75, "media.temperature_c must lie from -2 to 40, not 75"},
        {"/lens/camera_matrix/0/1", 0.5, "lens.camera_matrix must read [[fx, 0, cx], [0, fy, cy], [0, 0, 1]]"},
        {"/plate/flatness_mm", -1, "plate.flatness_mm must lie from 0 to 50, not -1"},
        {"/plate/print_scale", Json::array({0.99}), "plate.print_scale must have 2 entries, not 1"},
        {"/plate/print_scale", Json::array({0.8, 1.0}), "plate.print_scale[0] must lie from 0.9 to 1.1, not 0.8"},
        {"/lens/focal_length_mm", 0, "lens.focal_length_mm must lie from 0.1 to 5000, not 0"},
        {"/lens/covariance", Json::array({1, 2}), "lens.covariance must have 9 entries, not 2"},
        {"/lens/covariance", Json(std::vector<std::vector<double>>(9, std::vector<double>(9, -1.0))),
         "lens.covariance is no covariance: calibrate the lens again"},
        {"/lens/image_size_px", Json::array({100000, 75000}),
         "lens.camera_matrix has a focal length of 8500 px for a photo 100000 px wide: no lens sees so wide"},
        {"/lens/camera_matrix/0/0", 0, "lens.camera_matrix[0][0] must be more than 0, not 0"},
        {"/lens/camera_matrix/1/1", 4000,
         "lens.camera_matrix has focal lengths that differ by more than a fifth: calibrate the lens again"},
        {"/lens/camera_matrix/0/2", 4500, "lens.camera_matrix[0][2] must lie from 0 to 4000, not 4500"},
        {"/lens/camera_matrix/1", Json::array({0, 8500}), "lens.camera_matrix[1] must have 3 entries, not 2"},
        {"/lens/distortion", Json::array({0, 0, 0, 0}), "lens.distortion must have 5 entries, not 4"},
        {"/lens/distortion/0", -30,
         "lens.distortion folds the image before its corners: calibrate the lens again with more photos"},
        {"/lens/image_size_px/0", 0, "lens.image_size_px[0] must lie from 1 to 100000, not 0"},
        {"/lens/image_size_px/0", 4000.5, "lens.image_size_px[0] must be a whole number"},
    }));
    CHECK(errorWith(pointer, value) == message);
}

TEST_CASE("Text that is no JSON object is refused", "[box_file]") {
    CHECK(errorOf("") == "this is not JSON: check commas, quotes and braces");
    CHECK(errorOf("{ \"format\": ") == "this is not JSON: check commas, quotes and braces");
    CHECK(errorOf("[1, 2]") == "the box file must be an object in braces");
    CHECK(errorOf("\xff\xfe") == "this is not JSON: check commas, quotes and braces");
    CHECK(errorOf(std::string(100'000, '[')) == "this is not JSON: check commas, quotes and braces");
    // A number too large for a double.
    std::string text = wholeBox().dump();
    text.replace(text.find("420"), 3, "1e999");
    CHECK(errorOf(text) == "this is not JSON: check commas, quotes and braces");
}

TEST_CASE("Box files that cannot be opened are refused", "[box_file]") {
    const auto errorOfFile = [](const std::filesystem::path& path) -> std::string {
        try {
            (void)readBox(path);
        } catch (const Error& error) {
            CHECK(error.kind() == ErrorKind::BadBox);
            return error.what();
        }
        return "no error";
    };
    CHECK_THAT(errorOfFile("no-such-box.json"), Catch::Contains("no such box file"));
    CHECK_THAT(errorOfFile(std::filesystem::temp_directory_path()), Catch::Contains("not a file"));
}

TEST_CASE("The box files that come along are sound", "[box_file]") {
    for (const auto& entry : std::filesystem::directory_iterator(RINGRULE_SOURCE_DIR "/calibration")) {
        if (entry.path().extension() != ".json" || entry.path().stem().string().find("box") == std::string::npos)
            continue;
        CAPTURE(entry.path());
        CHECK_FALSE(readBox(entry.path()).name.empty());
    }
}
