// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <opencv2/core.hpp>

#include "outline/tone.h"

namespace ringrule {

/// A picture of the plate with animals darker than it, and how its values are read.
struct Picture {
    const cv::Mat& grey;
    const Tone& tone;      ///< tells animal and plate apart
    const Tone& edgeTone;  ///< places the edge between them
    bool paleBody = false;  ///< turned upside down: a dark eye looks like the plate, and the body darkens toward its rim
};

}  // namespace ringrule
