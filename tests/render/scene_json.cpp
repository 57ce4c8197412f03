// SPDX-License-Identifier: GPL-3.0-or-later
#include "scene_json.h"

#include "box_file.h"

#include <fstream>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace render {

namespace {

using Json = nlohmann::json;

template <typename Value>
void take(const Json& json, const char* name, Value& value) {
    if (json.contains(name)) {
        value = json[name].get<Value>();
    }
}

void take(const Json& json, const char* name, cv::Point2d& value) {
    if (json.contains(name)) {
        value = {json[name][0], json[name][1]};
    }
}

void take(const Json& json, const char* name, cv::Vec3d& value) {
    if (json.contains(name)) {
        value = {json[name][0], json[name][1], json[name][2]};
    }
}

Animal animalFrom(const Json& json) {
    Animal animal;
    take(json, "code", animal.code);
    take(json, "species", animal.species);
    take(json, "sex", animal.sex);
    animal.shape = json.value("shape", "pipefish") == "seahorse" ? Shape::Seahorse : Shape::Pipefish;
    take(json, "card", animal.card);
    animal.lengthMm = json.at("standard_length_mm");
    animal.trunkDepthMm = animal.lengthMm / (animal.shape == Shape::Pipefish ? 28.0 : 9.5);
    take(json, "head_fraction", animal.headFraction);
    take(json, "trunk_fraction", animal.trunkFraction);
    take(json, "trunk_depth_mm", animal.trunkDepthMm);
    animal.trunkWidthMm = animal.trunkDepthMm * (animal.shape == Shape::Pipefish ? 0.9 : 0.7);
    take(json, "trunk_width_mm", animal.trunkWidthMm);
    take(json, "belly_hollow", animal.bellyHollow);
    take(json, "head_angle_deg", animal.headAngleDeg);
    take(json, "pouch", animal.pouch);
    take(json, "colour_srgb", animal.coat.srgb);
    take(json, "mottling", animal.coat.mottling);
    take(json, "banding", animal.coat.banding);
    take(json, "pale_belly", animal.coat.paleBelly);
    return animal;
}

Posture postureFrom(const Json& json) {
    Posture posture;
    take(json, "trunk_bend_deg", posture.trunkBendDeg);
    take(json, "tail_bend_deg", posture.tailBendDeg);
    take(json, "tail_wave_deg", posture.tailWaveDeg);
    const std::string tail = json.value("tail", "open");
    posture.tail = tail == "closed" ? Tail::Closed : (tail == "half-curled" ? Tail::HalfCurled : Tail::Open);
    return posture;
}

Placement placementFrom(const Json& json, const Box& box) {
    Placement placement;
    placement.centreMm = {0.5 * box.plateMm.width, 0.49 * box.plateMm.height};
    placement.distanceMm = box.animalDistanceMm;
    take(json, "centre_mm", placement.centreMm);
    take(json, "rotation_deg", placement.rotationDeg);
    take(json, "pitch_deg", placement.pitchDeg);
    take(json, "distance_mm", placement.distanceMm);
    take(json, "facing_right", placement.facingRight);
    return placement;
}

CameraPose cameraFrom(const Json& json, const Box& box) {
    CameraPose pose;
    pose.aimMm = {0.5 * box.plateMm.width, 0.5 * box.plateMm.height};
    take(json, "aim_mm", pose.aimMm);
    take(json, "tilt_x_deg", pose.tiltXDeg);
    take(json, "tilt_y_deg", pose.tiltYDeg);
    take(json, "roll_deg", pose.rollDeg);
    return pose;
}

Light lightFrom(const Json& json) {
    Light light;
    take(json, "level", light.level);
    take(json, "slope", light.slope);
    take(json, "fall_off", light.fallOff);
    take(json, "tint", light.tint);
    take(json, "shadow_shift_mm", light.shadowShiftMm);
    take(json, "shadow_blur_mm", light.shadowBlurMm);
    take(json, "shadow", light.shadow);
    take(json, "haze", light.haze);
    return light;
}

Sensor sensorFrom(const Json& json) {
    Sensor sensor;
    take(json, "width_px", sensor.widthPx);
    take(json, "height_px", sensor.heightPx);
    take(json, "blur_px", sensor.blurPx);
    take(json, "full_well", sensor.fullWell);
    take(json, "read_noise", sensor.readNoise);
    take(json, "noise_grain_px", sensor.noiseGrainPx);
    take(json, "jpeg_quality", sensor.jpegQuality);
    return sensor;
}

}  // namespace

Scene readScene(const std::filesystem::path& file) {
    std::ifstream stream(file);
    if (!stream) {
        throw std::runtime_error("cannot open scene file " + file.string());
    }
    const Json json = Json::parse(stream);
    if (json.value("format", "") != "ringrule-scene/1") {
        throw std::runtime_error("not a scene file: " + file.string());
    }
    const auto part = [&json](const char* name) { return json.value(name, Json::object()); };
    Scene scene;
    scene.box = readBox(file.parent_path() / json.at("box").get<std::string>());
    scene.photo = json.value("photo", file.stem().string() + "_rendered.jpg");
    take(json, "taken_at", scene.takenAt);
    take(json, "orientation", scene.orientation);
    take(json, "seed", scene.seed);
    const std::string view = json.value("view", "side");
    scene.view = view == "above" ? View::Above : (view == "front" ? View::Front : View::Side);
    if (json.contains("water_index")) {
        scene.waterIndex = json["water_index"].get<double>();
    }
    scene.animal = animalFrom(json.at("animal"));
    scene.posture = postureFrom(part("posture"));
    scene.placement = placementFrom(part("placement"), scene.box);
    scene.camera = cameraFrom(part("camera"), scene.box);
    scene.light = lightFrom(part("light"));
    scene.sensor = sensorFrom(part("sensor"));
    if (json.contains("card")) {
        scene.card.shown = true;
        scene.card.text = scene.animal.code;
        take(json["card"], "centre_mm", scene.card.centreMm);
        take(json["card"], "rotation_deg", scene.card.rotationDeg);
        take(json["card"], "marker_mm", scene.card.markerMm);
    }
    return scene;
}

}  // namespace render
