// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/imaging/tone.h"

#include <cmath>
#include <cstddef>

namespace ringrule {

const std::array<float, 256>& lightFromCode() {
    static const std::array<float, 256> table = [] {
        std::array<float, 256> light{};
        for (std::size_t code = 0; code < light.size(); ++code) {
            const double v = static_cast<double>(code) / 255.0;
            light[code] = static_cast<float>(v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4));
        }
        return light;
    }();
    return table;
}

}  // namespace ringrule
