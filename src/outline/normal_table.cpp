// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/normal_table.h"

#include <cmath>

namespace ringrule {

NormalTable::NormalTable() {
    for (std::size_t k = 0; k < entries_.size(); ++k) {
        const double x = (static_cast<double>(k) + 0.5 - kMiddle) / kPlacesPerSigma;
        entries_[k].share = static_cast<float>(0.5 * std::erfc(-x / std::sqrt(2.0)));
        entries_[k].density = static_cast<float>(std::exp(-0.5 * x * x) / std::sqrt(2.0 * M_PI));
    }
}

const NormalTable& normalTable() {
    static const NormalTable table;
    return table;
}

}  // namespace ringrule
