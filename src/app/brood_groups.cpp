// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/brood_groups.h"

#include <QObject>
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>

#include "ringrule/husbandry/brooding_time.h"

namespace ringrule {
namespace {

/// An egg transfer, or the first day on which the father was seen carrying, with no birth after it.
std::optional<BirthDue> dueOf(const BroodRecord& record) {
    std::optional<Date> carriedFrom;
    if (record.brood.bornOn) return std::nullopt;
    for (const BroodEvent& event : record.events) {
        if (event.event == "birth") return std::nullopt;
        if (event.event == "egg-transfer" || (event.event == "carrying" && !carriedFrom)) carriedFrom = event.on;
    }
    if (!carriedFrom) return std::nullopt;
    const BroodingTime time = broodingTime(record.brood.species);
    return BirthDue{*carriedFrom + std::chrono::days(time.leastDays), *carriedFrom + std::chrono::days(time.mostDays),
                    std::string(time.source)};
}

BroodGroup onRecord(const BroodRecord& record) {
    BroodGroup group;
    group.code = record.brood.code;
    group.species = record.brood.species;
    group.father = record.brood.father;
    group.mother = record.brood.mother;
    group.bornOn = record.brood.bornOn;
    group.events = record.events;
    for (const BroodEvent& event : record.events) {
        if (event.event == "birth" && !group.bornOn) group.bornOn = event.on;
        if (event.event == "birth" && event.count) group.young = event.count;
        if (event.event == "count" && event.count && !group.young) group.young = event.count;
    }
    group.due = dueOf(record);
    return group;
}

/// Length of each animal of a brood in each session.
std::map<Date, std::vector<double>> lengthsOf(std::span<const AnimalHistory> histories, const BroodGroup& group,
                                              std::optional<Date> until) {
    std::map<Date, std::vector<double>> lengths;
    for (const AnimalHistory& history : histories) {
        if (std::find(group.animals.begin(), group.animals.end(), history.animal.id) == group.animals.end()) continue;
        for (const Observation& seen : history.observations)
            if (seen.standardLengthMm.known() && (!until || seen.on <= *until))
                lengths[seen.on].push_back(seen.standardLengthMm.value);
    }
    return lengths;
}

double meanOf(const std::vector<double>& values) {
    double sum = 0.0;
    for (const double value : values) sum += value;
    return sum / static_cast<double>(values.size());
}

/// Half-width of the range that holds 95 % of a normal brood; 0 for one animal.
double spreadOf(const std::vector<double>& values) {
    if (values.size() < 2) return 0.0;
    const double mean = meanOf(values);
    double squares = 0.0;
    for (const double value : values) squares += (value - mean) * (value - mean);
    return 1.959964 * std::sqrt(squares / static_cast<double>(values.size() - 1));
}

}  // namespace

std::vector<BroodGroup> broodGroups(std::span<const AnimalHistory> histories, std::span<const BroodRecord> records,
                                    Date asOf) {
    std::vector<BroodGroup> groups;
    for (const BroodRecord& record : records) {
        groups.push_back(onRecord(record));
        for (const AnimalHistory& history : histories)
            if (history.animal.brood == record.brood.id) groups.back().animals.push_back(history.animal.id);
    }
    std::stable_sort(groups.begin(), groups.end(), [](const BroodGroup& a, const BroodGroup& b) {
        return a.bornOn.value_or(Date::max()) > b.bornOn.value_or(Date::max());
    });
    std::map<std::pair<Date, std::string>, std::vector<AnimalId>> byHatchDay;
    for (const AnimalHistory& history : histories)
        if (history.animal.hatchedOn && !history.animal.brood)
            byHatchDay[{*history.animal.hatchedOn, history.animal.species}].push_back(history.animal.id);
    for (auto group = byHatchDay.rbegin(); group != byHatchDay.rend(); ++group) {
        if (group->second.size() < 2) continue;
        BroodGroup known;
        known.code = formatDate(group->first.first);
        known.species = group->first.second;
        known.bornOn = group->first.first;
        known.animals = group->second;
        groups.push_back(std::move(known));
    }
    for (BroodGroup& group : groups) {
        const auto lengths = lengthsOf(histories, group, asOf);
        if (lengths.empty()) continue;
        group.measured = static_cast<int>(lengths.rbegin()->second.size());
        group.meanLengthMm = meanOf(lengths.rbegin()->second);
        group.lengthSpreadMm = spreadOf(lengths.rbegin()->second);
    }
    return groups;
}

Chart broodChart(std::span<const AnimalHistory> histories, std::span<const BroodGroup> broods, int chosen) {
    Chart chart;
    chart.emptySentence = QObject::tr("No brood with a known birth has been measured yet.").toStdString();
    double oldest = 0.0, youngest = std::numeric_limits<double>::infinity(), longest = 0.0;
    for (std::size_t k = 0; k < broods.size(); ++k) {
        if (!broods[k].bornOn) continue;
        ChartSeries series{broods[k].code, {}, static_cast<int>(k), static_cast<int>(k) == chosen};
        for (const auto& [on, lengths] : lengthsOf(histories, broods[k], std::nullopt)) {
            const auto age = static_cast<double>((on - *broods[k].bornOn).count());
            series.points.push_back({age, meanOf(lengths), spreadOf(lengths), false});
            oldest = std::max(oldest, age);
            youngest = std::min(youngest, age);
            longest = std::max(longest, series.points.back().y + series.points.back().u95);
        }
        if (!series.points.empty()) chart.series.push_back(std::move(series));
    }
    if (chart.series.empty()) return chart;
    chart.x = numberAxis(QObject::tr("Age (days)").toStdString(), std::max(0.0, youngest - 5.0), oldest + 5.0, 7,
                         AxisEnds::AsGiven);
    chart.y = numberAxis(QObject::tr("Mean standard length (mm)").toStdString(), 0.0, longest, 6);
    chart.note = QObject::tr("Bars: 1.96 standard deviations between the animals of a brood.").toStdString();
    return chart;
}

}  // namespace ringrule
