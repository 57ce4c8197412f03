// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/box_writer.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iterator>

#include <unistd.h>

#include <nlohmann/json.hpp>

#include "ringrule/error.h"

namespace ringrule {
namespace {

using Json = nlohmann::ordered_json;

bool isScalars(const Json& value) {
    return value.is_array() &&
           std::all_of(value.begin(), value.end(), [](const Json& item) { return item.is_primitive(); });
}

// Whether a value reads best on one line: a list of numbers, or a short object of such.
bool isFlat(const Json& value) {
    if (value.is_primitive() || isScalars(value)) return true;
    return value.is_object() && value.dump().size() < 90 &&
           std::all_of(value.begin(), value.end(),
                       [](const Json& item) { return item.is_primitive() || isScalars(item); });
}

std::string onOneLine(const Json& value) {
    if (value.is_primitive()) return value.dump();
    std::string text;
    for (const auto& item : value.items()) {
        text += text.empty() ? "" : ", ";
        if (value.is_object()) text += Json(item.key()).dump() + ": ";
        text += onOneLine(item.value());
    }
    return value.is_array() ? "[" + text + "]" : "{ " + text + " }";
}

// JSON as a person would write it: two spaces a level, short things on one line.
std::string written(const Json& value, const std::string& indent = {}) {
    if (isFlat(value)) return onOneLine(value);
    const std::string inner = indent + "  ";
    std::string text;
    for (const auto& item : value.items()) {
        text += text.empty() ? "\n" : ",\n";
        text += inner;
        if (value.is_object()) text += Json(item.key()).dump() + ": ";
        text += written(item.value(), inner);
    }
    return (value.is_array() ? "[" : "{") + text + "\n" + indent + (value.is_array() ? "]" : "}");
}

// Without the noise that binary fractions leave in the last digits.
double tidy(double mm) {
    return std::round(mm * 1e6) / 1e6;
}

Json jsonOf(const PlateLayout& plate) {
    Json markers = Json::array();
    for (const PlateMarker& marker : plate.markers)
        markers.push_back({{"id", marker.id},
                           {"centre_mm", {tidy(marker.centreMm.x), tidy(marker.centreMm.y)}},
                           {"side_mm", tidy(marker.sideMm)}});
    return {{"dictionary", plate.dictionary},
            {"size_mm", {tidy(plate.widthMm), tidy(plate.heightMm)}},
            {"flatness_mm", tidy(plate.flatnessMm)},
            {"markers", markers}};
}

void putRuleCheck(Json& plate, const RuleCheck& check) {
    plate["print_scale"] = {tidy(check.scale.across), tidy(check.scale.down)};
    plate.erase("rule_checked_on");
    if (!check.checkedOn.empty()) plate["rule_checked_on"] = check.checkedOn;
}

Json jsonOf(const AnimalPlane& plane) {
    return {{"distance_from_plate_mm", plane.distanceFromPlateMm}, {"tolerance_mm", plane.toleranceMm}};
}

Json jsonOf(const Mirror& mirror) {
    return {{"place", mirror.aboveAnimal ? "above" : "below"},
            {"meets_plate_at_mm", mirror.meetsPlateAtMm},
            {"reach_mm", mirror.reachMm},
            {"tolerance_mm", mirror.toleranceMm}};
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
    return {{"camera_matrix",
             {{lens.focalXPx, 0.0, lens.centreXPx}, {0.0, lens.focalYPx, lens.centreYPx}, {0.0, 0.0, 1.0}}},
            {"distortion", lens.distortion},
            {"image_size_px", {lens.imageWidthPx, lens.imageHeightPx}}};
}

// Without what is not known: a file says nothing rather than an empty text.
void putOrigin(Json& lens, const LensOrigin& origin) {
    const auto put = [&lens](const char* key, const std::string& text) {
        lens.erase(key);
        if (!text.empty()) lens[key] = text;
    };
    put("calibrated_on", origin.calibratedOn);
    put("camera_make", origin.cameraMake);
    put("camera_model", origin.cameraModel);
    const auto putNumber = [&lens](const char* key, const std::optional<double>& number) {
        lens.erase(key);
        if (number) lens[key] = *number;
    };
    putNumber("focal_length_mm", origin.focalLengthMm);
    putNumber("rms_px", origin.rmsPx);
}

void putCovariance(Json& lens, const std::optional<LensCovariance>& covariance) {
    lens.erase("covariance");
    if (covariance) lens["covariance"] = *covariance;
}

// A file of its own beside the one to be written, removed unless it takes that one's place.
class FileBeside {
public:
    explicit FileBeside(const std::filesystem::path& target) : target_(target), name_(target.string() + ".XXXXXX") {
        const int descriptor = ::mkstemp(name_.data());
        if (descriptor >= 0) ::close(descriptor);
        made_ = descriptor >= 0;
    }
    ~FileBeside() {
        std::error_code ignored;
        if (made_) std::filesystem::remove(name_, ignored);
    }
    FileBeside(const FileBeside&) = delete;
    FileBeside& operator=(const FileBeside&) = delete;

    // Whether the text now stands in the target's place.
    [[nodiscard]] bool replaceTargetBy(const std::string& text) {
        if (!made_) return false;
        std::ofstream file(name_, std::ios::binary | std::ios::trunc);
        file << text;
        file.close();
        if (!file) return false;
        std::error_code error;
        const auto asBefore = std::filesystem::status(target_, error);
        // A new file is readable as any other that the user makes; mkstemp would keep it to the user.
        const auto open = std::filesystem::perms::owner_read | std::filesystem::perms::owner_write |
                          std::filesystem::perms::group_read | std::filesystem::perms::others_read;
        std::filesystem::permissions(name_, std::filesystem::exists(asBefore) ? asBefore.permissions() : open, error);
        std::filesystem::rename(name_, target_, error);
        made_ = static_cast<bool>(error);
        return !error;
    }

private:
    std::filesystem::path target_;
    std::string name_;
    bool made_ = false;
};

void writeWhole(const std::string& text, const std::filesystem::path& path) {
    if (!FileBeside(path).replaceTargetBy(text))
        throw Error(ErrorKind::NoSpace, "the box file cannot be written; check the folder and the free space",
                    path.string());
}

std::string contentOf(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

void checkScale(const PrintScale& scale) {
    for (const double each : {scale.across, scale.down}) {
        if (!(std::abs(each - 1.0) <= kMostPrintError))
            throw Error(ErrorKind::BadUse,
                        "the bar is more than 10 % off: the page was fitted to the paper, or a reading is a slip. "
                        "Print at 100 % and measure again");
    }
    if (std::abs(scale.across / scale.down - 1.0) > kMostPrintSkew)
        throw Error(ErrorKind::BadUse,
                    "across and down differ by more than 1 %: no plate for measuring. Print on another printer");
}

// Changes a box file's JSON, checks that a box file is left and writes it; the box that it then is.
template <class Change>
Box changeBoxFile(const std::filesystem::path& path, const Change& change) {
    static_cast<void>(readBox(path));
    Json document = Json::parse(contentOf(path));
    change(document);
    const std::string text = written(document) + "\n";
    Box box = parseBox(text, path);
    writeWhole(text, path);
    return box;
}

void scalePoint(Json& pair, double across, double down) {
    pair[0] = tidy(pair[0].get<double>() * across);
    pair[1] = tidy(pair[1].get<double>() * down);
}

}  // namespace

std::string boxText(const Box& box) {
    Json document = {{"format", "ringrule-box/1"},
                     {"name", box.name},
                     {"plate", jsonOf(box.plate)},
                     {"cards", {{"dictionary", box.cardDictionary}}},
                     {"animal_plane", jsonOf(box.animalPlane)}};
    if (box.ruleCheck) putRuleCheck(document["plate"], *box.ruleCheck);
    if (box.media) document["media"] = jsonOf(*box.media);
    if (box.lens) {
        document["lens"] = jsonOf(*box.lens);
        putOrigin(document["lens"], box.lensOrigin);
        putCovariance(document["lens"], box.lensCovariance);
    }
    if (box.mirror) document["mirror"] = jsonOf(*box.mirror);
    return written(document) + "\n";
}

void writeBox(const Box& box, const std::filesystem::path& path) {
    writeWhole(boxText(box), path);
}

void writeLens(const Lens& lens, const LensOrigin& origin, const std::filesystem::path& path,
               const std::optional<LensCovariance>& covariance) {
    changeBoxFile(path, [&](Json& document) {
        Json& field = document["lens"];
        if (!field.is_object()) field = Json::object();
        field.update(jsonOf(lens));
        putOrigin(field, origin);
        putCovariance(field, covariance);
    });
}

void writeMedia(const Media& media, const std::filesystem::path& path) {
    changeBoxFile(path, [&](Json& document) {
        Json& field = document["media"];
        if (!field.is_object()) field = Json::object();
        field.update(jsonOf(media));
    });
}

void writeAnimalPlane(const AnimalPlane& plane, const std::filesystem::path& path) {
    changeBoxFile(path, [&](Json& document) { document["animal_plane"].update(jsonOf(plane)); });
}

RescaledPlate rescaleBoxFile(const std::filesystem::path& path, const PrintScale& scale, const std::string& checkedOn) {
    checkScale(scale);
    const auto earlier = readBox(path).ruleCheck;
    const PrintScale before = earlier ? earlier->scale : PrintScale{};
    const Box box = changeBoxFile(path, [&](Json& document) {
        Json& plate = document["plate"];
        const double across = scale.across / before.across, down = scale.down / before.down;
        const double side = (scale.across + scale.down) / (before.across + before.down);
        scalePoint(plate["size_mm"], across, down);
        for (Json& marker : plate["markers"]) {
            scalePoint(marker["centre_mm"], across, down);
            marker["side_mm"] = tidy(marker["side_mm"].get<double>() * side);
        }
        putRuleCheck(plate, {scale, checkedOn});
    });
    return {box.plate.widthMm, box.plate.heightMm, before};
}

}  // namespace ringrule
