// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/box_check_chart.h"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "ringrule/husbandry/date.h"

namespace ringrule {
namespace {

/// The axis never shows less: on a narrower one noise would look like a fault.
constexpr double kLeastHalfPercent = 0.5;
constexpr double kDaysAbout = 10.0;

}  // namespace

Chart rodChart(const std::vector<PastBoxCheck>& checks) {
    Chart chart;
    ChartSeries rods;
    double most = kLeastHalfPercent;
    for (const PastBoxCheck& check : checks) {
        const auto day = parseDate(check.checkedOn);
        if (!check.rod || !day || check.rod->statedMm <= 0.0) continue;
        const double percent = 100.0 * (check.rod->readMm / check.rod->statedMm - 1.0);
        const double u95 = 100.0 * check.rod->u95Mm / check.rod->statedMm;
        rods.points.push_back({static_cast<double>(day->time_since_epoch().count()), percent, u95, !check.passed});
        most = std::max(most, std::abs(percent) + u95);
    }
    chart.emptySentence = QObject::tr("No rod was read yet.").toStdString();
    if (rods.points.empty()) return chart;
    std::stable_sort(rods.points.begin(), rods.points.end(),
                     [](const ChartPoint& a, const ChartPoint& b) { return a.x < b.x; });
    rods.highlighted = true;
    chart.x = dateAxis(QObject::tr("Date").toStdString(), rods.points.front().x - kDaysAbout,
                       rods.points.back().x + kDaysAbout);
    chart.y = numberAxis(QObject::tr("Rod read long or short (%)").toStdString(), -most, most, 5);
    chart.series.push_back(std::move(rods));
    chart.note = QObject::tr("Bars: 95 % interval. Hollow: the box did not hold.").toStdString();
    return chart;
}

}  // namespace ringrule
