// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>
#include <utility>
#include <vector>

#include "app/collection.h"
#include "ringrule/judge/finding.h"
#include "ringrule/sheets/growth_chart.h"

namespace ringrule {

/// The histories of these animals as chart lines, those in `picked` highlighted.
[[nodiscard]] std::vector<GrowthLine> growthLines(const std::vector<AnimalHistory>& histories,
                                                  const std::set<AnimalId>& shown, const std::set<AnimalId>& picked);

/// The tank in which an animal is, or was last.
[[nodiscard]] std::optional<TankId> lastTank(const AnimalHistory& history);

/// The animal and those that shared its tank on a day.
[[nodiscard]] std::set<AnimalId> sharedTank(const std::vector<AnimalHistory>& histories, AnimalId animal, Date day);

/// Two charts of an animal among its tankmates, its change of food marked: length, and depth ratio. Nothing from after
/// `asOf`.
[[nodiscard]] std::pair<Chart, Chart> changeCharts(const std::vector<AnimalHistory>& histories, AnimalId animal,
                                                   Date changedOn, Date asOf);

/// Shades the diets of one animal on a chart against age or date, and marks what happened with it: moves, states,
/// treatments (from `treatments`), each with its name.
void addStory(Chart& chart, const AnimalHistory& history, const std::vector<Treatment>& treatments,
              const Collection& collection);

/// The chart that shows a finding's evidence: its animal against those it was compared with, or else its own past.
[[nodiscard]] Chart evidenceChart(const std::vector<AnimalHistory>& histories, const Finding& finding);

}  // namespace ringrule
