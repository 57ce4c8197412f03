// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/growth_lines.h"

#include <QObject>
#include <algorithm>

namespace ringrule {

namespace {

/// The chart measure nearest to what a finding compared.
ChartMeasure evidenceMeasure(const Finding& finding) {
    const auto speaksOf = [&](const char* words) { return finding.measure.find(words) != std::string::npos; };
    if (speaksOf("width")) return ChartMeasure::WidthRatio;
    if (speaksOf("condition") || speaksOf("depth")) return ChartMeasure::DepthRatio;
    return ChartMeasure::StandardLength;
}

/// Only what was known on a day.
void cutAfter(std::vector<GrowthLine>& lines, Date day) {
    for (GrowthLine& line : lines) std::erase_if(line.points, [&](const Observation& o) { return o.on > day; });
}

double dayNumber(Date day) {
    return static_cast<double>(day.time_since_epoch().count());
}

/// Marks where the animal's food was changed after it was first seen.
void markFood(Chart& chart, const std::vector<AnimalHistory>& histories, AnimalId animal, Date until) {
    for (const AnimalHistory& history : histories) {
        if (history.animal.id != animal || history.observations.empty()) continue;
        for (const DietSpell& spell : history.dietSpells)
            if (spell.from > history.observations.front().on && spell.from <= until)
                chart.marks.push_back({dayNumber(spell.from), QObject::tr("food changed").toStdString()});
    }
}

/// One colour and marker for an animal wherever it is drawn: colours repeat after six animals, with another marker.
int styleOf(AnimalId animal) {
    constexpr std::int64_t kStyles = 42;
    return static_cast<int>((std::max<std::int64_t>(animal.value, 1) - 1) % kStyles);
}

}  // namespace

std::vector<GrowthLine> growthLines(const std::vector<AnimalHistory>& histories, const std::set<AnimalId>& shown,
                                    const std::set<AnimalId>& picked) {
    std::vector<GrowthLine> lines;
    for (const AnimalHistory& history : histories)
        if (shown.contains(history.animal.id))
            lines.push_back({history.animal.code, history.observations, picked.contains(history.animal.id),
                             styleOf(history.animal.id)});
    return lines;
}

std::optional<TankId> lastTank(const AnimalHistory& history) {
    const auto last = std::max_element(history.stays.begin(), history.stays.end(),
                                       [](const Stay& a, const Stay& b) { return a.from < b.from; });
    return last == history.stays.end() ? std::nullopt : std::optional(last->tank);
}

std::set<AnimalId> sharedTank(const std::vector<AnimalHistory>& histories, AnimalId animal, Date day) {
    const auto tankOn = [day](const AnimalHistory& history) -> std::optional<TankId> {
        for (const Stay& stay : history.stays)
            if (stay.from <= day && (!stay.to || day < *stay.to)) return stay.tank;
        return std::nullopt;
    };
    std::optional<TankId> tank;
    for (const AnimalHistory& history : histories)
        if (history.animal.id == animal) tank = tankOn(history);
    std::set<AnimalId> mates{animal};
    for (const AnimalHistory& history : histories)
        if (tank && tankOn(history) == tank) mates.insert(history.animal.id);
    return mates;
}

std::pair<Chart, Chart> changeCharts(const std::vector<AnimalHistory>& histories, AnimalId animal, Date changedOn,
                                     Date asOf) {
    std::vector<GrowthLine> lines = growthLines(histories, sharedTank(histories, animal, changedOn), {animal});
    cutAfter(lines, asOf);
    GrowthChartOptions options;
    options.time = TimeAxis::ByDate;
    std::pair<Chart, Chart> charts{growthChart(lines, ChartMeasure::StandardLength, options),
                                   growthChart(lines, ChartMeasure::DepthRatio, options)};
    for (Chart* chart : {&charts.first, &charts.second}) {
        chart->note.clear();
        markFood(*chart, histories, animal, asOf);
    }
    return charts;
}

Chart evidenceChart(const std::vector<AnimalHistory>& histories, const Finding& finding) {
    std::set<AnimalId> shown{finding.animal};
    const auto livedIn = [](const AnimalHistory& history, TankId tank) {
        return std::any_of(history.stays.begin(), history.stays.end(), [&](const Stay& s) { return s.tank == tank; });
    };
    for (const AnimalHistory& history : histories)
        if (finding.tank && livedIn(history, *finding.tank)) shown.insert(history.animal.id);
    for (const AnimalHistory& history : histories)
        if (std::find(finding.comparedWith.begin(), finding.comparedWith.end(), history.animal.code) !=
            finding.comparedWith.end())
            shown.insert(history.animal.id);
    std::vector<GrowthLine> lines = growthLines(histories, shown, {finding.animal});
    cutAfter(lines, finding.on);
    GrowthChartOptions options;
    options.time = TimeAxis::ByDate;
    Chart chart = growthChart(lines, evidenceMeasure(finding), options);
    markFood(chart, histories, finding.animal, finding.on);
    return chart;
}

}  // namespace ringrule
