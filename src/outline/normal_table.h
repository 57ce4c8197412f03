// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>

namespace ringrule {

/// Normal distribution and density by look-up, to 1e-5: the fits ask for them a million times a photo.
class NormalTable {
public:
    NormalTable();

    struct Both {
        double share, density;
    };
    [[nodiscard]] Both at(double x) const {
        const double place = (std::clamp(x, -kReach, kReach) + kReach) * (kHalf / kReach);
        const auto k = std::min(static_cast<std::size_t>(place), share_.size() - 2);
        const double t = place - static_cast<double>(k);
        return {share_[k] + t * (share_[k + 1] - share_[k]), density_[k] + t * (density_[k + 1] - density_[k])};
    }

private:
    static constexpr int kHalf = 512;
    static constexpr double kReach = 5.0;
    std::array<double, 2 * kHalf + 1> share_{};
    std::array<double, 2 * kHalf + 1> density_{};
};

[[nodiscard]] const NormalTable& normalTable();

}  // namespace ringrule
