// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/lens_command.h"

#include <algorithm>
#include <cstdio>
#include <iomanip>
#include <iostream>
#include <memory>
#include <sstream>

#include <CLI/CLI.hpp>

#include "cli/interrupt.h"
#include "ringrule/sheets/lens_chart.h"
#include "ringrule/workflow/calibrate_box.h"

namespace ringrule::cli {
namespace {

struct LensOptions {
    std::vector<std::string> photos;
    std::string box;
    std::string board;
    double squareMm = 0.0;
    bool dryRun = false;
    std::string chart;
};

/// "9x6" as columns and rows, or nothing.
std::optional<std::pair<int, int>> cornersIn(const std::string& text) {
    int columns = 0, rows = 0;
    char end = 0;
    if (std::sscanf(text.c_str(), "%3dx%3d%c", &columns, &rows, &end) != 2) return std::nullopt;
    if (std::min(columns, rows) < 3 || std::max(columns, rows) > 60) return std::nullopt;
    return std::pair(columns, rows);
}

std::string boardError(const std::string& text) {
    return cornersIn(text) ? "" : "COLUMNSxROWS of inner corners, 3 to 60 each, for example 9x6";
}

const char* wordOf(LensPhotoState state) {
    switch (state) {
        case LensPhotoState::Used:
            return "used";
        case LensPhotoState::TooSimilar:
            return "used, repeats another";
        case LensPhotoState::Blurred:
            return "used, blurred";
        case LensPhotoState::Outlier:
            return "left out: does not fit";
        case LensPhotoState::OtherSize:
            return "left out: other size";
        case LensPhotoState::OtherCamera:
            return "left out: other camera";
        case LensPhotoState::BoardNotFound:
            break;
    }
    return "left out: no board";
}

std::string number(double value, int digits) {
    std::ostringstream out;
    out << std::fixed << std::setprecision(digits) << value;
    return out.str();
}

void printPhotos(const LensReport& report) {
    std::size_t width = 5;
    for (const LensPhoto& photo : report.photos) width = std::max(width, photo.path.filename().string().size());
    const auto row = [width](const std::string& photo, const std::string& points, const std::string& rms,
                             const std::string& tilt, const std::string& blur, const std::string& state) {
        std::cout << std::left << std::setw(static_cast<int>(width)) << photo << std::right << std::setw(9) << points
                  << std::setw(9) << rms << std::setw(9) << tilt << std::setw(9) << blur << "  " << state << '\n';
    };
    row("photo", "corners", "RMS px", "tilt deg", "blur px", "");
    for (const LensPhoto& photo : report.photos) {
        const auto known = [](double value, int digits) { return value > 0.0 ? number(value, digits) : "-"; };
        row(photo.path.filename().string(), std::to_string(photo.points), known(photo.rmsPx, 2),
            known(photo.tiltDegrees, 0), known(photo.blurPx, 1), wordOf(photo.state));
    }
    for (const LensPhoto& photo : report.photos) {
        if (!photo.advice.empty())
            std::cerr << "ringrule: note: " << photo.path.filename().string() << ": " << photo.advice << '\n';
    }
}

/// The frame as a grid: "#" where corners were seen, "." where none were.
void printCoverage(const LensReport& report) {
    std::cout << "\nFrame covered: " << number(100.0 * report.coverage, 0) << " %\n";
    for (int row = 0; row < report.cellRows; ++row) {
        std::cout << "  ";
        for (int column = 0; column < report.cellColumns; ++column) {
            const int corners = report.cornersInCell[static_cast<std::size_t>(row * report.cellColumns + column)];
            std::cout << (corners > 0 ? '#' : '.') << ' ';
        }
        std::cout << '\n';
    }
}

void printLens(const FittedLens& fitted) {
    const Lens& lens = fitted.lens;
    const auto& d = lens.distortion;
    const auto& sd = fitted.distortionSd;
    std::cout << "\nFocal length  " << number(lens.focalXPx, 1) << " and " << number(lens.focalYPx, 1)
              << " px, standard error " << number(fitted.focalSdPx, 1) << "\nCentre        "
              << number(lens.centreXPx, 1) << ", " << number(lens.centreYPx, 1) << " px, standard error "
              << number(fitted.centreSdPx, 1) << "\nDistortion    k1 " << number(d[0], 4) << " (" << number(sd[0], 4)
              << "), k2 " << number(d[1], 4) << " (" << number(sd[1], 4) << ")";
    if (fitted.tangentialFixed) {
        std::cout << ", p1 p2 not told from 0";
    } else {
        std::cout << ", p1 " << number(d[2], 5) << " (" << number(sd[2], 5) << "), p2 " << number(d[3], 5) << " ("
                  << number(sd[3], 5) << ")";
    }
    if (fitted.thirdRadialFixed) {
        std::cout << ", k3 not told from 0";
    } else {
        std::cout << ", k3 " << number(d[4], 4) << " (" << number(sd[4], 4) << ")";
    }
    std::cout << "\nRMS           " << number(fitted.rmsPx, 2) << " px\n";
    if (!fitted.origin.cameraModel.empty())
        std::cout << "Camera        " << fitted.origin.cameraMake << ' ' << fitted.origin.cameraModel << '\n';
    if (fitted.origin.focalLengthMm)
        std::cout << "Zoom          " << number(*fitted.origin.focalLengthMm, 1) << " mm by EXIF\n";
    if (!fitted.origin.calibratedOn.empty()) std::cout << "Date          " << fitted.origin.calibratedOn << '\n';
}

ExitStatus calibrate(const LensOptions& options) {
    LensTask task;
    task.photos.assign(options.photos.begin(), options.photos.end());
    task.boxFile = options.box;
    task.write = !options.dryRun;
    if (const auto corners = cornersIn(options.board))
        task.board = Chessboard{corners->first, corners->second, options.squareMm};
    const LensReport report = calibrateBoxLens(task, terminalProgress());
    if (!options.chart.empty()) writeLensChartPng(report, options.chart);
    printPhotos(report);
    printCoverage(report);
    if (report.refusal) {
        std::cout.flush();
        std::cerr << "ringrule: no lens can be told from these photos: " << report.refusal->sentence << '\n';
        return ExitStatus::NotMeasured;
    }
    printLens(*report.fitted);
    std::cout << (options.dryRun ? "\nNot written (--dry-run)\n" : "\nWritten to " + options.box + "\n");
    return ExitStatus::Done;
}

}  // namespace

void addLensCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<LensOptions>();
    CLI::App* command = app.add_subcommand("lens", "Finds the lens of a box file from photos of a chessboard or plate");
    command->add_option("PHOTO", options->photos, "Ten or more photos of the board held differently, in air")
        ->required();
    command->add_option("--box", options->box, "Box file to put the lens into")->required();
    CLI::Option* board = command->add_option("--board", options->board,
                                             "Inner corners of a chessboard, as 9x6 (default: the box's own plate)");
    CLI::Option* square = command->add_option("--square-mm", options->squareMm, "Side of one square in mm");
    board->check(boardError)->needs(square);
    square->check(CLI::Range(1.0, 500.0))->needs(board);
    command->add_option("--chart", options->chart, "PNG file for a chart of coverage and residuals");
    command->add_flag("--dry-run", options->dryRun, "Print all, write nothing");
    command->footer(
        "Hold the board at 20 to 40 degrees, a different way in each photo, and bring it into every corner of the "
        "frame.\nKeep zoom and focus as in the sessions.");
    command->callback([&chosen, options] { chosen = [options] { return calibrate(*options); }; });
}

}  // namespace ringrule::cli
