// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics.h"

#include <cmath>

namespace render {

namespace {

cv::Matx33d rotationOf(const CameraPose& pose) {
    const double x = pose.tiltXDeg * kPi / 180.0;
    const double y = pose.tiltYDeg * kPi / 180.0;
    const double z = pose.rollDeg * kPi / 180.0;
    const cv::Matx33d aboutX(1, 0, 0, 0, std::cos(x), -std::sin(x), 0, std::sin(x), std::cos(x));
    const cv::Matx33d aboutY(std::cos(y), 0, std::sin(y), 0, 1, 0, -std::sin(y), 0, std::cos(y));
    const cv::Matx33d aboutZ(std::cos(z), -std::sin(z), 0, std::sin(z), std::cos(z), 0, 0, 0, 1);
    return aboutZ * aboutY * aboutX;
}

}  // namespace

double refractedAngle(double angle, double indexFrom, double indexTo) {
    return std::asin(indexFrom * std::sin(angle) / indexTo);
}

double seaWaterIndex(double salinityPpt, double temperatureC) {
    const double s = salinityPpt;
    const double t = temperatureC;
    const double nm = 589.3;
    return 1.31405 + (1.779e-4 - 1.05e-6 * t + 1.6e-8 * t * t) * s - 2.02e-6 * t * t +
           (15.868 + 0.01155 * s - 0.00423 * t) / nm - 4382.0 / (nm * nm) + 1.1455e6 / (nm * nm * nm);
}

cv::Point2d distort(const Lens& lens, cv::Point2d ideal) {
    const auto& [k1, k2, p1, p2, k3] = lens.distortion;
    const double x = ideal.x;
    const double y = ideal.y;
    const double r2 = x * x + y * y;
    const double radial = 1.0 + r2 * (k1 + r2 * (k2 + r2 * k3));
    return {x * radial + 2.0 * p1 * x * y + p2 * (r2 + 2.0 * x * x),
            y * radial + p1 * (r2 + 2.0 * y * y) + 2.0 * p2 * x * y};
}

cv::Point2d undistort(const Lens& lens, cv::Point2d distorted) {
    cv::Point2d ideal = distorted;
    for (int round = 0; round < 50; ++round) {
        const cv::Point2d miss = distorted - distort(lens, ideal);
        ideal += miss;
        if (miss.dot(miss) < 1e-26) {
            break;
        }
    }
    return ideal;
}

Lens scaledLens(const Lens& lens, int widthPx, int heightPx) {
    const double sx = static_cast<double>(widthPx) / lens.widthPx;
    const double sy = static_cast<double>(heightPx) / lens.heightPx;
    Lens scaled = lens;
    scaled.fxPx *= sx;
    scaled.fyPx *= sy;
    scaled.cxPx = (lens.cxPx + 0.5) * sx - 0.5;
    scaled.cyPx = (lens.cyPx + 0.5) * sy - 0.5;
    scaled.widthPx = widthPx;
    scaled.heightPx = heightPx;
    return scaled;
}

Camera::Camera(const Lens& lens, const Media& media, double waterIndex, const CameraPose& pose)
    : lens_(lens),
      media_(media),
      waterIndex_(waterIndex),
      cameraHeightMm_(media.cameraToWindowMm + media.windowThicknessMm + media.waterToPlateMm),
      plateFromCamera_(rotationOf(pose)) {
    const cv::Vec3d axis = plateFromCamera_ * cv::Vec3d(0, 0, 1);
    const cv::Point2d lateral(axis[0], axis[1]);
    const double cosine = std::hypot(lateral.x, lateral.y);
    centre_ = pose.aimMm;
    if (cosine > 0.0) {
        centre_ -= lateral * (sideways(cosine, 0.0) / cosine);
    }
}

double Camera::sideways(double cosine, double heightMm) const {
    const auto slant = [cosine](double index) { return cosine / std::sqrt(index * index - cosine * cosine); };
    return media_.cameraToWindowMm * slant(1.0) + media_.windowThicknessMm * slant(media_.windowIndex) +
           (media_.waterToPlateMm - heightMm) * slant(waterIndex_);
}

double Camera::sidewaysSlope(double cosine, double heightMm) const {
    const auto slope = [cosine](double index) {
        const double square = index * index - cosine * cosine;
        return index * index / (square * std::sqrt(square));
    };
    return media_.cameraToWindowMm * slope(1.0) + media_.windowThicknessMm * slope(media_.windowIndex) +
           (media_.waterToPlateMm - heightMm) * slope(waterIndex_);
}

cv::Point2d Camera::plateFromPx(cv::Point2d px, double heightMm) const {
    const cv::Point2d ideal = undistort(lens_, {(px.x - lens_.cxPx) / lens_.fxPx, (px.y - lens_.cyPx) / lens_.fyPx});
    const cv::Vec3d ray = cv::normalize(plateFromCamera_ * cv::Vec3d(ideal.x, ideal.y, 1.0));
    const double cosine = std::hypot(ray[0], ray[1]);
    const double perCosine = cosine > 1e-12 ? sideways(cosine, heightMm) / cosine : 0.0;
    return centre_ + cv::Point2d(ray[0], ray[1]) * perCosine;
}

cv::Point2d Camera::pxFromPlate(cv::Point2d plateMm, double heightMm) const {
    const cv::Point2d offset = plateMm - centre_;
    const double reach = std::hypot(offset.x, offset.y);
    double cosine = reach / std::hypot(reach, cameraHeightMm_ - heightMm);
    for (int round = 0; round < 30 && reach > 0.0; ++round) {
        const double step = (sideways(cosine, heightMm) - reach) / sidewaysSlope(cosine, heightMm);
        cosine = std::clamp(cosine - step, 0.0, 0.999999);
        if (std::abs(step) < 1e-15) {
            break;
        }
    }
    const cv::Point2d lateral = reach > 0.0 ? offset * (cosine / reach) : cv::Point2d();
    const cv::Vec3d ray(lateral.x, lateral.y, std::sqrt(1.0 - cosine * cosine));
    const cv::Vec3d seen = plateFromCamera_.t() * ray;
    const cv::Point2d bent = distort(lens_, {seen[0] / seen[2], seen[1] / seen[2]});
    return {bent.x * lens_.fxPx + lens_.cxPx, bent.y * lens_.fyPx + lens_.cyPx};
}

}  // namespace render
