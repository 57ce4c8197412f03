// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <functional>

#include <opencv2/imgproc.hpp>

namespace ringrule::test {

/// A photo in which `body` gives the share (0 … 1) that is animal at a place; drawn by 8 × 8 samples a pixel in linear
/// light, blurred as a lens does, then bent by the sRGB curve (IEC 61966-2-1) as a camera does.
inline cv::Mat drawn(cv::Size size, double blurPx, double bodyLight, double plateLight,
                     const std::function<bool(double, double)>& body) {
    constexpr int kSub = 8;
    cv::Mat1f light(size);
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            int inside = 0;
            for (int k = 0; k < kSub * kSub; ++k) {
                const double dx = (k % kSub + 0.5) / kSub - 0.5;
                const double dy = (k / kSub + 0.5) / kSub - 0.5;
                if (body(x + dx, y + dy)) ++inside;
            }
            light(y, x) = static_cast<float>(plateLight + (bodyLight - plateLight) * inside / (kSub * kSub));
        }
    }
    cv::GaussianBlur(light, light, {}, blurPx);
    cv::Mat1b grey(size);
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            const double v = static_cast<double>(light(y, x));
            const double toned = v <= 0.0031308 ? 12.92 * v : 1.055 * std::pow(v, 1.0 / 2.4) - 0.055;
            grey(y, x) = cv::saturate_cast<unsigned char>(255.0 * toned);
        }
    }
    return grey;
}

}  // namespace ringrule::test
