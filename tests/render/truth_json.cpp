// SPDX-License-Identifier: GPL-3.0-or-later
#include "truth.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace render {

namespace {

using Json = nlohmann::ordered_json;

double rounded(double value, double steps) {
    return std::round(value * steps) / steps;
}

Json orNull(const std::optional<double>& value) {
    return value ? Json(rounded(*value, 1e4)) : Json(nullptr);
}

Json pxOf(const Sight& sight, cv::Point2d bodyMm) {
    const cv::Point2d px = sight.pxFromBody(bodyMm);
    return {rounded(px.x, 1e3), rounded(px.y, 1e3)};
}

Json mmOf(const Sight& sight, cv::Point2d bodyMm) {
    const cv::Vec3d mm = sight.plateFromBody(bodyMm);
    return {rounded(mm[0], 1e3), rounded(mm[1], 1e3), rounded(mm[2], 1e3)};
}

template <typename Project>
Json landmarksOf(const Landmarks& marks, Project project) {
    const auto entry = [&](const std::optional<cv::Point2d>& mark) { return mark ? project(*mark) : Json(nullptr); };
    return {{"snout_tip", entry(marks.snoutTip)},
            {"coronet", entry(marks.coronet)},
            {"head_end", entry(marks.headEnd)},
            {"trunk_end", entry(marks.trunkEnd)},
            {"tail_end", entry(marks.tailEnd)}};
}

Json pointsPx(const Sight& sight, const std::vector<cv::Point2d>& bodyMm) {
    Json points = Json::array();
    for (const cv::Point2d& point : bodyMm) {
        const cv::Point2d px = sight.pxFromBody(point);
        points.push_back({rounded(px.x, 1e2), rounded(px.y, 1e2)});
    }
    return points;
}

Json pointsMm(const Sight& sight, const std::vector<cv::Point2d>& bodyMm) {
    Json points = Json::array();
    for (const cv::Point2d& point : bodyMm) {
        const cv::Vec3d mm = sight.plateFromBody(point);
        points.push_back({rounded(mm[0], 1e2), rounded(mm[1], 1e2)});
    }
    return points;
}

const char* nameOf(View view) {
    return view == View::Side ? "side" : (view == View::Above ? "above" : "front");
}

const char* nameOf(Tail tail) {
    return tail == Tail::Open ? "open" : (tail == Tail::HalfCurled ? "half-curled" : "closed");
}

// What the view can show at best.
Json measurableIn(const Scene& scene) {
    if (scene.view == View::Front) {
        return {"trunk_width_mm"};
    }
    if (scene.view == View::Above) {
        return {"standard_length_mm", "trunk_width_mm"};
    }
    Json names = {"head_length_mm", "trunk_length_mm", "trunk_depth_mm", "depth_ratio", "belly_hollow_percent"};
    if (scene.posture.tail != Tail::Closed) {
        names.push_back("standard_length_mm");
        names.push_back("tail_length_mm");
    }
    return names;
}

Json cameraOf(const Sight& sight) {
    const cv::Matx33d& turn = sight.camera().plateFromCamera();
    const cv::Vec3d centre = sight.camera().centreMm();
    Json rows = Json::array();
    for (int row = 0; row < 3; ++row) {
        rows.push_back({turn(row, 0), turn(row, 1), turn(row, 2)});
    }
    return {{"centre_mm", {centre[0], centre[1], centre[2]}}, {"plate_from_camera", rows}};
}

}  // namespace

nlohmann::ordered_json truthJson(const Scene& scene, const Truth& truth, const Sight& sight) {
    const Animal& animal = scene.animal;
    Json json = {{"format", "ringrule-truth/1"},
                 {"photo", scene.photo},
                 {"taken_at", scene.takenAt},
                 {"animal", animal.code},
                 {"card", scene.card.shown ? Json(animal.card) : Json(nullptr)},
                 {"species", animal.species},
                 {"sex", animal.sex},
                 {"shape", animal.shape == Shape::Pipefish ? "pipefish" : "seahorse"},
                 {"view", nameOf(scene.view)},
                 {"measurable", measurableIn(scene)},
                 {"standard_length_mm", rounded(truth.standardLengthMm, 1e4)},
                 {"head_length_mm", rounded(truth.headLengthMm, 1e4)},
                 {"trunk_length_mm", rounded(truth.trunkLengthMm, 1e4)},
                 {"tail_length_mm", rounded(truth.tailLengthMm, 1e4)},
                 {"height_mm", orNull(truth.heightMm)},
                 {"trunk_depth_mm", rounded(truth.trunkDepthMm, 1e4)},
                 {"trunk_width_mm", rounded(truth.trunkWidthMm, 1e4)},
                 {"girth_mm", rounded(truth.girthMm, 1e4)},
                 {"girth_ratio", rounded(truth.girthMm / truth.standardLengthMm, 1e6)},
                 {"depth_ratio", rounded(truth.trunkDepthMm / truth.standardLengthMm, 1e6)},
                 {"belly_hollow_percent", orNull(truth.bellyHollowPercent)},
                 {"belly_hollow_straightened_percent", orNull(truth.bellyHollowStraightenedPercent)},
                 {"tail_state", nameOf(scene.posture.tail)}};
    const auto px = [&sight](cv::Point2d mark) { return pxOf(sight, mark); };
    const auto mm = [&sight](cv::Point2d mark) { return mmOf(sight, mark); };
    json["landmarks_mm"] = landmarksOf(truth.bodyLandmarks, mm);
    json["landmarks_px"] = landmarksOf(truth.bodyLandmarks, px);
    json["animal_plane_mm"] = rounded(scene.placement.distanceMm, 1e4);
    json["pitch_deg"] = rounded(scene.placement.pitchDeg, 1e4);
    json["water_index"] = rounded(waterIndexOf(scene), 1e6);
    json["camera"] = cameraOf(sight);
    json["image_size_px"] = {scene.sensor.widthPx, scene.sensor.heightPx};
    json["stored_orientation"] = scene.orientation;
    json["midline_px"] = pointsPx(sight, truth.midlineBodyMm);
    json["outline_mm"] = pointsMm(sight, truth.outlineBodyMm);
    json["outline_px"] = pointsPx(sight, truth.outlineBodyMm);
    return json;
}

}  // namespace render
