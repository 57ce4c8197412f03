// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "ringrule/growth/fit.h"
#include "ringrule/growth/observation.h"
#include "ringrule/outcome.h"

namespace ringrule {

/// One member of a group and what was seen of it.
struct GroupMember {
    std::int64_t key = 0;  ///< whatever tells animals apart
    std::span<const Observation> observations;
};

/// Length against age of a group without one of its members.
struct ReferenceCurve {
    GrowthFit fit;  ///< chosen by AICc
    int animals = 0;
    double betweenAnimals = 0.0;  ///< standard deviation between animals of ln(length / curve); 0 when not told
    double withinAnimal = 0.0;    ///< the same from session to session of one animal

    /// A further animal's length at an age, 95 % of animals within u95: the curve with the spread between animals.
    [[nodiscard]] Estimate newAnimalAt(double ageDays) const;
};

/// The curve of every member but `without` (use a key of nobody for the whole group): an animal never belongs to what
/// it is compared with. Ages are `Observation::ageDays`. Repeat observations of one animal are not independent, so the
/// band of a new animal rests on the spread between animals, not on the residuals of all points. Refuses with
/// "too-few-animals" (none left) or as `chooseGrowth` does.
[[nodiscard]] Outcome<ReferenceCurve> referenceCurve(std::span<const GroupMember> group, std::int64_t without);

}  // namespace ringrule
