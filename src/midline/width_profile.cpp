// SPDX-License-Identifier: GPL-3.0-or-later
#include "midline/width_profile.h"

#include <algorithm>
#include <cmath>

namespace ringrule {

double WidthProfile::at(double share) const {
    const double place = std::clamp(share, 0.0, 1.0) * static_cast<double>(widthPx.size() - 1);
    const auto i = std::min(static_cast<std::size_t>(place), widthPx.size() - 2);
    const double t = place - static_cast<double>(i);
    return widthPx[i] * (1.0 - t) + widthPx[i + 1] * t;
}

double WidthProfile::mean(double fromShare, double toShare) const {
    double sum = 0.0;
    for (int i = 0; i <= 20; ++i) sum += at(fromShare + (toShare - fromShare) * i / 20.0);
    return sum / 21.0;
}

WidthProfile widthProfile(const Midline& midline) {
    WidthProfile profile;
    profile.lengthPx = midline.lengthPx();
    const auto count = std::ssize(midline.spinePx);
    profile.stepPx = profile.lengthPx / static_cast<double>(count - 1);
    for (std::ptrdiff_t i = 0; i < count; ++i) {
        double sum = 0.0;
        double weights = 0.0;
        for (std::ptrdiff_t k = std::max<std::ptrdiff_t>(0, i - 1); k <= std::min(count - 1, i + 1); ++k) {
            const auto j = static_cast<std::size_t>(k);
            const double weight = k == i ? 2.0 : 1.0;
            sum += weight * (midline.leftHalfWidthPx[j] + midline.rightHalfWidthPx[j]);
            weights += weight;
        }
        profile.widthPx.push_back(sum / weights);
    }
    std::vector<double> sorted = profile.widthPx;
    const auto high = sorted.begin() + static_cast<std::ptrdiff_t>(0.98 * static_cast<double>(count - 1));
    std::nth_element(sorted.begin(), high, sorted.end());
    profile.greatestPx = *high;
    return profile;
}

}  // namespace ringrule
