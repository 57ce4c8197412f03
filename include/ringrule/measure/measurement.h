// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ringrule/midline/landmarks.h"
#include "ringrule/outcome.h"
#include "ringrule/remark.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// What one photo says of one animal. A measure that could not be taken is not `known()`, and a remark or `refusal` says
/// why. Lengths in mm on the animal's plane, ratios without unit, belly hollow in % of trunk depth.
struct Measurement {
    Shape shape = Shape::Unknown;
    View view = View::Side;
    std::string protocol;  ///< "dawson-1985" (pipefish, fish), "lourie-1999" (seahorse)
    Estimate standardLengthMm;
    Estimate heightMm;
    Estimate trunkWidthMm;
    Estimate headLengthMm;
    Estimate trunkLengthMm;
    Estimate tailLengthMm;
    Estimate trunkDepthMm;
    Estimate girthMm;
    Estimate girthRatio;
    Estimate depthRatio;
    Estimate bellyHollowPercent;
    std::vector<Remark> remarks;
    std::optional<Refusal> refusal;  ///< set when the view's main measure could not be taken

    /// Whether the view's main measure (standard length; trunk width from front or above) is there.
    [[nodiscard]] bool measured() const;
};

}  // namespace ringrule
