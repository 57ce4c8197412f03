// SPDX-License-Identifier: GPL-3.0-or-later
// Draws docs/images/depth-error.png: how a length errs when depth and water are ignored, and with Ringrule's scale.
#include <cmath>
#include <iostream>
#include <string>
#include <vector>

#include <opencv2/calib3d.hpp>

#include "optics.h"
#include "plate_drawing.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/scale.h"
#include "ringrule/sheets/paint_chart.h"

namespace {

using namespace ringrule;

constexpr int kWidthPx = 4000, kHeightPx = 3000;

struct Bench {
    render::Lens lens;
    render::Media media;
    Box box;

    [[nodiscard]] render::Camera camera() const {
        return {lens, media, render::seaWaterIndex(media.salinityPpt, media.temperatureC), {}};
    }
};

// A bench box with the camera so far from the plate, behind 5 mm acrylic and 60 mm sea water.
Bench benchAt(double cameraToPlateMm) {
    Bench bench;
    bench.media = {cameraToPlateMm - 65.0, 5.0, 1.4917, 60.0, 32.0, 24.0};
    const double focal = 0.85 * kWidthPx * (cameraToPlateMm - 16.0) / 200.0;
    bench.lens = {focal, focal, 1999.5, 1499.5, {}, kWidthPx, kHeightPx};
    bench.box.plate = {"DICT_4X4_50", 200.0, 120.0, {}};
    int id = 0;
    for (const double y : {12.0, 108.0})
        for (const double x : {12.0, 70.0, 130.0, 188.0}) bench.box.plate.markers.push_back({id++, {x, y}, 12.0});
    const auto& m = bench.media;
    bench.box.media =
        Media{m.cameraToWindowMm, m.windowThicknessMm, m.windowIndex, m.waterToPlateMm, m.salinityPpt, m.temperatureC};
    bench.box.lens = Lens{focal, focal, 1999.5, 1499.5, {}, kWidthPx, kHeightPx};
    return bench;
}

FoundPlate seenPlate(const Bench& bench) {
    const render::Camera camera = bench.camera();
    const auto seen = [&camera](cv::Point2d mm) {
        const cv::Point2d px = camera.pxFromPlate(mm, 0.0);
        return PixelPoint{px.x, px.y};
    };
    FoundPlate plate;
    plate.expectedMarkers = static_cast<int>(bench.box.plate.markers.size());
    for (const PlateMarker& marker : bench.box.plate.markers) {
        FoundMarker found{marker.id, {}};
        const auto corners = render::markerCornersMm({marker.centreMm.x, marker.centreMm.y}, marker.sideMm);
        for (std::size_t k = 0; k < 4; ++k) found.cornersPx[k] = seen(corners[k]);
        plate.markers.push_back(found);
    }
    plate.cornersPx = {seen({0, 0}), seen({200, 0}), seen({200, 120}), seen({0, 120})};
    return plate;
}

struct Errors {
    double plain = 0.0;      // % of a 100 mm rod read off the plate
    double corrected = 0.0;  // % by the scale
};

Errors errorsAt(double cameraToPlateMm, double heightMm) {
    Bench bench = benchAt(cameraToPlateMm);
    bench.box.animalPlane = {heightMm, 1.0};
    const FoundPlate plate = seenPlate(bench);
    const render::Camera camera = bench.camera();
    std::vector<cv::Point2d> seen, printed;
    for (const FoundMarker& marker : plate.markers) {
        const PlateMarker& m = bench.box.plate.markers[static_cast<std::size_t>(marker.id)];
        const auto corners = render::markerCornersMm({m.centreMm.x, m.centreMm.y}, m.sideMm);
        for (std::size_t k = 0; k < 4; ++k) {
            seen.emplace_back(marker.cornersPx[k].x, marker.cornersPx[k].y);
            printed.push_back(corners[k]);
        }
    }
    const std::vector<cv::Point2d> ends{camera.pxFromPlate({50, 60}, heightMm),
                                        camera.pxFromPlate({150, 60}, heightMm)};
    std::vector<cv::Point2d> onPlate;
    cv::perspectiveTransform(ends, onPlate, cv::findHomography(seen, printed));
    const auto scale = Scale::fromPlate(bench.box, plate, kWidthPx, kHeightPx);
    const double read = scale ? distance(scale.value().animalFromPixel({ends[0].x, ends[0].y}),
                                         scale.value().animalFromPixel({ends[1].x, ends[1].y}))
                              : std::nan("");
    return {cv::norm(onPlate[1] - onPlate[0]) - 100.0, read - 100.0};
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 2) {
        std::cerr << "usage: bench_depth_chart FILE.png\n";
        return 2;
    }
    Chart chart;
    chart.title = "Error of a length when depth and water are ignored";
    chart.x = numberAxis("animal before the plate, mm", 0.0, 40.0, 8);
    chart.y = numberAxis("error of length, %", -2.0, 14.0, 9);
    chart.note =
        "Camera square to the plate, 5 mm acrylic, 60 mm sea water; rays by Snell's law, traced apart "
        "from Ringrule. Corrected: the box being as its file says.";
    int style = 0;
    ChartSeries corrected{"corrected", {}, 3, true};
    for (const double cameraMm : {250.0, 450.0, 850.0}) {
        ChartSeries plain{"camera " + std::to_string(static_cast<int>(cameraMm)) + " mm", {}, style++, false};
        double worst = 0.0;
        for (double height = 0.0; height <= 40.0; height += 5.0) {
            const Errors errors = errorsAt(cameraMm, height);
            plain.points.push_back({height, errors.plain});
            if (cameraMm == 250.0) corrected.points.push_back({height, errors.corrected});
            worst = std::max(std::abs(errors.corrected), worst);  // NaN stays
        }
        std::cout << plain.label << ": ignored " << plain.points.back().y << " % at 40 mm, corrected at most " << worst
                  << " %\n";
        chart.series.push_back(plain);
    }
    chart.series.push_back(corrected);
    writeChartPng(chart, argv[1]);
    return 0;
}
