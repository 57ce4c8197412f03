// SPDX-License-Identifier: GPL-3.0-or-later
#include "skin.h"

#include "random.h"
#include "skin_map.h"

#include <algorithm>
#include <cmath>

namespace render {

namespace {

double corner(std::int64_t x, std::int64_t y, std::uint64_t seed) {
    Random random(seed ^ (static_cast<std::uint64_t>(x) * 0x8DA6B343ULL) ^
                  (static_cast<std::uint64_t>(y) * 0xD8163841ULL));
    return 2.0 * random.unit() - 1.0;
}

double fade(double t) {
    return t * t * (3.0 - 2.0 * t);
}

double ramp(double low, double high, double place) {
    return fade(std::clamp((place - low) / (high - low), 0.0, 1.0));
}

double bump(double distance, double width) {
    return std::exp(-0.5 * distance * distance / (width * width));
}

struct Skin {
    const Scene& scene;
    const Body& body;
    cv::Vec3f base, pale;
    double ringMm;
    std::uint64_t seed;

    // Dark lines between bony rings, broad saddles, lengthwise ridges.
    double rings(double along, double across) const {
        if (along < body.trunkStartMm) {
            return 0.0;
        }
        const double intoTail = std::max(0.0, along - body.tailStartMm);
        const double place = (along - body.trunkStartMm) / ringMm + 0.12 * intoTail / ringMm;
        const double phase = place - std::floor(place) - 0.5;
        const double line = -bump(phase, 0.09) * (0.6 + 0.4 * std::abs(across));
        const double saddle = std::sin(2.0 * kPi * place / 4.3 + 0.8 * smoothNoise(place * 0.3, 3.0, seed));
        const double ridge = 0.5 * bump(std::abs(across) - 0.55, 0.06) - 0.35 * bump(std::abs(across) - 0.45, 0.05);
        return scene.animal.coat.banding * (0.9 * line + 0.7 * saddle + ridge);
    }

    double blotches(double along, double across) const {
        const double unit = std::max(0.4, 0.35 * scene.animal.trunkDepthMm);
        const double y = across * 1.6;
        const double coarse = smoothNoise(along / unit, y, seed + 1);
        const double fine = smoothNoise(along / (0.28 * unit), 3.0 * y, seed + 2);
        const double grain = smoothNoise(along / (0.10 * unit), 8.0 * y, seed + 3);
        return scene.animal.coat.mottling * (0.55 * coarse + 0.35 * fine + 0.25 * grain);
    }

    double gillLine(double along, double across) const {
        if (body.gillMm < 0.0) {
            return 0.0;
        }
        const double edge = body.gillMm * (1.0 - 0.045 * across * across);
        return -0.42 * bump(along - edge, 0.008 * body.gillMm) +
               0.14 * bump(along - 0.90 * body.gillMm, 0.05 * body.gillMm) * bump(across + 0.1, 0.5);
    }

    cv::Vec3f at(const cv::Vec3f& place, Region region) const {
        const double along = place[0];
        const double across = place[1];
        double tone = 1.0 + blotches(along, across + 7.0 * static_cast<int>(region));
        if (region == Region::Trunk) {
            tone += rings(along, across) + gillLine(along, across);
        }
        const double bellyShare = region == Region::Pouch ? 0.8 : ramp(0.15, -0.85, across);
        const float pales =
            static_cast<float>(scene.view == View::Side ? scene.animal.coat.paleBelly * bellyShare : 0.0);
        const cv::Vec3f colour = base * (1.0F - pales) + pale * pales;
        // A round body under light from above and in front.
        const double front = std::sqrt(std::max(0.0, 1.0 - across * across));
        const double shade = 0.50 + 0.40 * front + 0.26 * place[2];
        const double gloss =
            0.03 * bump(place[2] - 0.42, 0.10) * (1.0 + 0.8 * smoothNoise(along * 2.1, across, seed + 4));
        const float factor = static_cast<float>(std::max(0.15, tone) * shade);
        const float shine = static_cast<float>(gloss);
        return colour * factor + cv::Vec3f(shine, shine, shine);
    }
};

}  // namespace

double smoothNoise(double x, double y, std::uint64_t seed) {
    const double x0 = std::floor(x);
    const double y0 = std::floor(y);
    const double tx = fade(x - x0);
    const double ty = fade(y - y0);
    const auto ix = static_cast<std::int64_t>(x0);
    const auto iy = static_cast<std::int64_t>(y0);
    const double top = corner(ix, iy, seed) * (1.0 - tx) + corner(ix + 1, iy, seed) * tx;
    const double bottom = corner(ix, iy + 1, seed) * (1.0 - tx) + corner(ix + 1, iy + 1, seed) * tx;
    return top * (1.0 - ty) + bottom * ty;
}

cv::Vec3f linearBgr(cv::Vec3d srgb) {
    const auto linear = [](double value) {
        const double v = value / 255.0;
        return static_cast<float>(v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4));
    };
    return {linear(srgb[2]), linear(srgb[1]), linear(srgb[0])};
}

AnimalPicture paintAnimal(const Scene& scene, const Body& body, const Sight& sight) {
    AnimalPicture picture;
    for (const Part& part : body.parts) {
        picture.coverage = united(picture.coverage, coverageOf(sight.pxFromBody(outlineOf(part))));
    }
    const SkinMap map = mapSkin(body, sight, picture.coverage.bounds, {-0.25, -0.97});
    const double rings = scene.animal.shape == Shape::Pipefish ? 18.0 : 11.0;
    const cv::Vec3f base = linearBgr(scene.animal.coat.srgb);
    const Skin skin{scene,
                    body,
                    base,
                    base * 0.35F + cv::Vec3f(0.22F, 0.30F, 0.34F),
                    body.trunkLengthMm / rings,
                    seedOf(scene.seed, 11)};
    picture.reflected = cv::Mat3f(picture.coverage.bounds.size(), base * 0.6F);
    for (int row = 0; row < map.region.rows; ++row) {
        for (int column = 0; column < map.region.cols; ++column) {
            if (picture.coverage.share(row, column) > 0.0F && map.region(row, column) != 255) {
                picture.reflected(row, column) =
                    skin.at(map.place(row, column), static_cast<Region>(map.region(row, column)));
            }
        }
    }
    return picture;
}

}  // namespace render
