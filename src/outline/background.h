// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

#include <opencv2/core.hpp>

namespace ringrule {

/// Light of the empty plate over a reduced picture: a cubic in both coordinates.
struct Background {
    std::array<double, 10> coefficients{};
    cv::Size size;            ///< of the picture that it was fitted to
    double relativeSd = 0.0;  ///< spread of the plate's own light about it
    bool fitted = false;

    [[nodiscard]] double at(double x, double y) const;
};

/// The light over the plate where `usable` is not zero. Fitted to block means by least squares, again and again without
/// the blocks that lie clearly below (animals, shadows, print) or above (glare); the spread is judged from the bright
/// side, which animals do not reach.
[[nodiscard]] Background fitBackground(const cv::Mat1f& light, const cv::Mat1b& usable);

/// `light` divided by the background, 1 where the plate is empty; 0 where `usable` is zero has no meaning.
[[nodiscard]] cv::Mat1f dividedBy(const cv::Mat1f& light, const Background& background);

}  // namespace ringrule
