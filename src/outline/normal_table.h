// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>

namespace ringrule {

/// Normal distribution and density by look-up of the nearest of 4096 places, to 6e-4 of a share: less than a hundredth of
/// a grey level of noise, and the fits ask for them a million times a photo.
class NormalTable {
public:
    NormalTable();

    struct Both {
        float share, density;
    };
    [[nodiscard]] const Both& at(double x) const {
        const double place = std::clamp(x * kPlacesPerSigma + kMiddle, 0.0, kCount - 1.0);
        return entries_[static_cast<std::size_t>(place)];
    }

private:
    static constexpr int kCount = 4096;
    static constexpr double kReach = 5.0;
    static constexpr double kPlacesPerSigma = (kCount - 1) / (2.0 * kReach);
    static constexpr double kMiddle = 0.5 * (kCount - 1) + 0.5;  ///< truncation then rounds
    std::array<Both, kCount> entries_{};
};

[[nodiscard]] const NormalTable& normalTable();

}  // namespace ringrule
