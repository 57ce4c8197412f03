// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/repeat_report.h"

#include <array>
#include <functional>
#include <map>
#include <utility>

namespace ringrule {
namespace {

/// Photos of one animal on one day.
struct Group {
    std::vector<Measurement> measurements;
    std::vector<std::string> photos;
};
using Groups = std::map<std::pair<AnimalId, Date>, Group>;

Groups groupsOf(const Store& store, const std::function<bool(const Session&)>& wanted) {
    Groups groups;
    for (const Session& session : store.sessions()) {
        if (!wanted(session)) continue;
        for (const StoredPhoto& photo : store.photos(session.id)) {
            for (const StoredMeasure& stored : store.measuresOfPhoto(photo.id)) {
                if (!stored.accepted || !stored.animal) continue;
                Group& group = groups[{*stored.animal, session.on}];
                group.measurements.push_back(stored.measurement);
                group.photos.push_back(photo.originalName);
            }
        }
    }
    return groups;
}

using Field = Estimate Measurement::*;

/// Values of a measure, a list for each animal and day; lengths from the side only, for a view from above sees another
/// posture.
std::vector<std::vector<double>> valuesOf(const Groups& groups, Field field) {
    std::vector<std::vector<double>> values;
    for (const auto& [key, group] : groups) {
        values.emplace_back();
        for (const Measurement& m : group.measurements) {
            const bool side = m.view == View::Side || m.view == View::Mirror;
            if ((m.*field).known() && (side || field == &Measurement::trunkWidthMm))
                values.back().push_back((m.*field).value);
        }
    }
    return values;
}

RepeatReport reportOf(const Store& store, const Groups& groups) {
    RepeatReport report;
    const std::array<std::pair<const char*, Field>, 3> measures{
        std::pair{"standard length", &Measurement::standardLengthMm},
        std::pair{"trunk depth", &Measurement::trunkDepthMm}, std::pair{"trunk width", &Measurement::trunkWidthMm}};
    for (const auto& [name, field] : measures) {
        const Repeatability repeats = repeatability(valuesOf(groups, field));
        if (repeats.groups > 0) report.lines.push_back({name, repeats});
    }
    std::map<AnimalId, std::string> codes;
    for (const Animal& animal : store.animals()) codes[animal.id] = animal.code;
    for (const auto& [key, group] : groups) {
        for (const std::size_t odd : combineRepeats(group.measurements).oddOnes) {
            report.odd.push_back(codes[key.first] + ", " + formatDate(key.second) + ": " + group.photos[odd] +
                                 " disagrees with its other photos of the day. Look at it.");
        }
    }
    return report;
}

}  // namespace

RepeatReport repeatsOfDay(const Store& store, Date on) {
    return reportOf(store, groupsOf(store, [on](const Session& session) { return session.on == on; }));
}

RepeatReport repeatsOfKeeper(const Store& store, const std::string& keeper) {
    return reportOf(store, groupsOf(store, [&](const Session& session) { return session.keeper == keeper; }));
}

}  // namespace ringrule
