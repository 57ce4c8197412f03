// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/growth_lines.h"

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

}  // namespace

std::vector<GrowthLine> growthLines(const std::vector<AnimalHistory>& histories, const std::set<AnimalId>& shown,
                                    const std::set<AnimalId>& picked) {
    std::vector<GrowthLine> lines;
    for (const AnimalHistory& history : histories)
        if (shown.contains(history.animal.id))
            lines.push_back({history.animal.code, history.observations, picked.contains(history.animal.id)});
    return lines;
}

std::optional<TankId> lastTank(const AnimalHistory& history) {
    const auto last = std::max_element(history.stays.begin(), history.stays.end(),
                                       [](const Stay& a, const Stay& b) { return a.from < b.from; });
    return last == history.stays.end() ? std::nullopt : std::optional(last->tank);
}

Chart evidenceChart(const std::vector<AnimalHistory>& histories, const Finding& finding) {
    std::set<AnimalId> shown{finding.animal};
    for (const AnimalHistory& history : histories)
        if (std::find(finding.comparedWith.begin(), finding.comparedWith.end(), history.animal.code) !=
            finding.comparedWith.end())
            shown.insert(history.animal.id);
    std::vector<GrowthLine> lines = growthLines(histories, shown, {finding.animal});
    // Only what was known when the finding was told.
    for (GrowthLine& line : lines)
        std::erase_if(line.points, [&](const Observation& observation) { return observation.on > finding.on; });
    GrowthChartOptions options;
    options.time = TimeAxis::ByDate;
    return growthChart(lines, evidenceMeasure(finding), options);
}

}  // namespace ringrule
