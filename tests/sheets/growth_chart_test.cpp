// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/growth_chart.h"

#include <QImage>
#include <catch2/catch.hpp>
#include <cmath>

#include "../scratch_folder.h"
#include "ringrule/error.h"

using namespace ringrule;
using namespace std::chrono;

namespace {

Observation observed(sys_days on, std::optional<double> ageDays, double lengthMm, double ratio) {
    Observation o;
    o.on = on;
    o.ageDays = ageDays;
    o.standardLengthMm = {lengthMm, 0.4, 0.5};
    o.depthRatio = {ratio, 0.0004, 0.0002};
    o.sidePhotos = 3;
    return o;
}

/// Seven invented pipefish measured monthly; the fourth thins from the third month and recovers from the sixth.
std::vector<GrowthLine> bayOfSeven() {
    std::vector<GrowthLine> lines;
    for (int animal = 0; animal < 7; ++animal) {
        GrowthLine line{"P" + std::to_string(animal + 1), {}, animal == 3};
        for (int month = 0; month < 9; ++month) {
            const double age = 60.0 + 30.5 * month;
            const double length = (150.0 + 3.0 * animal) * (1.0 - std::exp(-0.009 * age)) -
                                  (animal == 3 ? 4.0 * std::min(month, 5) : 0.0);
            const double ratio = 0.036 + 0.0006 * std::sin(animal + month) -
                                 (animal == 3 ? 0.0016 * std::max(0, std::min(month - 2, 8 - month)) : 0.0);
            line.points.push_back(observed(sys_days(2031y / January / 14) + days(30 * month), age, length, ratio));
        }
        lines.push_back(line);
    }
    return lines;
}

std::filesystem::path scratch(const std::string& name) {
    static const ScratchFolder folder;  // one a program: tests run side by side
    return folder / name;
}

}  // namespace

TEST_CASE("the band is the median and robust spread of the animals that are not picked out") {
    std::vector<GrowthLine> lines;
    const double lengths[] = {80, 82, 84, 88, 100, 40};
    for (const double length : lengths)
        lines.push_back({"", {observed(sys_days(2031y / May / 1), 100.0, length, 0.03)}, length == 40});
    const Chart chart = growthChart(lines, ChartMeasure::StandardLength);
    REQUIRE(chart.band.size() == 1);
    // Deviations from 84 are 4 2 0 4 16: their median is 4.
    CHECK(chart.band[0].middle == 84.0);
    CHECK_THAT(chart.band[0].high, Catch::WithinAbs(84.0 + 1.4826 * 4.0, 1e-12));
    CHECK_THAT(chart.band[0].low, Catch::WithinAbs(84.0 - 1.4826 * 4.0, 1e-12));
    lines.pop_back();
    lines.pop_back();
    CHECK(growthChart(lines, ChartMeasure::StandardLength).band.empty());
}

TEST_CASE("age is the axis only when every observation has one") {
    std::vector<GrowthLine> lines{
        {"A",
         {observed(sys_days(2031y / May / 1), 100.0, 80, 0.03), observed(sys_days(2031y / June / 1), 131.0, 90, 0.03)},
         false}};
    CHECK(growthChart(lines, ChartMeasure::StandardLength).x.title == "Age (days)");
    lines.push_back({"wild", {observed(sys_days(2031y / May / 1), {}, 120, 0.03)}, false});
    const Chart byDate = growthChart(lines, ChartMeasure::StandardLength);
    CHECK(byDate.x.title == "Date of session");
    CHECK(byDate.series.size() == 2);
    GrowthChartOptions ages;
    ages.time = TimeAxis::ByAge;
    CHECK(growthChart(lines, ChartMeasure::StandardLength, ages).series.size() == 1);
}

TEST_CASE("what is not known is no point, what is not judged is hollow") {
    Observation brooding = observed(sys_days(2031y / May / 1), 100.0, 80, 0.05);
    brooding.girthFair = false;
    const std::vector<GrowthLine> lines{{"S1", {brooding}, false}};
    CHECK(growthChart(lines, ChartMeasure::DepthRatio).series[0].points[0].hollow);
    CHECK_FALSE(growthChart(lines, ChartMeasure::StandardLength).series[0].points[0].hollow);
    CHECK(growthChart(lines, ChartMeasure::GirthRatio).series.empty());
}

TEST_CASE("a fitted curve is drawn on length against age only, and widens the axis to its band") {
    const std::vector<GrowthLine> lines = bayOfSeven();
    GrowthChartOptions options;
    options.curve = {{60.0, 40.0, 66.0, 90.0}, {300.0, 110.0, 142.0, 260.0}};
    const Chart chart = growthChart(lines, ChartMeasure::StandardLength, options);
    REQUIRE(chart.curve.size() == 2);
    CHECK(chart.y.high >= 260.0);
    CHECK(chart.note.find("95 % of animals like these") != std::string::npos);
    CHECK(growthChart(lines, ChartMeasure::DepthRatio, options).curve.empty());
    options.time = TimeAxis::ByDate;
    CHECK(growthChart(lines, ChartMeasure::StandardLength, options).curve.empty());
    options.time = TimeAxis::ByAge;
    options.logarithmic = true;
    options.curve.front().low = -5.0;  // a band may reach below what a logarithmic axis can show
    const Chart logarithmic = growthChart(lines, ChartMeasure::StandardLength, options);
    REQUIRE(logarithmic.curve.size() == 2);
    CHECK(logarithmic.curve.front().middle == Approx(std::log10(66.0)));
    CHECK(std::isfinite(logarithmic.curve.front().low));
}

TEST_CASE("growth charts are written as pictures of the size asked for") {
    GrowthChartOptions options;
    options.title = "Bay 3, broadnosed pipefish";
    const auto png = scratch("growth.png");
    writeGrowthChartPng(bayOfSeven(), ChartMeasure::StandardLength, png, options);
    const QImage image(QString::fromStdString(png.string()));
    CHECK(image.size() == QSize(1800, 1120));
    // The highlighted line's own colour (style 3: purple) is there; the others stand back in grey.
    int purple = 0;
    int blue = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x) {
            purple += image.pixel(x, y) == QColor(0xCC79A7).rgb();
            blue += image.pixel(x, y) == QColor(0x0072B2).rgb();
        }
    CHECK(purple > 1000);
    CHECK(blue == 0);
    options.png.dark = true;
    writeGrowthChartPng(bayOfSeven(), ChartMeasure::DepthRatio, scratch("growth-dark.png"), options);
    std::vector<GrowthLine> equal = bayOfSeven();
    equal[3].highlighted = false;
    options.time = TimeAxis::ByDate;
    options.png.dark = false;
    writeGrowthChartPng(equal, ChartMeasure::DepthRatio, scratch("growth-date.png"), options);
    writeGrowthChartPng({}, ChartMeasure::DepthRatio, scratch("growth-empty.png"), options);
    CHECK_FALSE(QImage(QString::fromStdString(scratch("growth-empty.png").string())).isNull());
}

TEST_CASE("a picture that cannot be written is an error that names it") {
    try {
        writeGrowthChartPng(bayOfSeven(), ChartMeasure::StandardLength, "/nonexistent/growth.png");
        FAIL("no error");
    } catch (const Error& error) {
        CHECK(error.kind() == ErrorKind::NoSpace);
        CHECK(error.path() == "/nonexistent/growth.png");
    }
}
