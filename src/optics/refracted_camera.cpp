// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/refracted_camera.h"

#include <algorithm>
#include <cmath>

#include <Eigen/Geometry>

namespace ringrule {

Eigen::Vector2d planeFromRay(const Eigen::Vector2d& ray, const Eigen::Matrix3d& plateFromCamera,
                             const Eigen::Vector2d& footMm, const FlatLayers& layers) {
    const Eigen::Vector3d direction = plateFromCamera * Eigen::Vector3d(ray.x(), ray.y(), 1.0);
    const Eigen::Vector2d tangent = direction.head<2>() / direction.z();
    return footMm + tangent * layers.reducedDepthMm(tangent.squaredNorm());
}

Eigen::Vector2d RefractedCamera::planeFromPixel(PixelPoint pixel, const FlatLayers& layers) const {
    return planeFromRay(lens.rayFromPixel(pixel), plateFromCamera, footMm, layers);
}

PixelPoint RefractedCamera::pixelFromPlane(const Eigen::Vector2d& pointMm, const FlatLayers& layers) const {
    const Eigen::Vector2d sideways = pointMm - footMm;
    const double tangent = layers.tangentFromSideways(sideways.norm());
    // The reduced depth at this tangent turns sideways distance into slopes without dividing by a distance of zero.
    const Eigen::Vector2d slopes = sideways / layers.reducedDepthMm(tangent * tangent);
    const Eigen::Vector3d seen = plateFromCamera.transpose() * Eigen::Vector3d(slopes.x(), slopes.y(), 1.0);
    return lens.pixelFromRay(seen.head<2>() / seen.z());
}

Eigen::Matrix2d RefractedCamera::planeFromPixelJacobian(PixelPoint pixel, const FlatLayers& layers) const {
    const auto [ray, rayFromPixel] = lens.rayWithJacobian(pixel);
    const Eigen::Vector3d direction = plateFromCamera * Eigen::Vector3d(ray.x(), ray.y(), 1.0);
    const Eigen::Vector2d tangent = direction.head<2>() / direction.z();
    const Eigen::Matrix2d tangentFromRay =
        (plateFromCamera.topLeftCorner<2, 2>() - tangent * plateFromCamera.block<1, 2>(2, 0)) / direction.z();
    const double square = tangent.squaredNorm();
    const Eigen::Matrix2d planeFromTangent = layers.reducedDepthMm(square) * Eigen::Matrix2d::Identity() +
                                             2.0 * layers.reducedDepthSlopeMm(square) * tangent * tangent.transpose();
    return planeFromTangent * tangentFromRay * rayFromPixel;
}

double RefractedCamera::tiltRadians() const {
    return std::acos(std::clamp(plateFromCamera(2, 2), -1.0, 1.0));
}

}  // namespace ringrule
