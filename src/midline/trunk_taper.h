// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

#include "midline/width_profile.h"
#include "ringrule/midline/midline.h"

namespace ringrule {

/// How a seahorse narrows from trunk to tail, a brood pouch left out.
struct TrunkTaper {
    std::vector<double> bodyWidthPx;  ///< at each station of the midline: without what bulges out of the taper
    double trunkEndStation = 0.0;     ///< where the trunk has become a tail, in stations; 0: not seen
    std::size_t pouchFrom = 0;        ///< stations of the pouch …
    std::size_t pouchTo = 0;          ///< … up to this one; equal when there is none
    [[nodiscard]] bool pouch() const { return pouchTo > pouchFrom; }
};

/// The taper behind the trunk's thickest station. A tail narrows ever more slowly: the lower convex hull of its widths
/// (monotone chain, Andrew 1979) bridges a pouch where one bulges. The trunk ends where the body is `endWidthPx` deep.
[[nodiscard]] TrunkTaper trunkTaper(const WidthProfile& profile, std::size_t thickest, double endWidthPx);

/// The midline through the body alone: where a pouch hangs on the belly side, the middle moves toward the back and the
/// half-widths are those of the taper.
[[nodiscard]] Midline withoutPouch(Midline midline, const TrunkTaper& taper, bool ventralOnLeft);

/// The pouch's own outline, between the body's belly line and the animal's outline; empty when there is none.
[[nodiscard]] std::vector<PixelPoint> pouchOutline(const Midline& withPouch, const TrunkTaper& taper,
                                                   bool ventralOnLeft);

}  // namespace ringrule
