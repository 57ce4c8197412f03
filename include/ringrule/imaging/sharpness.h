// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>

namespace ringrule {

/// Standard deviation, in pixels, of the blur of a step edge from samples of light across it, `stepPx` apart. For a
/// step blurred by a Gaussian the light spilt beyond the edge is √(2/π) sigma times the step, which uses every sample
/// and no derivative; the pixel's own width is part of the result (0.29 px for a perfect lens). Within 6 % when samples
/// lie no farther apart than 0.8 sigma. Nothing when the samples do not show one step that stands out of their scatter.
[[nodiscard]] std::optional<double> edgeSigmaPx(std::span<const float> light, double stepPx);

}  // namespace ringrule
