// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// A plate drawn as a camera of known place would see it, with optics written apart from those under test: angles and
// Snell's law for the layers, fixed-point iteration for the lens.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <functional>
#include <optional>
#include <random>
#include <vector>

#include <opencv2/aruco/dictionary.hpp>
#include <opencv2/imgproc.hpp>

#include "ringrule/imaging/photo.h"
#include "ringrule/optics/box_file.h"

namespace drawn {

inline ringrule::Box benchBox() {
    ringrule::Box box;
    box.name = "test bench";
    box.plate = {"DICT_4X4_50", 200.0, 120.0, {}};
    int id = 0;
    for (const double y : {12.0, 108.0})
        for (const double x : {12.0, 70.0, 130.0, 188.0}) box.plate.markers.push_back({id++, {x, y}, 12.0});
    box.cardDictionary = "DICT_5X5_1000";
    box.animalPlane = {8.0, 2.0};
    box.media = ringrule::Media{420.0, 5.0, 1.4917, 60.0, 32.0, 24.0};
    box.lens = ringrule::Lens{4250.0, 4250.0, 998.0, 752.0, {-0.15, 0.08, 0.0003, -0.0002, 0.0}, 2000, 1500};
    return box;
}

struct Camera {
    ringrule::Lens lens;
    std::optional<ringrule::Media> media;  // none: air all the way
    double airMm = 420.0;                  // to the window, or to the plate without media
    double waterIndex = 1.3385;
    cv::Vec3d turnRadians{0.0, 0.0, 0.0};  // about x, then y, then z of the plate
    cv::Point2d footMm{100.0, 60.0};

    cv::Matx33d rotation() const {
        const auto [cx, sx] = std::pair{std::cos(turnRadians[0]), std::sin(turnRadians[0])};
        const auto [cy, sy] = std::pair{std::cos(turnRadians[1]), std::sin(turnRadians[1])};
        const auto [cz, sz] = std::pair{std::cos(turnRadians[2]), std::sin(turnRadians[2])};
        return cv::Matx33d(cz, -sz, 0, sz, cz, 0, 0, 0, 1) * cv::Matx33d(cy, 0, sy, 0, 1, 0, -sy, 0, cy) *
               cv::Matx33d(1, 0, 0, 0, cx, -sx, 0, sx, cx);
    }

    // Where the ray of a pixel meets the plane that far before the plate.
    cv::Point2d planeFromPx(cv::Point2d px, double heightMm, const cv::Matx33d& plateFromCamera) const {
        const double xd = (px.x - lens.centreXPx) / lens.focalXPx, yd = (px.y - lens.centreYPx) / lens.focalYPx;
        const auto& k = lens.distortion;
        double x = xd, y = yd;
        for (int i = 0; i < 12; ++i) {  // each round gains two digits for such lenses
            const double r2 = x * x + y * y, radial = 1.0 + r2 * (k[0] + r2 * (k[1] + r2 * k[4]));
            const double dx = 2.0 * k[2] * x * y + k[3] * (r2 + 2.0 * x * x);
            const double dy = k[2] * (r2 + 2.0 * y * y) + 2.0 * k[3] * x * y;
            x = (xd - dx) / radial;
            y = (yd - dy) / radial;
        }
        const cv::Vec3d ray = plateFromCamera * cv::Vec3d(x, y, 1.0);
        const double across = std::hypot(ray[0], ray[1]);
        const double angle = std::atan2(across, ray[2]);
        double reach = airMm * std::tan(angle);
        if (media) {
            reach += media->windowThicknessMm * std::tan(std::asin(std::sin(angle) / media->windowIndex));
            reach += (media->waterToPlateMm - heightMm) * std::tan(std::asin(std::sin(angle) / waterIndex));
        } else {
            reach -= heightMm * std::tan(angle);
        }
        if (across < 1e-15) return footMm;
        return footMm + cv::Point2d(ray[0], ray[1]) * (reach / across);
    }
    cv::Point2d planeFromPx(cv::Point2d px, double heightMm) const { return planeFromPx(px, heightMm, rotation()); }

    // The inverse, by Newton's method with differences.
    cv::Point2d pxFromPlane(cv::Point2d mm, double heightMm) const {
        const cv::Matx33d turn = rotation();
        cv::Point2d px(lens.centreXPx, lens.centreYPx);
        for (int i = 0; i < 30; ++i) {
            const cv::Point2d at = planeFromPx(px, heightMm, turn);
            const cv::Point2d ax = (planeFromPx(px + cv::Point2d(0.5, 0), heightMm, turn) -
                                    planeFromPx(px - cv::Point2d(0.5, 0), heightMm, turn));
            const cv::Point2d ay = (planeFromPx(px + cv::Point2d(0, 0.5), heightMm, turn) -
                                    planeFromPx(px - cv::Point2d(0, 0.5), heightMm, turn));
            const cv::Point2d miss = mm - at;
            const double det = ax.x * ay.y - ax.y * ay.x;
            const cv::Point2d step((miss.x * ay.y - miss.y * ay.x) / det, (ax.x * miss.y - ax.y * miss.x) / det);
            px += step;
            if (std::hypot(step.x, step.y) < 1e-11) break;
        }
        return px;
    }
};

// The camera moved sideways so that the middle of its image shows a point of the plate.
inline Camera aimedAt(Camera camera, cv::Point2d plateMm) {
    const cv::Point2d seen =
        camera.planeFromPx({0.5 * (camera.lens.imageWidthPx - 1), 0.5 * (camera.lens.imageHeightPx - 1)}, 0.0);
    camera.footMm += plateMm - seen;
    return camera;
}

// A camera that stands where the box says, aimed so that the plate fills the photo.
inline Camera benchCamera(const ringrule::Box& box) {
    Camera camera;
    camera.lens = *box.lens;
    camera.media = box.media;
    return camera;
}

struct PrintedMarker {
    int dictionary = cv::aruco::DICT_4X4_50;
    int id = 0;
    cv::Point2d centreMm;
    double sideMm = 12.0;
};

inline std::vector<PrintedMarker> markersOf(const ringrule::Box& box, double printScale = 1.0) {
    std::vector<PrintedMarker> markers;
    for (const auto& m : box.plate.markers)
        markers.push_back({cv::aruco::DICT_4X4_50, m.id, cv::Point2d(m.centreMm.x, m.centreMm.y) * printScale,
                           m.sideMm * printScale});
    return markers;
}

struct Picture {
    double blurPx = 0.8;
    double noise = 0.0;   // standard deviation in code values
    double paper = 0.75;  // light
    double ink = 0.03;
    std::uint64_t seed = 1;
};

inline cv::Mat1f cellsOf(const PrintedMarker& marker) {
    const auto dictionary = cv::aruco::getPredefinedDictionary(marker.dictionary);
    const int cells = dictionary->markerSize + 2;
    cv::Mat image;
    dictionary->drawMarker(marker.id, cells, image, 1);
    cv::Mat1f light;
    image.convertTo(light, CV_32F, 1.0 / 255.0);
    return light;
}

inline cv::Mat encoded(const cv::Mat1f& light, const Picture& picture) {
    std::mt19937_64 random(picture.seed);
    std::normal_distribution<double> normal;
    cv::Mat1b codes(light.size());
    const auto codeOf = [](double v) {
        return 255.0 * (v <= 0.0031308 ? 12.92 * v : 1.055 * std::pow(v, 1.0 / 2.4) - 0.055);
    };
    const auto paper = static_cast<float>(picture.paper);
    const double paperCode = codeOf(picture.paper);
    for (int y = 0; y < light.rows; ++y)
        for (int x = 0; x < light.cols; ++x) {
            double code = light(y, x) == paper ? paperCode : codeOf(light(y, x));
            if (picture.noise > 0.0) code += picture.noise * normal(random);
            codes(y, x) = cv::saturate_cast<std::uint8_t>(code);
        }
    return codes;
}

// The photo that the camera takes of markers on white paper: 4 × 4 samples a pixel, each at random in its square (a
// regular grid would place edges along it to a quarter of a pixel only), blurred as light, then encoded.
inline ringrule::Photo photograph(const Camera& camera, const std::vector<PrintedMarker>& markers,
                                  const Picture& picture = {}) {
    cv::Mat1f light(camera.lens.imageHeightPx, camera.lens.imageWidthPx, static_cast<float>(picture.paper));
    const cv::Matx33d turn = camera.rotation();
    std::mt19937 random(static_cast<std::uint32_t>(picture.seed));
    std::uniform_real_distribution<double> jitter;
    for (const PrintedMarker& marker : markers) {
        const cv::Mat1f cells = cellsOf(marker);
        std::vector<cv::Point2f> outline;
        for (const auto& [sx, sy] : {std::pair{-1, -1}, {1, -1}, {1, 1}, {-1, 1}})
            outline.emplace_back(camera.pxFromPlane(marker.centreMm + 0.5 * marker.sideMm * cv::Point2d(sx, sy), 0.0));
        cv::Rect box = cv::boundingRect(outline);
        box = cv::Rect(box.x - 3, box.y - 3, box.width + 6, box.height + 6) & cv::Rect({0, 0}, light.size());
        for (int y = box.y; y < box.br().y; ++y)
            for (int x = box.x; x < box.br().x; ++x) {
                double sum = 0.0;
                for (int j = 0; j < 4; ++j)
                    for (int i = 0; i < 4; ++i) {
                        const cv::Point2d px(x - 0.5 + 0.25 * (i + jitter(random)),
                                             y - 0.5 + 0.25 * (j + jitter(random)));
                        const cv::Point2d mm = camera.planeFromPx(px, 0.0, turn);
                        const cv::Point2d at = (mm - marker.centreMm) * (1.0 / marker.sideMm) + cv::Point2d(0.5, 0.5);
                        const bool on = at.x >= 0 && at.x < 1 && at.y >= 0 && at.y < 1;
                        const double white =
                            on ? cells(static_cast<int>(at.y * cells.rows), static_cast<int>(at.x * cells.cols)) : 1.0;
                        sum += picture.ink + (picture.paper - picture.ink) * white;
                    }
                light(y, x) = static_cast<float>(sum / 16.0);
            }
    }
    if (picture.blurPx > 0.0) cv::GaussianBlur(light, light, {}, picture.blurPx);
    ringrule::Photo photo;
    photo.path = "drawn.png";
    photo.grey = encoded(light, picture);
    return photo;
}

}  // namespace drawn
