// SPDX-License-Identifier: GPL-3.0-or-later
#include "box_file.h"

#include <fstream>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace render {

namespace {

using Json = nlohmann::ordered_json;

Media mediaFrom(const Json& json) {
    Media media;
    media.cameraToWindowMm = json.at("camera_to_window_mm");
    media.windowThicknessMm = json.at("window_thickness_mm");
    media.windowIndex = json.at("window_index");
    media.waterToPlateMm = json.at("water_to_plate_mm");
    media.salinityPpt = json.at("salinity_ppt");
    media.temperatureC = json.at("temperature_c");
    return media;
}

Lens lensFrom(const Json& json) {
    Lens lens;
    const Json& matrix = json.at("camera_matrix");
    lens.fxPx = matrix[0][0];
    lens.fyPx = matrix[1][1];
    lens.cxPx = matrix[0][2];
    lens.cyPx = matrix[1][2];
    lens.distortion = json.at("distortion").get<std::array<double, 5>>();
    lens.widthPx = json.at("image_size_px")[0];
    lens.heightPx = json.at("image_size_px")[1];
    return lens;
}

Json jsonOf(const Media& media) {
    return {{"camera_to_window_mm", media.cameraToWindowMm},
            {"window_thickness_mm", media.windowThicknessMm},
            {"window_index", media.windowIndex},
            {"water_to_plate_mm", media.waterToPlateMm},
            {"salinity_ppt", media.salinityPpt},
            {"temperature_c", media.temperatureC}};
}

Json jsonOf(const Lens& lens) {
    return {{"camera_matrix", {{lens.fxPx, 0.0, lens.cxPx}, {0.0, lens.fyPx, lens.cyPx}, {0.0, 0.0, 1.0}}},
            {"distortion", lens.distortion},
            {"image_size_px", {lens.widthPx, lens.heightPx}}};
}

}  // namespace

Box readBox(const std::filesystem::path& file) {
    std::ifstream stream(file);
    if (!stream) {
        throw std::runtime_error("cannot open box file " + file.string());
    }
    const Json json = Json::parse(stream);
    if (json.value("format", "") != "ringrule-box/1") {
        throw std::runtime_error("not a box file: " + file.string());
    }
    Box box;
    box.name = json.at("name");
    const Json& plate = json.at("plate");
    box.plateDictionary = plate.at("dictionary");
    box.plateMm = {plate.at("size_mm")[0], plate.at("size_mm")[1]};
    for (const Json& marker : plate.at("markers")) {
        box.markers.push_back(
            {marker.at("id"), {marker.at("centre_mm")[0], marker.at("centre_mm")[1]}, marker.at("side_mm")});
    }
    box.cardDictionary = json.at("cards").at("dictionary");
    box.animalDistanceMm = json.at("animal_plane").at("distance_from_plate_mm");
    box.animalToleranceMm = json.at("animal_plane").at("tolerance_mm");
    if (json.contains("media")) {
        box.media = mediaFrom(json["media"]);
    }
    if (json.contains("lens")) {
        box.lens = lensFrom(json["lens"]);
    }
    return box;
}

void writeBox(const Box& box, const std::filesystem::path& file) {
    Json markers = Json::array();
    for (const Marker& marker : box.markers) {
        markers.push_back(
            {{"id", marker.id}, {"centre_mm", {marker.centreMm.x, marker.centreMm.y}}, {"side_mm", marker.sideMm}});
    }
    Json json = {
        {"format", "ringrule-box/1"},
        {"name", box.name},
        {"plate",
         {{"dictionary", box.plateDictionary},
          {"size_mm", {box.plateMm.width, box.plateMm.height}},
          {"markers", markers}}},
        {"cards", {{"dictionary", box.cardDictionary}}},
        {"animal_plane", {{"distance_from_plate_mm", box.animalDistanceMm}, {"tolerance_mm", box.animalToleranceMm}}}};
    if (box.media) {
        json["media"] = jsonOf(*box.media);
    }
    if (box.lens) {
        json["lens"] = jsonOf(*box.lens);
    }
    std::ofstream stream(file);
    stream << json.dump(2) << '\n';
    if (!stream) {
        throw std::runtime_error("cannot write " + file.string());
    }
}

Box benchBox() {
    Box box;
    box.name = "bench box";
    box.plateDictionary = "DICT_4X4_50";
    box.cardDictionary = "DICT_5X5_1000";
    box.plateMm = {200.0, 120.0};
    int id = 0;
    for (const double y : {10.0, 107.0}) {
        for (const double x : {10.0, 70.0, 130.0, 190.0}) {
            box.markers.push_back({id++, {x, y}, 12.0});
        }
    }
    box.animalDistanceMm = 8.0;
    box.animalToleranceMm = 2.0;
    box.media = Media{420.0, 5.0, 1.4917, 60.0, 32.0, 24.0};
    box.lens = Lens{8500.0, 8500.0, 1998.0, 1503.0, {-0.15, 0.08, 0.0003, -0.0002, 0.0}, 4000, 3000};
    return box;
}

}  // namespace render
