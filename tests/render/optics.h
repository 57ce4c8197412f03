// SPDX-License-Identifier: GPL-3.0-or-later
// The way of light from a pixel through lens, air, window and water, forward and back.
#pragma once

#include "scene.h"

namespace render {

constexpr double kPi = 3.14159265358979323846;

// Angle in radians behind a flat interface (Snell): asin(from · sin(angle) / to).
double refractedAngle(double angle, double indexFrom, double indexTo);

// Index of sea water at 589.3 nm (Quan & Fry 1995, Appl. Opt. 34:3477).
double seaWaterIndex(double salinityPpt, double temperatureC);

// Normalised image coordinates after and before the lens's distortion (OpenCV's model).
cv::Point2d distort(const Lens& lens, cv::Point2d ideal);
cv::Point2d undistort(const Lens& lens, cv::Point2d distorted);

// The same lens for a photo of another size: pixel centres at whole numbers.
Lens scaledLens(const Lens& lens, int widthPx, int heightPx);

// A camera in front of a flat window that is parallel to the plate.
class Camera {
public:
    Camera(const Lens& lens, const Media& media, double waterIndex, const CameraPose& pose);

    // Plate point (mm) that the pixel sees at that height in front of the plate.
    cv::Point2d plateFromPx(cv::Point2d px, double heightMm) const;
    // Pixel in which a point in front of the plate appears.
    cv::Point2d pxFromPlate(cv::Point2d plateMm, double heightMm) const;

    const Lens& lens() const { return lens_; }
    // Camera's place in the plate frame; z is the height in front of the plate.
    cv::Vec3d centreMm() const { return {centre_.x, centre_.y, cameraHeightMm_}; }
    // Columns: the camera's x, y and viewing axis in (x right, y down, z into the plate).
    const cv::Matx33d& plateFromCamera() const { return plateFromCamera_; }

private:
    // Distance that a ray of this transverse direction cosine travels sideways to the height.
    double sideways(double cosine, double heightMm) const;
    double sidewaysSlope(double cosine, double heightMm) const;

    Lens lens_;
    Media media_;
    double waterIndex_;
    double cameraHeightMm_;
    cv::Point2d centre_;
    cv::Matx33d plateFromCamera_;
};

}  // namespace render
