// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <functional>

#include <opencv2/imgproc.hpp>

namespace ringrule::test {

/// A photo in which `lightOf` gives the light at a place; drawn by 8 × 8 samples a pixel, blurred as a lens does, then
/// bent by the sRGB curve (IEC 61966-2-1) as a camera does.
inline cv::Mat drawn(cv::Size size, double blurPx, const std::function<double(double, double)>& lightOf) {
    constexpr int kSub = 8;
    cv::Mat1f light(size);
    for (int y = 0; y < size.height; ++y) {
        for (int x = 0; x < size.width; ++x) {
            double sum = 0.0;
            for (int k = 0; k < kSub * kSub; ++k) {
                const double dx = (k % kSub + 0.5) / kSub - 0.5;
                const double dy = (k / kSub + 0.5) / kSub - 0.5;
                sum += lightOf(x + dx, y + dy);
            }
            light(y, x) = static_cast<float>(sum / (kSub * kSub));
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

/// The same of a body, where `body` says so, before an even plate.
inline cv::Mat drawn(cv::Size size, double blurPx, double bodyLight, double plateLight,
                     const std::function<bool(double, double)>& body) {
    return drawn(size, blurPx, [&](double x, double y) { return body(x, y) ? bodyLight : plateLight; });
}

}  // namespace ringrule::test
