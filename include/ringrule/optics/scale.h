// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <Eigen/Core>

#include "ringrule/geometry/point.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/optics/plate.h"
#include "ringrule/outcome.h"
#include "ringrule/remark.h"

namespace ringrule {

/// Millimetres on the animal's plane from pixels of one photo, through lens, window and water. Cheap to copy.
class Scale {
public:
    /// From the plate found in a photo of `imageWidthPx` × `imageHeightPx`. With `lens` and `media` the camera's pose
    /// is fitted to the marker corners by rays refracted exactly; without them the plate's homography (and, if media
    /// are known, the paraxial correction for depth) gives the scale, `remarks()` says so and the uncertainty grows by
    /// what the missing correction could be. Refuses with "scale-not-determined" when the fit does not hold.
    [[nodiscard]] static Outcome<Scale> fromPlate(const Box& box, const FoundPlate& plate, int imageWidthPx,
                                                  int imageHeightPx);

    [[nodiscard]] AnimalPoint animalFromPixel(PixelPoint pixel) const;
    [[nodiscard]] PlatePoint plateFromPixel(PixelPoint pixel) const;
    [[nodiscard]] PixelPoint pixelFromAnimal(AnimalPoint point) const;
    [[nodiscard]] PixelPoint pixelFromPlate(PlatePoint point) const;

    /// d(x_mm, y_mm) / d(x_px, y_px) on the animal's plane.
    [[nodiscard]] Eigen::Matrix2d animalFromPixelJacobian(PixelPoint pixel) const;
    /// Square root of the Jacobian's determinant: local mm per pixel.
    [[nodiscard]] double mmPerPx(PixelPoint pixel) const;

    /// Relative standard deviation of a length on the animal's plane: what differs from photo to photo (marker
    /// corners)…
    [[nodiscard]] double relativeSdRandom() const;
    /// … and what all photos of this box share (depth of the animal's plane, missing lens or media, plate flatness).
    [[nodiscard]] double relativeSdShared() const;

    [[nodiscard]] const std::vector<Remark>& remarks() const;

    /// Distance from entrance pupil to window as fitted, to compare with the box file's; absent without lens or media.
    [[nodiscard]] std::optional<double> cameraToWindowMm() const;
    /// Angle between the optical axis and the plate's normal; absent without lens.
    [[nodiscard]] std::optional<double> tiltDegrees() const;
    /// Root mean square distance of the marker corners from where the fit puts them.
    [[nodiscard]] double cornerRmsPx() const;

private:
    struct State;
    explicit Scale(std::shared_ptr<const State> state);
    std::shared_ptr<const State> state_;
};

}  // namespace ringrule
