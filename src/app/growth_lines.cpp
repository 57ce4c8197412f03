// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/growth_lines.h"

#include <algorithm>

namespace ringrule {

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
    const bool onLength = finding.kind == FindingKind::BehindTankmates || finding.kind == FindingKind::Stalled;
    GrowthChartOptions options;
    options.time = TimeAxis::ByDate;
    return growthChart(growthLines(histories, shown, {finding.animal}),
                       onLength ? ChartMeasure::StandardLength : ChartMeasure::DepthRatio, options);
}

}  // namespace ringrule
