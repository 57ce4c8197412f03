// SPDX-License-Identifier: GPL-3.0-or-later
// Which place of the animal's skin each pixel shows.
#pragma once

#include "sight.h"

namespace render {

struct SkinMap {
    cv::Rect bounds;
    cv::Mat3f place;   // along (mm), across (−1 belly … 1 back), share of the normal to the light
    cv::Mat1b region;  // 255 where no part was drawn, else Region
};

// Draws the parts in order as strips a little wider than the outline.
SkinMap mapSkin(const Body& body, const Sight& sight, cv::Rect bounds, cv::Point2d light);

}  // namespace render
