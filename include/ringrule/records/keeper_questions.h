// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ringrule/records/store.h"

namespace ringrule {

/// An animal (or a tank, when its food is refused as a whole) that answers a question, and why in a few words.
struct KeeperAnswer {
    std::string code;
    std::string name;
    std::string why;
};

// Animals that died or left by `on` are never among the answers.

/// Who was not photographed in the last `everyDays` days, or never.
[[nodiscard]] std::vector<KeeperAnswer> whoIsDue(const Store& store, Date on, int everyDays = 30);

/// Who has no length that counts, by photo or by hand, in the last `days` days.
[[nodiscard]] std::vector<KeeperAnswer> whoIsUnmeasured(const Store& store, Date on, int days = 42);

/// Whose food was refused, and nothing taken, on `days` days running that reach up to the last day noted; a last day
/// more than a week before `on` says nothing of now.
[[nodiscard]] std::vector<KeeperAnswer> whoRefuses(const Store& store, Date on, int days = 3);

/// Who is of unknown sex at an age of `days` days or more (since arrival when the hatch date is not known).
[[nodiscard]] std::vector<KeeperAnswer> whoIsOfUnknownSex(const Store& store, Date on, int days = 183);

/// Who is to be looked at again by `on`: decisions whose day to look again has come, and on which nothing was decided
/// since. A tank's code is told as "tank CODE".
[[nodiscard]] std::vector<KeeperAnswer> whoIsToFollowUp(const Store& store, Date on);

}  // namespace ringrule
