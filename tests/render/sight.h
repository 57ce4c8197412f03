// SPDX-License-Identifier: GPL-3.0-or-later
// The animal hung in front of the plate and looked at through the camera.
#pragma once

#include "body.h"
#include "optics.h"

namespace render {

class Sight {
public:
    Sight(const Scene& scene, const Body& body);

    // Plate point and height (z) at which a point of the body frame hangs.
    cv::Vec3d plateFromBody(cv::Point2d bodyMm) const;
    cv::Point2d pxFromBody(cv::Point2d bodyMm) const;
    // Direction of a body-frame vector as seen on the plate.
    cv::Point2d turned(cv::Point2d bodyDirection) const;
    std::vector<cv::Point2d> pxFromBody(const std::vector<cv::Point2d>& bodyMm) const;

    const Camera& camera() const { return camera_; }

private:
    Camera camera_;
    Placement placement_;
    cv::Point2d middle_;
    double flip_, pitchCos_, pitchSin_, turnCos_, turnSin_;
};

// Middle of the bounding rectangle of all parts, in the body frame.
cv::Point2d middleOf(const Body& body);

double waterIndexOf(const Scene& scene);

}  // namespace render
