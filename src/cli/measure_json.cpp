// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/measure_json.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "ringrule/records/measure_columns.h"

namespace ringrule::cli {
namespace {

using Json = nlohmann::ordered_json;

/// Rounded so that no digits are printed that mean nothing: a ten-thousandth of a millimetre, a millionth of a ratio.
double rounded(double value, double steps) {
    return std::round(value * steps) / steps;
}

Json estimateJson(const Estimate& estimate, double steps) {
    if (!estimate.known()) return nullptr;
    return {{"value", rounded(estimate.value, steps)}, {"u95", rounded(estimate.u95(), steps)}};
}

Json pointJson(PixelPoint point) {
    return {rounded(point.x, 100.0), rounded(point.y, 100.0)};
}

Json landmarksJson(const Landmarks& landmarks) {
    Json json = Json::object();
    for (const LandmarkColumn& column : kLandmarkColumns) {
        const auto& landmark = landmarks.*column.member;
        json[std::string(column.key)] = landmark ? pointJson(landmark->atPx) : Json(nullptr);
    }
    return json;
}

Json orNull(const std::string& text) {
    return text.empty() ? Json(nullptr) : Json(text);
}

struct Line {
    const AnimalReading* animal = nullptr;  ///< none: the photo as a whole was refused
    const Measurement& measurement;
    const std::optional<Refusal>& refusal;
};

std::string lineOf(const std::string& photo, const PhotoReading& reading, const Line& line,
                   const JsonLineOptions& options) {
    const Measurement& measurement = line.measurement;
    Json json = {{"format", "ringrule-measure/1"}, {"photo", photo}, {"box", reading.boxName}};
    json["animal_index"] = line.animal != nullptr ? Json(line.animal->index) : Json(nullptr);
    json["card"] = line.animal != nullptr && line.animal->card ? Json(*line.animal->card) : Json(nullptr);
    json["view"] = viewName(reading.view);
    json["measured"] = measurement.measured();
    json["shape"] = measurement.shape == Shape::Unknown ? Json(nullptr) : Json(shapeName(measurement.shape));
    json["protocol"] = orNull(measurement.protocol);
    for (const MeasureColumn& column : kMeasureColumns) {
        const bool ratio = column.key.ends_with("_ratio");
        json[std::string(column.key)] = estimateJson(measurement.*column.member, ratio ? 1e6 : 1e4);
    }
    json["landmarks_px"] = landmarksJson(line.animal != nullptr ? line.animal->anatomy.landmarks : Landmarks{});
    if (options.outline) {
        json["outline_px"] = Json::array();
        if (line.animal != nullptr) {
            for (const PixelPoint& point : line.animal->outline.boundaryPx)
                json["outline_px"].push_back(pointJson(point));
        }
    }
    json["taken_at"] = orNull(reading.takenAt.value_or(""));
    json["remarks"] = Json::array();
    for (const Remark remark : measurement.remarks) json["remarks"].push_back(remarkId(remark));
    if (line.refusal) {
        json["reason"] = line.refusal->reason;
        json["sentence"] = line.refusal->sentence;
    }
    // A file name need not be UTF-8; what cannot be written is replaced rather than failed on.
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

std::string animalLine(const std::string& photo, const PhotoReading& reading, const AnimalReading& animal,
                       const JsonLineOptions& options) {
    return lineOf(photo, reading, {&animal, animal.measurement, animal.measurement.refusal}, options);
}

std::string refusedPhotoLine(const std::string& photo, const PhotoReading& reading, const JsonLineOptions& options) {
    Measurement nothing;
    nothing.remarks = reading.remarks;
    return lineOf(photo, reading, {nullptr, nothing, reading.refusal}, options);
}

}  // namespace ringrule::cli
