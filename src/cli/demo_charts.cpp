// SPDX-License-Identifier: GPL-3.0-or-later
// First, since its TimeAxis::Date would be said to shadow a `Date` declared before it (GCC 12).
#include "ringrule/sheets/growth_chart.h"

#include "cli/demo_charts.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string>

#include "cli/overlay_files.h"
#include "ringrule/judge/review.h"
#include "ringrule/workflow/session_table.h"

namespace ringrule::cli {
namespace {

struct ChartFile {
    ChartMeasure measure;
    const char* name;
};

constexpr std::array<ChartFile, 3> kCharts{{{ChartMeasure::StandardLength, "standard-length"},
                                            {ChartMeasure::DepthRatio, "depth-ratio"},
                                            {ChartMeasure::GirthRatio, "girth-ratio"}}};

std::string fileName(const std::string& species, const char* measure) {
    std::string name = species + "_" + measure + ".png";
    std::replace(name.begin(), name.end(), ' ', '-');
    std::replace(name.begin(), name.end(), '/', '-');
    return name;
}

}  // namespace

void writeDemoCharts(std::span<const AnimalHistory> histories, const std::filesystem::path& folder) {
    std::set<AnimalId> flagged;
    for (const Date day : sessionDays(histories)) {
        for (const Finding& finding : reviewAnimals(histories, day)) {
            if (isFlag(finding)) flagged.insert(finding.animal);
        }
    }
    std::map<std::string, std::vector<GrowthLine>> bySpecies;
    for (const AnimalHistory& history : histories) {
        bySpecies[history.animal.species].push_back(
            {history.animal.code, history.observations, flagged.contains(history.animal.id)});
    }
    makeResultFolder(folder);
    for (const auto& [species, lines] : bySpecies) {
        for (const ChartFile& chart : kCharts) {
            GrowthChartOptions options;
            options.title = species;
            writeGrowthChartPng(lines, chart.measure, folder / fileName(species, chart.name), options);
        }
    }
}

}  // namespace ringrule::cli
