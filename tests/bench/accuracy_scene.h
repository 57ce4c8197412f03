// SPDX-License-Identifier: GPL-3.0-or-later
// The scenes of the accuracy benchmark: what is varied, and how far.
#pragma once

#include <cstdint>

#include "scene.h"

namespace bench {

/// Where the animal truly is against what the box file says.
enum class Stand {
    Stated,  ///< in the stated plane, parallel to the plate
    Loose    ///< depth drawn from the stated tolerance, pitch from N(0, 4°)
};

/// What stands before what.
enum class Ground {
    Usual,       ///< any coat before a white plate
    PaleOnDark,  ///< pale coats before a dark plate with white patches round its markers
    WhiteOnPale  ///< coats nearly as pale as the white plate behind them
};

struct AccuracyScene {
    render::Scene scene;
    bool lensTold = true;  ///< whether the box file that the software gets names the lens
    bool secondOfPair = false;
};

/// The scene of a seed. Of five seeds in a row four are side views; the fifth is the second view (from above, or
/// head-on) of the fourth's animal in the same set-up.
AccuracyScene accuracyScene(std::uint64_t seed, Stand stand, Ground ground = Ground::Usual);

/// The box as the software is told it.
render::Box boxTold(const AccuracyScene& accuracyScene);

}  // namespace bench
