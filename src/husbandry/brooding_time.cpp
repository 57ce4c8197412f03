// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/husbandry/brooding_time.h"

#include <algorithm>
#include <array>
#include <utility>

namespace ringrule {
namespace {

using Known = std::pair<std::string_view, BroodingTime>;

constexpr std::array kKnown{
    // 17.33 ± 2.94 days: two standard deviations to either side.
    Known{"Hippocampus erectus", {11, 23, "Lin & Lin 2008, Aquaculture 277:287-292"}},
    Known{"Hippocampus reidi", {12, 17, "about two weeks (FishBase)"}},
    Known{"Syngnathus typhle", {24, 32, "about four weeks (species accounts)"}},
    Known{"Syngnathus scovelli", {12, 21, "Smithsonian Marine Station, IRL field guide"}},
};

constexpr BroodingTime kUsual{14, 28, "common practice, two to four weeks"};

}  // namespace

BroodingTime broodingTime(std::string_view species) {
    const auto known =
        std::find_if(kKnown.begin(), kKnown.end(), [species](const Known& each) { return each.first == species; });
    return known == kKnown.end() ? kUsual : known->second;
}

}  // namespace ringrule
