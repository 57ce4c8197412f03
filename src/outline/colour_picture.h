// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include <opencv2/core.hpp>

#include "outline/background.h"
#include "outline/plate_region.h"
#include "outline/reduced.h"
#include "outline/tone.h"
#include "ringrule/imaging/photo.h"

namespace ringrule {

/// A picture in which an animal as light as the plate, but of another colour, is dark.
struct ColourPicture {
    cv::Mat grey;           ///< size of the photo; where nothing shows, and off the plate, as light as the plate
    Tone tone;              ///< its values are linear
    Reduced coarse;         ///< the same reduced, all over the plate
    Background background;  ///< as light as the plate everywhere, with the spread of the plate's own colour
};

/// The photo seen along the colour in which its animal differs from the plate. Light of each colour is divided by that
/// of the plate; what is left is projected on the animal's own colour, grey taken out, so that a shadow, which dims all
/// colours alike, does not show. Nothing when no coloured piece of `smallestPx` pixels of the reduced picture is found.
[[nodiscard]] std::optional<ColourPicture> colourPicture(const Photo& photo, const Reduced& coarse,
                                                         const PlateRegion& region, double smallestPx);

}  // namespace ringrule
