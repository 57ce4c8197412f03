// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/tone.h"

#include <cmath>

namespace ringrule {
namespace {

constexpr double kValueShare = 0.1;

Tone makeTone() {
    Tone tone;
    for (std::size_t i = 0; i < 256; ++i) {
        const double value = static_cast<double>(i) / 255.0;
        const double srgb = value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
        tone.lightOf[i] = static_cast<float>((1.0 - kValueShare) * srgb + kValueShare * value);
    }
    return tone;
}

}  // namespace

const Tone& photoTone() {
    static const Tone tone = makeTone();
    return tone;
}

}  // namespace ringrule
