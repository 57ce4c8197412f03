// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>

#include "judge/case_file.h"

namespace ringrule {

/// Whose animal was likely photographed under another's card.
struct LikelyCard {
    std::size_t whose = 0;    ///< the tankmate whose length the doubted measure fits
    bool swapped = false;     ///< its own measure of that session fits the doubted animal; else it has none
    double measuredMm = 0.0;  ///< under the doubted animal's card
    double expectedMm = 0.0;  ///< of the tankmate in that session, with the half-width of its 95 % interval
    double expectedU95 = 0.0;
    double otherMm = 0.0;  ///< measured under the tankmate's card, when swapped
};

/// The tankmate that a doubted length of `of` in the session of `on` fits, told by where each animal's last believed
/// length and the growth of the others since let it be. Named only when the pair explains each other: the two measures
/// of the session fit crosswise and the tankmate's own does not fit itself, or the tankmate has none in that session.
/// Nothing when no tankmate fits, or two do.
[[nodiscard]] std::optional<LikelyCard> likelyCard(const Casebook& book, std::size_t of, Date on);

}  // namespace ringrule
