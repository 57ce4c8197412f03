// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "ringrule/measure/measurement.h"

namespace ringrule {

/// One measure of a `Measurement` under the names it has outside the program.
struct MeasureColumn {
    std::string_view key;     ///< in the JSON of `ringrule measure`
    std::string_view column;  ///< in the collection and in exported tables
    Estimate Measurement::*member;
};

/// Every measure, in the order in which it is written out.
inline constexpr std::array<MeasureColumn, 11> kMeasureColumns{{
    {"standard_length_mm", "standard_length_mm", &Measurement::standardLengthMm},
    {"height_mm", "height_mm", &Measurement::heightMm},
    {"trunk_width_mm", "trunk_width_mm", &Measurement::trunkWidthMm},
    {"head_length_mm", "head_length_mm", &Measurement::headLengthMm},
    {"trunk_length_mm", "trunk_length_mm", &Measurement::trunkLengthMm},
    {"tail_length_mm", "tail_length_mm", &Measurement::tailLengthMm},
    {"trunk_depth_mm", "trunk_depth_mm", &Measurement::trunkDepthMm},
    {"girth_mm", "girth_mm", &Measurement::girthMm},
    {"girth_ratio", "girth_ratio", &Measurement::girthRatio},
    {"depth_ratio", "depth_ratio", &Measurement::depthRatio},
    {"belly_hollow", "belly_hollow_percent", &Measurement::bellyHollowPercent},
}};

/// A landmark under the name it has outside the program ("snout_tip" …).
struct LandmarkColumn {
    std::string_view key;
    std::optional<Landmark> Landmarks::*member;
};

inline constexpr std::array<LandmarkColumn, 5> kLandmarkColumns{{
    {"snout_tip", &Landmarks::snoutTip},
    {"coronet", &Landmarks::coronet},
    {"head_end", &Landmarks::headEnd},
    {"trunk_end", &Landmarks::trunkEnd},
    {"tail_end", &Landmarks::tailEnd},
}};

}  // namespace ringrule
