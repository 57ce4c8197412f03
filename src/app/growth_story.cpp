// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>
#include <optional>

#include "app/core_text.h"
#include "app/growth_lines.h"

namespace ringrule {
namespace {

struct GrowthStory {
    Q_DECLARE_TR_FUNCTIONS(GrowthStory)
};

double numberOfDay(Date day) {
    return static_cast<double>(day.time_since_epoch().count());
}

/// Places of days on the chart: days since 1970, or age by the animal's own sessions.
std::optional<double> offsetOf(const Chart& chart, const AnimalHistory& history) {
    if (chart.x.dates) return 0.0;
    for (const Observation& seen : history.observations)
        if (seen.ageDays) return *seen.ageDays - numberOfDay(seen.on);
    return std::nullopt;
}

}  // namespace

void addStory(Chart& chart, const AnimalHistory& history, const std::vector<Treatment>& treatments,
              const Collection& collection) {
    const auto offset = offsetOf(chart, history);
    if (!offset || chart.series.empty()) return;
    const auto at = [&](Date day) { return numberOfDay(day) + *offset; };
    const auto mark = [&](Date day, const QString& words) { chart.marks.push_back({at(day), words.toStdString()}); };
    for (const DietSpell& spell : history.dietSpells)
        chart.spans.push_back(
            {at(spell.from), spell.to ? at(*spell.to) : chart.x.high, collection.dietName(spell.diet).toStdString()});
    for (std::size_t k = 1; k < history.stays.size(); ++k)
        if (const Tank* tank = collection.tank(history.stays[k].tank))
            mark(history.stays[k].from, GrowthStory::tr("to %1").arg(QString::fromStdString(tank->code)));
    for (const StateSpell& state : history.states) mark(state.from, coreText(state.state).replace('-', ' '));
    const auto tank = lastTank(history);
    for (const Treatment& treatment : treatments)
        if (treatment.animal == history.animal.id || (treatment.tank && treatment.tank == tank))
            mark(treatment.from, QString::fromStdString(treatment.what));
}

}  // namespace ringrule
