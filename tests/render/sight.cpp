// SPDX-License-Identifier: GPL-3.0-or-later
#include "sight.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace render {

namespace {

Camera cameraOf(const Scene& scene) {
    if (!scene.box.lens || !scene.box.media) {
        throw std::runtime_error("a scene's box needs its true lens and media");
    }
    const Lens lens = scaledLens(*scene.box.lens, scene.sensor.widthPx, scene.sensor.heightPx);
    return {lens, *scene.box.media, waterIndexOf(scene), scene.camera};
}

}  // namespace

double waterIndexOf(const Scene& scene) {
    if (scene.waterIndex) {
        return *scene.waterIndex;
    }
    return seaWaterIndex(scene.box.media->salinityPpt, scene.box.media->temperatureC);
}

cv::Point2d middleOf(const Body& body) {
    cv::Point2d low(1e9, 1e9);
    cv::Point2d high(-1e9, -1e9);
    for (const Part& part : body.parts) {
        for (const cv::Point2d& point : outlineOf(part)) {
            low = {std::min(low.x, point.x), std::min(low.y, point.y)};
            high = {std::max(high.x, point.x), std::max(high.y, point.y)};
        }
    }
    return 0.5 * (low + high);
}

Sight::Sight(const Scene& scene, const Body& body)
    : camera_(cameraOf(scene)),
      placement_(scene.placement),
      middle_(middleOf(body)),
      flip_(scene.placement.facingRight ? -1.0 : 1.0),
      pitchCos_(std::cos(scene.placement.pitchDeg * kPi / 180.0)),
      pitchSin_(std::sin(scene.placement.pitchDeg * kPi / 180.0)),
      turnCos_(std::cos(scene.placement.rotationDeg * kPi / 180.0)),
      turnSin_(std::sin(scene.placement.rotationDeg * kPi / 180.0)) {}

cv::Vec3d Sight::plateFromBody(cv::Point2d bodyMm) const {
    const cv::Point2d offset = bodyMm - middle_;
    const cv::Point2d onPlate = placement_.centreMm + turned(offset);
    // Pitch turns about the plate's vertical through the body's middle.
    const double across = offset.x * flip_ * turnCos_ - offset.y * turnSin_;
    return {onPlate.x, onPlate.y, placement_.distanceMm + across * pitchSin_};
}

cv::Point2d Sight::turned(cv::Point2d direction) const {
    const double u = direction.x * flip_;
    const double x = u * turnCos_ - direction.y * turnSin_;
    const double y = u * turnSin_ + direction.y * turnCos_;
    return {x * pitchCos_, y};
}

cv::Point2d Sight::pxFromBody(cv::Point2d bodyMm) const {
    const cv::Vec3d place = plateFromBody(bodyMm);
    return camera_.pxFromPlate({place[0], place[1]}, place[2]);
}

std::vector<cv::Point2d> Sight::pxFromBody(const std::vector<cv::Point2d>& bodyMm) const {
    std::vector<cv::Point2d> px;
    px.reserve(bodyMm.size());
    for (const cv::Point2d& point : bodyMm) {
        px.push_back(pxFromBody(point));
    }
    return px;
}

}  // namespace render
