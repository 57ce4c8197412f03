// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/midline/landmarks.h"
#include "ringrule/optics/scale.h"

namespace ringrule {

/// The midline and the two sides of a body in millimetres on the animal's plane, station by station.
struct BodyInMm {
    std::vector<AnimalPoint> spine;
    std::vector<AnimalPoint> left;  ///< outline points on the chords across the midline …
    std::vector<AnimalPoint> right;
    std::vector<double> along;    ///< arc length from the snout
    std::vector<double> alongPx;  ///< the same in the photo
    std::vector<double> depth;    ///< chord across; 0 where no chord was drawn

    [[nodiscard]] double alongAt(double px) const;  ///< mm along the midline at an arc length in px
};

[[nodiscard]] BodyInMm bodyInMm(const Midline& midline, const Scale& scale);

/// Where a landmark lies along the midline, and how surely, in mm.
struct Place {
    double alongMm = 0.0;
    double sdMm = 0.0;
    double alongPx = 0.0;  ///< the same place in the photo
};

/// The place of a landmark; nothing when it is absent.
[[nodiscard]] std::optional<Place> placeOf(const BodyInMm& body, const Midline& midline,
                                           const std::optional<Landmark>& landmark, const Scale& scale);

}  // namespace ringrule
