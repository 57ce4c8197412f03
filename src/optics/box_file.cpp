// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/box_file.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <fstream>
#include <iterator>
#include <set>
#include <system_error>

#include <nlohmann/json.hpp>

#include "optics/dictionary.h"
#include "optics/json_field.h"
#include "ringrule/error.h"
#include "ringrule/optics/lens.h"

namespace ringrule {
namespace {

constexpr std::string_view kFormat = "ringrule-box/1";
constexpr double kLongestMm = 10'000.0;  // anything longer is a slip of unit, e.g. micrometres
constexpr std::uintmax_t kMaxFileBytes = 4'194'304;

MarkerDictionary dictionaryOf(const JsonField& field) {
    const auto dictionary = markerDictionary(field.text());
    if (!dictionary) field.refuse("is \"" + field.text() + "\", which is no marker dictionary of OpenCV's");
    return *dictionary;
}

double lengthMm(const JsonField& field) {
    if (field.above(0.0) > kLongestMm) field.refuse("is more than 10 m: lengths are in millimetres");
    return field.number();
}

bool overlap(const PlateMarker& a, const PlateMarker& b) {
    const double reach = 0.5 * (a.sideMm + b.sideMm);
    return std::abs(a.centreMm.x - b.centreMm.x) < reach && std::abs(a.centreMm.y - b.centreMm.y) < reach;
}

PlateMarker readMarker(const JsonField& field, const PlateLayout& plate, int dictionarySize) {
    PlateMarker marker;
    marker.id = field.at("id").whole(0, dictionarySize - 1);
    marker.sideMm = lengthMm(field.at("side_mm"));
    const auto centre = field.at("centre_mm").items(2);
    marker.centreMm = {centre[0].number(), centre[1].number()};
    const double half = 0.5 * marker.sideMm;
    if (marker.centreMm.x < half || marker.centreMm.x > plate.widthMm - half || marker.centreMm.y < half ||
        marker.centreMm.y > plate.heightMm - half)
        field.refuse("reaches beyond the plate: centre_mm, side_mm and size_mm do not agree");
    for (const PlateMarker& other : plate.markers) {
        if (other.id == marker.id)
            field.at("id").refuse("is " + std::to_string(marker.id) + " again: each marker needs its own");
        if (overlap(marker, other)) field.refuse("overlaps the marker with id " + std::to_string(other.id));
    }
    return marker;
}

PlateLayout readPlate(const JsonField& field) {
    PlateLayout plate;
    plate.dictionary = field.at("dictionary").text();
    const MarkerDictionary dictionary = dictionaryOf(field.at("dictionary"));
    const auto size = field.at("size_mm").items(2);
    plate.widthMm = lengthMm(size[0]);
    plate.heightMm = lengthMm(size[1]);
    const JsonField markers = field.at("markers");
    for (const JsonField& marker : markers.items())
        plate.markers.push_back(readMarker(marker, plate, dictionary.markers));
    if (const auto flatness = field.find("flatness_mm")) plate.flatnessMm = flatness->number(0.0, 50.0);
    if (plate.markers.size() < 2) markers.refuse("must have at least 2 entries: one marker does not hold a scale");
    return plate;
}

Media readMedia(const JsonField& field) {
    Media media;
    media.cameraToWindowMm = lengthMm(field.at("camera_to_window_mm"));
    media.windowThicknessMm = field.at("window_thickness_mm").number(0.0, 500.0);
    // Real panes lie from 1.3 (a film of water) to 2; the index of no pane does not matter but must be stated.
    media.windowIndex = field.at("window_index").number(1.0, 2.0);
    media.waterToPlateMm = field.at("water_to_plate_mm").number(0.0, kLongestMm);
    // The range for which the index of sea water is published, with a margin (see `water.h`).
    media.salinityPpt = field.at("salinity_ppt").number(0.0, 45.0);
    media.temperatureC = field.at("temperature_c").number(-2.0, 40.0);
    return media;
}

void checkMatrixShape(const JsonField& field, const std::vector<std::vector<JsonField>>& rows) {
    const auto is = [&rows](std::size_t row, std::size_t column, double value) {
        return std::abs(rows[row][column].number() - value) < 1e-9;
    };
    if (!is(0, 1, 0.0) || !is(1, 0, 0.0) || !is(2, 0, 0.0) || !is(2, 1, 0.0) || !is(2, 2, 1.0))
        field.refuse("must read [[fx, 0, cx], [0, fy, cy], [0, 0, 1]]");
}

Lens readLens(const JsonField& field) {
    Lens lens;
    const auto size = field.at("image_size_px").items(2);
    lens.imageWidthPx = size[0].whole(1, 100'000);
    lens.imageHeightPx = size[1].whole(1, 100'000);
    const JsonField matrix = field.at("camera_matrix");
    std::vector<std::vector<JsonField>> rows;
    for (const JsonField& row : matrix.items(3)) rows.push_back(row.items(3));
    checkMatrixShape(matrix, rows);
    lens.focalXPx = rows[0][0].above(0.0);
    lens.focalYPx = rows[1][1].above(0.0);
    if (std::abs(std::log(lens.focalXPx / lens.focalYPx)) > 0.2)
        matrix.refuse("has focal lengths that differ by more than a fifth: calibrate the lens again");
    const int longSidePx = std::max(lens.imageWidthPx, lens.imageHeightPx);
    if (lens.focalXPx < 0.2 * longSidePx)  // 137 degrees across
        matrix.refuse("has a focal length of " + std::to_string(std::lround(lens.focalXPx)) + " px for a photo " +
                      std::to_string(longSidePx) + " px wide: no lens sees so wide");
    lens.centreXPx = rows[0][2].number(0.0, lens.imageWidthPx);
    lens.centreYPx = rows[1][2].number(0.0, lens.imageHeightPx);
    const auto coefficients = field.at("distortion").items(lens.distortion.size());
    for (std::size_t i = 0; i < coefficients.size(); ++i) lens.distortion[i] = coefficients[i].number(-1e4, 1e4);
    if (!coversImage(lens))
        field.at("distortion").refuse("folds the image before its corners: calibrate the lens again with more photos");
    return lens;
}

LensOrigin readLensOrigin(const JsonField& field) {
    const auto text = [&field](const char* key) {
        const auto found = field.find(key);
        return found ? found->text() : std::string();
    };
    LensOrigin origin{text("calibrated_on"), text("camera_make"), text("camera_model")};
    if (const auto focal = field.find("focal_length_mm")) origin.focalLengthMm = focal->number(0.1, 5000.0);
    if (const auto rms = field.find("rms_px")) origin.rmsPx = rms->number(0.0, 1000.0);
    return origin;
}

// A covariance: symmetric, and no entry larger than the variances on its row and column allow.
LensCovariance readCovariance(const JsonField& field) {
    LensCovariance covariance{};
    const auto rows = field.items(covariance.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto entries = rows[i].items(covariance.size());
        for (std::size_t j = 0; j < entries.size(); ++j) covariance[i][j] = entries[j].number(-1e12, 1e12);
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        for (std::size_t j = 0; j <= i; ++j) {
            const double bound = std::sqrt(std::max(0.0, covariance[i][i]) * std::max(0.0, covariance[j][j]));
            const bool symmetric = std::abs(covariance[i][j] - covariance[j][i]) <= 1e-6 * bound + 1e-15;
            if (!symmetric || covariance[i][i] < 0.0 || std::abs(covariance[i][j]) > bound * (1.0 + 1e-6))
                field.refuse("is no covariance: calibrate the lens again");
        }
    }
    return covariance;
}

std::optional<RuleCheck> readRuleCheck(const JsonField& plate) {
    const auto scale = plate.find("print_scale");
    if (!scale) return std::nullopt;
    const auto both = scale->items(2);
    RuleCheck check;
    check.scale = {both[0].number(1.0 - kMostPrintError, 1.0 + kMostPrintError),
                   both[1].number(1.0 - kMostPrintError, 1.0 + kMostPrintError)};
    if (const auto day = plate.find("rule_checked_on")) check.checkedOn = day->text();
    return check;
}

void checkFormat(const JsonField& document) {
    const JsonField field = document.at("format");
    const std::string format = field.text();
    if (format == kFormat) return;
    if (format.rfind("ringrule-box/", 0) == 0)
        document.refuse("is of version \"" + format + "\"; this program reads \"" + std::string(kFormat) +
                        "\": update the program");
    field.refuse("is \"" + format + "\": this is not a box file, which says \"" + std::string(kFormat) + "\" there");
}

AnimalPlane readAnimalPlane(const JsonField& field, const std::optional<Media>& media) {
    AnimalPlane plane;
    const JsonField distance = field.at("distance_from_plate_mm");
    plane.distanceFromPlateMm = distance.number(0.0, kLongestMm);
    plane.toleranceMm = field.at("tolerance_mm").number(0.0, kLongestMm);
    if (media && plane.distanceFromPlateMm > media->waterToPlateMm)
        distance.refuse("is more than media.water_to_plate_mm: the animal would be in or before the window");
    return plane;
}

Mirror readMirror(const JsonField& field, const PlateLayout& plate) {
    Mirror mirror;
    const std::string place = field.at("place").text();
    if (place != "above" && place != "below") field.at("place").refuse("is neither \"above\" nor \"below\" (the animal)");
    mirror.aboveAnimal = place == "above";
    mirror.meetsPlateAtMm = field.at("meets_plate_at_mm").number(0.0, plate.heightMm);
    mirror.reachMm = field.at("reach_mm").number(0.0, plate.heightMm);
    mirror.toleranceMm = field.at("tolerance_mm").number(0.0, 100.0);
    return mirror;
}

Box readDocument(const JsonField& document) {
    checkFormat(document);
    Box box;
    box.name = document.at("name").text();
    if (box.name.empty()) document.at("name").refuse("is empty: give the box a name");
    box.plate = readPlate(document.at("plate"));
    box.ruleCheck = readRuleCheck(document.at("plate"));
    const JsonField cards = document.at("cards").at("dictionary");
    box.cardDictionary = cards.text();
    if (dictionaryOf(cards).opencvId == markerDictionary(box.plate.dictionary)->opencvId)
        cards.refuse("is the plate's own: cards need another dictionary");
    if (const auto media = document.find("media")) box.media = readMedia(*media);
    if (const auto lens = document.find("lens")) {
        box.lens = readLens(*lens);
        box.lensOrigin = readLensOrigin(*lens);
        if (const auto covariance = lens->find("covariance")) box.lensCovariance = readCovariance(*covariance);
    }
    box.animalPlane = readAnimalPlane(document.at("animal_plane"), box.media);
    if (const auto mirror = document.find("mirror")) box.mirror = readMirror(*mirror, box.plate);
    return box;
}

}  // namespace

Box parseBox(std::string_view text, const std::filesystem::path& path) {
    const auto json = nlohmann::json::parse(text.begin(), text.end(), nullptr, false);
    if (json.is_discarded())
        throw Error(ErrorKind::BadBox, "this is not JSON: check commas, quotes and braces", path.string());
    return readDocument(JsonField(json, path.string()));
}

Box readBox(const std::filesystem::path& path) {
    std::error_code error;
    const auto refuse = [&path](const char* message) -> Error { return {ErrorKind::BadBox, message, path.string()}; };
    if (!std::filesystem::exists(path, error)) throw refuse("there is no such box file: check its name");
    if (!std::filesystem::is_regular_file(path, error)) throw refuse("this is not a file: name a box file");
    if (std::filesystem::file_size(path, error) > kMaxFileBytes)
        throw refuse("this is too large for a box file: name a box file");
    std::ifstream file(path, std::ios::binary);
    if (!file) throw refuse("the box file cannot be opened: check that you may read it");
    const std::string text((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
    return parseBox(text, path);
}

}  // namespace ringrule
