// SPDX-License-Identifier: GPL-3.0-or-later
#include "photograph.h"
#include "plate_drawing.h"
#include "random.h"
#include "skin.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

namespace render {

namespace {

constexpr int kGridPx = 16;  // pixels between exactly traced rays; linear between them
constexpr double kShadowPxPerMm = 4.0;

struct Grid {
    cv::Mat2d plateMm;
    cv::Mat1d light;
};

double lightAt(const Scene& scene, cv::Point2d mm) {
    const double x = 2.0 * mm.x / scene.box.plateMm.width - 1.0;
    const double y = 2.0 * mm.y / scene.box.plateMm.height - 1.0;
    const double wave = smoothNoise(mm.x / 40.0, mm.y / 40.0, seedOf(scene.seed, 31));
    const double even = 1.0 + scene.light.slope.x * x + scene.light.slope.y * y + 0.018 * wave;
    return scene.light.level * even * (1.0 - 0.5 * scene.light.fallOff * (x * x + y * y));
}

Grid traceGrid(const Scene& scene, const Camera& camera) {
    const int columns = scene.sensor.widthPx / kGridPx + 2;
    const int rows = scene.sensor.heightPx / kGridPx + 2;
    Grid grid{cv::Mat2d(rows, columns), cv::Mat1d(rows, columns)};
    for (int row = 0; row < rows; ++row) {
        for (int column = 0; column < columns; ++column) {
            const cv::Point2d mm =
                camera.plateFromPx({static_cast<double>(column * kGridPx), static_cast<double>(row * kGridPx)}, 0.0);
            grid.plateMm(row, column) = {mm.x, mm.y};
            grid.light(row, column) = lightAt(scene, mm);
        }
    }
    return grid;
}

// One of the photo's animals, with the scene as if it were alone.
struct Actor {
    Scene scene;
    Body body;
    Sight sight;
};

std::vector<Actor> companionsOf(const Scene& scene) {
    std::vector<Actor> actors;
    for (const Companion& companion : scene.companions) {
        Scene own = scene;
        own.animal = companion.animal;
        own.posture = companion.posture;
        own.placement = companion.placement;
        own.seed = seedOf(scene.seed, 900 + actors.size());
        Body body = bodyOf(own.animal, own.posture, own.view);
        Sight sight(own, body);
        actors.push_back({std::move(own), std::move(body), std::move(sight)});
    }
    return actors;
}

// Adds the body's sharp shadow on the plate, kShadowPxPerMm texels a millimetre.
void castShadow(cv::Mat1f& shadow, const Scene& scene, const Body& body, const Sight& sight) {
    for (const Part& part : body.parts) {
        std::vector<cv::Point2d> outline;
        for (const cv::Point2d& point : outlineOf(part)) {
            const cv::Vec3d place = sight.plateFromBody(point);
            outline.push_back((cv::Point2d(place[0], place[1]) + scene.light.shadowShiftMm) * kShadowPxPerMm);
        }
        const Coverage cover = coverageOf(outline);
        const cv::Rect shown = cover.bounds & cv::Rect({0, 0}, shadow.size());
        if (shown.area() > 0) {
            cv::Mat window = shadow(shown);
            cv::max(window, cover.share(shown - cover.bounds.tl()), window);
        }
    }
}

// Soft shadow of all bodies: 0 … 1.
cv::Mat1f shadowOf(const Scene& scene, const Body& body, const Sight& sight, const std::vector<Actor>& companions) {
    cv::Mat1f shadow(static_cast<int>(scene.box.plateMm.height * kShadowPxPerMm),
                     static_cast<int>(scene.box.plateMm.width * kShadowPxPerMm), 0.0F);
    castShadow(shadow, scene, body, sight);
    for (const Actor& actor : companions) castShadow(shadow, scene, actor.body, actor.sight);
    if (scene.withoutAnimal) shadow.setTo(0.0F);
    cv::GaussianBlur(shadow, shadow, {}, scene.light.shadowBlurMm * kShadowPxPerMm);
    cv::multiply(shadow, scene.light.shadow, shadow);
    return shadow;
}

template <typename Value>
double sample(const cv::Mat_<Value>& picture, double x, double y) {
    const double bx = std::clamp(x, 0.0, picture.cols - 1.001);
    const double by = std::clamp(y, 0.0, picture.rows - 1.001);
    const int ix = static_cast<int>(bx);
    const int iy = static_cast<int>(by);
    const double tx = bx - ix;
    const double ty = by - iy;
    const Value* top = picture[iy] + ix;
    const Value* bottom = picture[iy + 1] + ix;
    return (top[0] * (1.0 - tx) + top[1] * tx) * (1.0 - ty) + (bottom[0] * (1.0 - tx) + bottom[1] * tx) * ty;
}

// The dark wall of the box, shaded next to the plate.
double wallAt(cv::Point2d mm, double fromPlateMm) {
    return 0.05 + 0.05 * std::min(1.0, fromPlateMm / 12.0) + 0.004 * smoothNoise(mm.x / 9.0, mm.y / 9.0, 5);
}

// What lies behind a plate point: the plate, or the dark wall of the box around it.
// `widthMm` is the size of the spot that is looked at: it softens the plate's edge.
double reflectanceAt(const PlatePicture& plate, const Scene& scene, cv::Point2d mm, double widthMm) {
    const cv::Size2d size = scene.box.plateMm;
    const double out = std::max({-mm.x, -mm.y, mm.x - size.width, mm.y - size.height});
    const double onPlate = std::clamp(0.5 - out / widthMm, 0.0, 1.0);
    double seen = 0.0;
    if (onPlate > 0.0) {
        seen = onPlate * sample(plate.reflectance, mm.x * plate.pxPerMm - 0.5, mm.y * plate.pxPerMm - 0.5) / 255.0;
    }
    return onPlate == 1.0 ? seen : seen + (1.0 - onPlate) * wallAt(mm, std::max(0.0, out));
}

class PlatePainter {
public:
    PlatePainter(const Scene& scene, const Grid& grid, const PlatePicture& plate, const cv::Mat1f& shadow)
        : scene_(scene), grid_(grid), plate_(plate), shadow_(shadow), tint_(tintOf(scene.light.tint)) {
        const cv::Vec2d step = grid.plateMm(grid.plateMm.rows / 2, grid.plateMm.cols / 2 + 1) -
                               grid.plateMm(grid.plateMm.rows / 2, grid.plateMm.cols / 2);
        const double pixelMm = cv::norm(step) / kGridPx;
        // A pixel that sees several texels sees their mean.
        const int texels = std::max(1, static_cast<int>(std::lround(pixelMm * plate.pxPerMm)));
        if (texels > 1) {
            const cv::Size whole(plate.reflectance.cols / texels, plate.reflectance.rows / texels);
            cv::resize(plate.reflectance(cv::Rect({0, 0}, whole * texels)), plate_.reflectance, whole, 0, 0,
                       cv::INTER_AREA);
            plate_.pxPerMm = plate.pxPerMm / texels;
        }
        spotMm_ = pixelMm;
    }

    cv::Vec3f at(int x, int y) const {
        const int column = x / kGridPx;
        const int row = y / kGridPx;
        const double tx = static_cast<double>(x % kGridPx) / kGridPx;
        const double ty = static_cast<double>(y % kGridPx) / kGridPx;
        const cv::Vec2d a = grid_.plateMm(row, column);
        const cv::Vec2d right = grid_.plateMm(row, column + 1) - a;
        const cv::Vec2d down = grid_.plateMm(row + 1, column) - a;
        const cv::Vec2d twist = grid_.plateMm(row + 1, column + 1) - a - right - down;
        const cv::Vec2d mm = a + right * tx + down * ty + twist * (tx * ty);
        const double seen = reflectanceAt(plate_, scene_, {mm[0], mm[1]}, spotMm_);
        const double light = (grid_.light(row, column) * (1 - tx) + grid_.light(row, column + 1) * tx) * (1 - ty) +
                             (grid_.light(row + 1, column) * (1 - tx) + grid_.light(row + 1, column + 1) * tx) * ty;
        const double dark = sample(shadow_, mm[0] * kShadowPxPerMm - 0.5, mm[1] * kShadowPxPerMm - 0.5);
        return tint_ * static_cast<float>(seen * light * (1.0 - dark) / 0.87);
    }

private:
    static cv::Vec3f tintOf(const cv::Vec3d& rgb) {
        return {static_cast<float>(rgb[2]), static_cast<float>(rgb[1]), static_cast<float>(rgb[0])};
    }

    const Scene& scene_;
    const Grid& grid_;
    PlatePicture plate_;
    const cv::Mat1f& shadow_;
    cv::Vec3f tint_;
    double spotMm_ = 0.1;
};

// Lays a colour over the picture with the coverage's share times an opacity.
void lay(cv::Mat3f& picture, const Coverage& coverage, float opacity, const cv::Vec3f& colour) {
    const cv::Rect shown = coverage.bounds & cv::Rect({0, 0}, picture.size());
    for (int y = shown.y; y < shown.br().y; ++y) {
        for (int x = shown.x; x < shown.br().x; ++x) {
            const float share = opacity * coverage.share(y - coverage.bounds.y, x - coverage.bounds.x);
            picture(y, x) += (colour - picture(y, x)) * share;
        }
    }
}

cv::Vec3f animalLight(const Scene& scene) {
    const float light = static_cast<float>(lightAt(scene, scene.placement.centreMm) / 0.87);
    const cv::Vec3d rgb = scene.light.tint;
    return cv::Vec3f(static_cast<float>(rgb[2]), static_cast<float>(rgb[1]), static_cast<float>(rgb[0])) * light;
}

void layAnimal(cv::Mat3f& picture, const AnimalPicture& animal, const cv::Vec3f& light) {
    const cv::Rect bounds = animal.coverage.bounds;
    const cv::Rect shown = bounds & cv::Rect({0, 0}, picture.size());
    for (int y = shown.y; y < shown.br().y; ++y) {
        for (int x = shown.x; x < shown.br().x; ++x) {
            const float share = animal.coverage.share(y - bounds.y, x - bounds.x);
            const cv::Vec3f colour = animal.reflected(y - bounds.y, x - bounds.x).mul(light);
            picture(y, x) += (colour - picture(y, x)) * share;
        }
    }
}

std::vector<cv::Point2d> circle(cv::Point2d centre, double radius) {
    std::vector<cv::Point2d> points;
    for (int i = 0; i < 48; ++i) {
        const double angle = 2.0 * kPi * i / 48.0;
        points.push_back(centre + radius * cv::Point2d(std::cos(angle), std::sin(angle)));
    }
    return points;
}

void layFins(cv::Mat3f& picture, const Body& body, const Sight& sight, const cv::Vec3f& colour) {
    for (const Fin& fin : body.fins) {
        lay(picture, coverageOf(sight.pxFromBody(fin.outlineMm)), static_cast<float>(fin.opacity), colour);
        for (const auto& [root, tip] : fin.raysMm) {
            const cv::Point2d along = tip - root;
            const cv::Point2d wide = cv::Point2d(-along.y, along.x) * (0.035 / std::max(1e-6, cv::norm(along)));
            lay(picture, coverageOf(sight.pxFromBody({root - wide, root + wide, tip + 0.5 * wide, tip - 0.5 * wide})),
                static_cast<float>(0.8 * fin.opacity), colour * 0.6F);
        }
    }
}

void layEyes(cv::Mat3f& picture, const Body& body, const Sight& sight, const cv::Vec3f& light) {
    for (const Eye& eye : body.eyes) {
        const auto disc = [&](double share, const cv::Vec3f& colour) {
            lay(picture, coverageOf(sight.pxFromBody(circle(eye.centreMm, share * eye.radiusMm))), 1.0F,
                colour.mul(light));
        };
        if (eye.mouth) {
            disc(1.0, {0.03F, 0.045F, 0.055F});
            disc(0.45, {0.008F, 0.008F, 0.008F});
            continue;
        }
        disc(1.0, {0.015F, 0.02F, 0.025F});
        disc(0.86, {0.07F, 0.19F, 0.26F});
        disc(0.52, {0.008F, 0.008F, 0.008F});
        lay(picture,
            coverageOf(
                sight.pxFromBody(circle(eye.centreMm + eye.radiusMm * cv::Point2d(-0.2, -0.35), 0.13 * eye.radiusMm))),
            0.8F, light * 0.7F);
    }
}

void layBody(cv::Mat3f& picture, const Scene& scene, const Body& body, const Sight& sight) {
    const cv::Vec3f light = animalLight(scene);
    layFins(picture, body, sight, linearBgr(scene.animal.coat.srgb).mul(light) * 0.8F);
    layAnimal(picture, paintAnimal(scene, body, sight), light);
    layEyes(picture, body, sight, light);
}

}  // namespace

cv::Mat3f exposeScene(const Scene& scene, const Body& body, const Sight& sight) {
    const Grid grid = traceGrid(scene, sight.camera());
    const PlatePicture plate = drawPlate(scene.box, scene.animal, scene.card, scene.seed, scene.darkPlate, scene.stains);
    const std::vector<Actor> companions = companionsOf(scene);
    const cv::Mat1f shadow = shadowOf(scene, body, sight, companions);
    const PlatePainter painter(scene, grid, plate, shadow);
    cv::Mat3f picture(scene.sensor.heightPx, scene.sensor.widthPx);
    for (int y = 0; y < picture.rows; ++y) {
        for (int x = 0; x < picture.cols; ++x) {
            picture(y, x) = painter.at(x, y);
        }
    }
    if (scene.withoutAnimal) return picture;
    layBody(picture, scene, body, sight);
    for (const Actor& actor : companions) layBody(picture, actor.scene, actor.body, actor.sight);
    return picture;
}

}  // namespace render
