// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>

#include "ringrule/sheets/chart.h"

namespace ringrule {
namespace {

/// The step of 1, 2 or 5 times a power of ten that cuts `span` into about `wanted` pieces.
double roundStep(double span, int wanted) {
    const double raw = span / std::max(1, wanted - 1);
    const double power = std::pow(10.0, std::floor(std::log10(raw)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (raw <= factor * power * 1.0001) return factor * power;
    return 10.0 * power;
}

std::string dayLabel(std::chrono::sys_days day, bool withDay, bool withYear) {
    constexpr std::array kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    const std::chrono::year_month_day date(day);
    std::string label;
    if (withDay) label += std::to_string(static_cast<unsigned>(date.day())) + " ";
    label += kMonths[static_cast<unsigned>(date.month()) - 1];
    if (withYear) label += " " + std::to_string(static_cast<int>(date.year()));
    return label;
}

std::chrono::sys_days dayAt(double day) {
    return std::chrono::sys_days(std::chrono::days(static_cast<int>(std::floor(day))));
}

double numberOf(std::chrono::sys_days day) {
    return static_cast<double>(day.time_since_epoch().count());
}

void addMonthTicks(ChartAxis& axis, int everyMonths) {
    std::chrono::year_month_day first(dayAt(axis.low));
    std::chrono::year_month month = first.year() / first.month();
    int lastYear = 0;
    for (; numberOf(month / std::chrono::day(1)) <= axis.high; month += std::chrono::months(1)) {
        const double at = numberOf(month / std::chrono::day(1));
        if (at < axis.low || (static_cast<unsigned>(month.month()) - 1) % static_cast<unsigned>(everyMonths) != 0)
            continue;
        const int year = static_cast<int>(month.year());
        axis.ticks.push_back({at, dayLabel(month / std::chrono::day(1), false, year != lastYear)});
        lastYear = year;
    }
}

}  // namespace

ChartAxis numberAxis(std::string title, double low, double high, int wantedTicks, AxisEnds ends) {
    ChartAxis axis{std::move(title), low, high, {}};
    if (!(high > low)) {
        const double half = low == 0.0 ? 0.5 : std::abs(low) * 0.05;
        axis.low = low - half;
        axis.high = high + half;
    }
    const double step = roundStep(axis.high - axis.low, wantedTicks);
    const bool onTicks = ends == AxisEnds::OnTicks;
    const double first = onTicks ? std::floor(axis.low / step + 1e-9) : std::ceil(axis.low / step - 1e-9);
    const double last = onTicks ? std::ceil(axis.high / step - 1e-9) : std::floor(axis.high / step + 1e-9);
    const int decimals = std::max(0, -static_cast<int>(std::floor(std::log10(step) + 1e-9)));
    for (double k = first; k <= last + 0.5; k += 1.0) {
        std::array<char, 32> text{};
        std::snprintf(text.data(), text.size(), "%.*f", decimals, k * step + 0.0);
        axis.ticks.push_back({k * step, text.data()});
    }
    if (onTicks) {
        axis.low = axis.ticks.front().at;
        axis.high = axis.ticks.back().at;
    }
    return axis;
}

ChartAxis logarithmicAxis(std::string title, double low, double high, int wantedTicks) {
    // Over less than a decade steps of even width read best; over more, 1, 2 and 5 of each power of ten.
    ChartAxis axis = numberAxis(std::move(title), low, high, wantedTicks, AxisEnds::AsGiven);
    if (high >= 10.0 * low) {
        axis.ticks.clear();
        for (double power = std::pow(10.0, std::floor(std::log10(low))); power <= high; power *= 10.0) {
            for (const double factor : {1.0, 2.0, 5.0}) {
                std::array<char, 32> text{};
                std::snprintf(text.data(), text.size(), "%g", factor * power);
                axis.ticks.push_back({factor * power, text.data()});
            }
        }
    }
    std::erase_if(axis.ticks, [&](const ChartTick& tick) { return tick.at < axis.low || tick.at > axis.high; });
    for (ChartTick& tick : axis.ticks) tick.at = std::log10(tick.at);
    axis.low = std::log10(axis.low);
    axis.high = std::log10(axis.high);
    axis.logarithmic = true;
    return axis;
}

ChartAxis dateAxis(std::string title, double lowDay, double highDay, int wantedTicks) {
    ChartAxis axis{std::move(title), std::floor(lowDay), std::ceil(highDay), {}};
    axis.dates = true;
    if (axis.high - axis.low < 1.0) {
        axis.low -= 3.0;
        axis.high += 3.0;
    }
    const double span = axis.high - axis.low;
    if (span > 75.0) {
        for (const int every : {1, 2, 3, 6, 12, 24, 60}) {
            axis.ticks.clear();
            addMonthTicks(axis, every);
            if (static_cast<int>(axis.ticks.size()) <= wantedTicks + 2) break;
        }
    } else {
        const double step = std::max(1.0, std::ceil(span / wantedTicks));
        for (double day = axis.low; day <= axis.high; day += step)
            axis.ticks.push_back({day, dayLabel(dayAt(day), true, day == axis.low)});
    }
    return axis;
}

}  // namespace ringrule
