// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/normal_table.h"

#include <cmath>

namespace ringrule {

NormalTable::NormalTable() {
    for (int i = -kHalf; i <= kHalf; ++i) {
        const double x = kReach * i / kHalf;
        const auto k = static_cast<std::size_t>(i + kHalf);
        share_[k] = 0.5 * std::erfc(-x / std::sqrt(2.0));
        density_[k] = std::exp(-0.5 * x * x) / std::sqrt(2.0 * M_PI);
    }
}

const NormalTable& normalTable() {
    static const NormalTable table;
    return table;
}

}  // namespace ringrule
