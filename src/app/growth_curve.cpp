// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/growth_curve.h"

#include <QCoreApplication>

#include "app/core_text.h"
#include "ringrule/growth/group_growth.h"

namespace ringrule {
namespace {

constexpr int kSteps = 60;
constexpr std::int64_t kNobody = -1;

}  // namespace

GrowthCurve growthCurve(const std::vector<AnimalHistory>& animals) {
    GrowthCurve curve;
    if (animals.size() > kMostFitted) {
        curve.refusal =
            QCoreApplication::translate("GrowthCurve", "A curve is fitted to %1 animals at most: choose a tank.")
                .arg(kMostFitted)
                .toStdString();
        return curve;
    }
    std::vector<GroupMember> members;
    for (const AnimalHistory& animal : animals) members.push_back({animal.animal.id.value, animal.observations});
    const auto lengths = lengthsOf(members, kNobody);
    const auto growth = lengths ? groupGrowth(lengths.value()) : Outcome<GroupGrowth>(lengths.refusal());
    if (!growth) {
        curve.refusal = reasonText(growth.refusal().reason, growth.refusal().sentence).toStdString();
        return curve;
    }
    const GroupGrowth& group = growth.value();
    for (int k = 0; k <= kSteps; ++k) {
        const double age = group.youngestDays + (group.oldestDays - group.youngestDays) * k / kSteps;
        const Interval95 animal = group.newAnimalAt(age);
        curve.points.push_back({age, animal.lower, group.meanAt(age).value, animal.upper});
    }
    return curve;
}

}  // namespace ringrule
