// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "ringrule/optics/box_check.h"
#include "ringrule/optics/box_history.h"

namespace ringrule {

struct BoxCheckOptions {
    std::optional<double> rodMm;  ///< length of a dark rod on the animal's plane; none: the plate alone
    RodShape rodShape = RodShape::Round;
};

/// What one photo says of a box. Without `plate`, `refusal` says why; with a rod asked for, `rod` or `refusal`.
struct BoxCheck {
    std::optional<PlateCheck> plate;
    std::optional<RodCheck> rod;
    std::optional<Refusal> refusal;
    std::string takenAt{};  ///< of the photo, ISO 8601; empty when it does not say
    std::string photoHash{};
    CameraSeen camera{};

    /// Whether all that was asked for was told and is as the box file says.
    [[nodiscard]] bool holds() const;
};

/// Checks a box by one photo. Throws `Error(BadPhoto)`.
[[nodiscard]] BoxCheck checkBox(const std::filesystem::path& photo, const Box& box,
                                const BoxCheckOptions& options = {});

}  // namespace ringrule
