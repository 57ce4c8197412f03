// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_options.h"

namespace ringrule {

/// The tank an animal is in on a day; nothing before its first stay, between stays and after it left.
[[nodiscard]] std::optional<TankId> tankOn(const AnimalHistory& animal, Date on);

/// Whether an animal has left every tank by a day. An animal without any stay on record has not.
[[nodiscard]] bool hasLeft(const AnimalHistory& animal, Date on);

/// Age in days on a day, when the hatch date is known.
[[nodiscard]] std::optional<double> ageOn(const AnimalHistory& animal, Date on);

/// Whether two animals may be compared on girth: not when both sexes are known, differ, and count at that age.
[[nodiscard]] bool likeSex(const AnimalHistory& one, const AnimalHistory& other, Date on, const GroupOptions& options);

/// Whether two animals that share a tank on a day are tankmates: of the same species and of like age.
[[nodiscard]] bool areTankmates(const AnimalHistory& one, const AnimalHistory& other, Date on,
                                const GroupOptions& options = {});

/// Indices of the animals in the same tank on that day, of the same species and of like age; never the animal itself.
[[nodiscard]] std::vector<std::size_t> tankmatesOf(std::span<const AnimalHistory> animals, std::size_t of, Date on,
                                                   const GroupOptions& options = {});

}  // namespace ringrule
