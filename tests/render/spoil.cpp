// SPDX-License-Identifier: GPL-3.0-or-later
#include "spoil.h"

#include "photograph.h"
#include "random.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

namespace render {

namespace {

cv::Rect reachOf(cv::Point2d centre, double radius, cv::Size size) {
    const cv::Point corner(static_cast<int>(centre.x - radius) - 1, static_cast<int>(centre.y - radius) - 1);
    const int side = static_cast<int>(2.0 * radius) + 3;
    return cv::Rect(corner.x, corner.y, side, side) & cv::Rect({0, 0}, size);
}

// Distance from an ellipse's middle in units of its radii.
double withinEllipse(cv::Point2d offset, cv::Size2d radii, double turn) {
    const double c = std::cos(turn), s = std::sin(turn);
    return std::hypot((c * offset.x + s * offset.y) / radii.width, (c * offset.y - s * offset.x) / radii.height);
}

cv::Vec3f lightAt(const cv::Mat3f& light, cv::Point2d at) {
    const int x = std::clamp(static_cast<int>(std::lround(at.x)), 0, light.cols - 1);
    const int y = std::clamp(static_cast<int>(std::lround(at.y)), 0, light.rows - 1);
    return light(y, x);
}

double pxPerMmAt(const Camera& camera, cv::Point2d mm) {
    return cv::norm(camera.pxFromPlate(mm + cv::Point2d(0.5, 0.0), 0.0) -
                    camera.pxFromPlate(mm - cv::Point2d(0.5, 0.0), 0.0));
}

// Anywhere on the plate.
cv::Point2d placeOn(const Box& box, Random& random) {
    const double x = random.between(0.0, box.plateMm.width);
    return {x, random.between(0.0, box.plateMm.height)};
}

}  // namespace

void addGlare(cv::Mat3f& light, const Glare& glare) {
    const cv::Rect reach =
        reachOf(glare.centrePx, 2.0 * std::max(glare.radiiPx.width, glare.radiiPx.height), light.size());
    for (int y = reach.y; y < reach.br().y; ++y) {
        for (int x = reach.x; x < reach.br().x; ++x) {
            const double r = withinEllipse(cv::Point2d(x, y) - glare.centrePx, glare.radiiPx, glare.turnRad);
            const auto add = static_cast<float>(glare.strength / (1.0 + std::exp(8.0 * (r - 1.0))));
            light(y, x) += cv::Vec3f(add, add, add);
        }
    }
}

void addDrop(cv::Mat3f& light, const Drop& drop) {
    constexpr double kMinify = 3.0;  // how much wider the view in the drop is
    const cv::Rect reach = reachOf(drop.centrePx, 1.3 * drop.radiusPx, light.size());
    const cv::Rect behind = reachOf(drop.centrePx, 1.3 * kMinify * drop.radiusPx, light.size());
    const cv::Mat3f before = light(behind).clone();
    for (int y = reach.y; y < reach.br().y; ++y) {
        for (int x = reach.x; x < reach.br().x; ++x) {
            const cv::Point2d offset = cv::Point2d(x, y) - drop.centrePx;
            const double r = cv::norm(offset) / drop.radiusPx;
            const double inside = 1.0 / (1.0 + std::exp(14.0 * (r - 1.0)));
            const double rim = 1.0 - 0.6 * std::exp(-std::pow((r - 0.95) / 0.12, 2));
            cv::Vec3f seen =
                lightAt(before, drop.centrePx - kMinify * offset - cv::Point2d(behind.tl())) * static_cast<float>(rim);
            const double spark = cv::norm(offset + cv::Point2d(0.35, 0.45) * drop.radiusPx) / (0.16 * drop.radiusPx);
            const auto glint = static_cast<float>(0.9 * std::exp(-spark * spark));
            seen += cv::Vec3f(glint, glint, glint);
            light(y, x) += (seen - light(y, x)) * static_cast<float>(inside);
        }
    }
}

void addCover(cv::Mat3f& light, const Cover& cover) {
    const cv::Rect reach =
        reachOf(cover.centrePx, 1.3 * std::max(cover.radiiPx.width, cover.radiiPx.height), light.size());
    for (int y = reach.y; y < reach.br().y; ++y) {
        for (int x = reach.x; x < reach.br().x; ++x) {
            const double r = withinEllipse(cv::Point2d(x, y) - cover.centrePx, cover.radiiPx, cover.turnRad);
            const double inside = 1.0 / (1.0 + std::exp(40.0 * (r - 1.0)));
            light(y, x) += (cover.colour - light(y, x)) * static_cast<float>(inside);
        }
    }
}

SpoiledPlate photographSpoiled(const Scene& scene, const SpoilOptions& options) {
    Random random(seedOf(scene.seed, 91));
    const Body body = bodyOf(scene.animal, scene.posture, scene.view);
    const Sight sight(scene, body);
    const Camera& camera = sight.camera();
    cv::Mat3f light = exposeScene(scene, body, sight);
    SpoiledPlate result;
    if (random.unit() < options.hiddenShare) {
        const Marker& marker =
            scene.box.markers[static_cast<std::size_t>(random.below(static_cast<int>(scene.box.markers.size())))];
        const double reach = marker.sideMm * pxPerMmAt(camera, marker.centreMm);
        result.hiddenId = marker.id;
        addCover(light, {camera.pxFromPlate(marker.centreMm, 0.0) +
                             reach * cv::Point2d(random.between(-0.15, 0.15), random.between(-0.15, 0.15)),
                         {reach * random.between(0.7, 1.2), reach * random.between(0.45, 0.6)},
                         random.between(0.0, kPi)});
    }
    for (int i = random.below(options.mostGlares + 1); i > 0; --i) {
        const cv::Point2d at = placeOn(scene.box, random);
        const double size = scene.box.plateMm.width / 200.0 * pxPerMmAt(camera, at);
        addGlare(light, {camera.pxFromPlate(at, 0.0),
                         {size * random.between(5.0, 25.0), size * random.between(4.0, 12.0)},
                         random.between(0.0, kPi),
                         random.between(0.1, options.strongestGlare)});
    }
    result.drops = options.leastDrops + random.below(options.mostDrops - options.leastDrops + 1);
    for (int i = 0; i < result.drops; ++i) {
        const cv::Point2d at = placeOn(scene.box, random);
        const double size = scene.box.plateMm.width / 200.0 * pxPerMmAt(camera, at);
        addDrop(light, {camera.pxFromPlate(at, 0.0), size * random.between(0.3, options.largestDropMm)});
    }
    result.photo = develop(scene, light);
    return result;
}

}  // namespace render
