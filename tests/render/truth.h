// SPDX-License-Identifier: GPL-3.0-or-later
// What a perfect measurer would report about a scene, from its geometry and never its pixels.
#pragma once

#include "sight.h"

#include <nlohmann/json_fwd.hpp>

namespace render {

struct Truth {
    double standardLengthMm = 0.0, headLengthMm = 0.0, trunkLengthMm = 0.0, tailLengthMm = 0.0;
    std::optional<double> heightMm;  // seahorse
    double trunkDepthMm = 0.0, trunkWidthMm = 0.0, girthMm = 0.0;
    // Deepest deviation of the ventral outline from its chord, % of the depth; side view only.
    std::optional<double> bellyHollowPercent;
    // The same after the midline is made straight: free of the body's bend.
    std::optional<double> bellyHollowStraightenedPercent;
    Landmarks bodyLandmarks;  // body frame
    std::vector<cv::Point2d> outlineBodyMm, midlineBodyMm;
};

// Perimeter of an ellipse of these two diameters (arithmetic-geometric mean, exact).
double ellipsePerimeter(double diameterA, double diameterB);

// `outlinePoints` is the number of points of the outline, evenly spread along it.
Truth truthOf(const Scene& scene, const Body& body, int outlinePoints = 400);

// One truth file ("ringrule-truth/1").
nlohmann::ordered_json truthJson(const Scene& scene, const Truth& truth, const Sight& sight);

}  // namespace render
