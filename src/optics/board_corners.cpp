// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstddef>

#include <opencv2/calib3d.hpp>
#include <opencv2/imgproc.hpp>

#include "optics/plate_markers.h"
#include "ringrule/imaging/sharpness.h"
#include "ringrule/imaging/tone.h"
#include "ringrule/optics/lens_calibration.h"
#include "ringrule/optics/plate.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {
namespace {

// Long side at which a chessboard is looked for: squares of a board that fills a tenth of the photo stay 10 px wide.
constexpr double kSearchSidePx = 1200.0;
constexpr double kProfileStepPx = 0.5;

// The inverse of `turnedUpright` for a point.
PixelPoint storedFromUpright(PixelPoint p, const cv::Size& upright, int exifOrientation) {
    const double right = upright.width - 1 - p.x, below = upright.height - 1 - p.y;
    switch (exifOrientation) {
        case 2:
            return {right, p.y};
        case 3:
            return {right, below};
        case 4:
            return {p.x, below};
        case 5:
            return {p.y, p.x};
        case 6:
            return {p.y, right};
        case 7:
            return {below, right};
        case 8:
            return {below, p.x};
        default:
            return p;
    }
}

float lightAt(const cv::Mat& grey, PixelPoint p) {
    const int x = std::clamp(static_cast<int>(std::floor(p.x)), 0, grey.cols - 2);
    const int y = std::clamp(static_cast<int>(std::floor(p.y)), 0, grey.rows - 2);
    const double fx = p.x - x, fy = p.y - y;
    const auto& light = lightFromCode();
    const auto at = [&](int row, int column) {
        return static_cast<double>(light[grey.at<unsigned char>(row, column)]);
    };
    return static_cast<float>((at(y, x) * (1.0 - fx) + at(y, x + 1) * fx) * (1.0 - fy) +
                              (at(y + 1, x) * (1.0 - fx) + at(y + 1, x + 1) * fx) * fy);
}

// An edge between ink and paper, and how far to either side of it nothing else is printed.
struct Edge {
    PixelPoint from;
    PixelPoint to;
    double clearPx = 0.0;
};

std::optional<double> blurOf(const cv::Mat& grey, const Edge& edge) {
    const double length = distance(edge.from, edge.to);
    const double reach = std::min(edge.clearPx, 12.0);
    if (length < 4.0 || reach < 2.0) return std::nullopt;
    const PixelPoint across{(edge.to.y - edge.from.y) / length, -(edge.to.x - edge.from.x) / length};
    const PixelPoint middle = 0.5 * (edge.from + edge.to);
    std::vector<float> light;
    for (double t = -reach; t <= reach; t += kProfileStepPx) light.push_back(lightAt(grey, middle + t * across));
    if (light.front() > light.back()) std::reverse(light.begin(), light.end());
    return edgeSigmaPx(light, kProfileStepPx);
}

double medianBlur(const cv::Mat& grey, const std::vector<Edge>& edges) {
    std::vector<double> blurs;
    for (const Edge& edge : edges) {
        if (const auto blur = blurOf(grey, edge)) blurs.push_back(*blur);
    }
    return blurs.empty() ? 0.0 : median(blurs);
}

BoardView emptyView(const Photo& photo) {
    BoardView view;
    view.path = photo.path;
    const bool swaps = photo.exifOrientation >= 5;
    view.widthPx = swaps ? photo.grey.rows : photo.grey.cols;
    view.heightPx = swaps ? photo.grey.cols : photo.grey.rows;
    view.cameraMake = photo.cameraMake;
    view.cameraModel = photo.cameraModel;
    view.focalLengthMm = photo.focalLengthMm;
    view.takenAt = photo.takenAt;
    return view;
}

// Corners to a pixel or two: on the photo reduced, and where that shows none at full size.
std::vector<cv::Point2f> roughCorners(const cv::Mat& grey, const cv::Size& pattern) {
    constexpr int kFlags = cv::CALIB_CB_ADAPTIVE_THRESH | cv::CALIB_CB_NORMALIZE_IMAGE;
    std::vector<cv::Point2f> corners;
    const double shrink = std::min(1.0, kSearchSidePx / std::max(grey.cols, grey.rows));
    cv::Mat small = grey;
    if (shrink < 1.0) cv::resize(grey, small, {}, shrink, shrink, cv::INTER_AREA);
    if (!cv::findChessboardCorners(small, pattern, corners, kFlags | cv::CALIB_CB_FAST_CHECK) &&
        !cv::findChessboardCorners(small, pattern, corners, kFlags) &&
        !cv::findChessboardCornersSB(small, pattern, corners, cv::CALIB_CB_NORMALIZE_IMAGE))
        return {};
    const double sx = static_cast<double>(grey.cols) / small.cols, sy = static_cast<double>(grey.rows) / small.rows;
    for (cv::Point2f& c : corners)
        c = {static_cast<float>((c.x + 0.5) * sx - 0.5), static_cast<float>((c.y + 0.5) * sy - 0.5)};
    return corners;
}

double shortestStep(const std::vector<cv::Point2f>& corners, const cv::Size& pattern) {
    double shortest = 1e9;
    for (int row = 0; row < pattern.height; ++row)
        for (int column = 0; column < pattern.width; ++column) {
            const auto at = [&](int r, int c) { return corners[static_cast<std::size_t>(r * pattern.width + c)]; };
            if (column > 0) shortest = std::min(shortest, cv::norm(at(row, column) - at(row, column - 1)));
            if (row > 0) shortest = std::min(shortest, cv::norm(at(row, column) - at(row - 1, column)));
        }
    return shortest;
}

std::vector<Edge> edgesBetween(const std::vector<cv::Point2f>& corners, const cv::Size& pattern, double clearPx) {
    std::vector<Edge> edges;
    const auto point = [&](int row, int column) {
        const cv::Point2f at = corners[static_cast<std::size_t>(row * pattern.width + column)];
        return PixelPoint{at.x, at.y};
    };
    for (int row = 0; row < pattern.height; ++row)
        for (int column = 0; column < pattern.width; ++column) {
            if (column > 0) edges.push_back({point(row, column - 1), point(row, column), clearPx});
            if (row > 0) edges.push_back({point(row - 1, column), point(row, column), clearPx});
        }
    return edges;
}

}  // namespace

BoardView viewChessboard(const Photo& photo, const Chessboard& board) {
    assert(board.columns >= 3 && board.rows >= 3 && board.squareMm > 0.0);
    BoardView view = emptyView(photo);
    const cv::Size pattern(board.columns, board.rows);
    auto corners = roughCorners(photo.grey, pattern);
    if (corners.empty()) {
        view.notFound = "No board of " + std::to_string(board.columns) + " x " + std::to_string(board.rows) +
                        " inner corners was found: the whole board must be seen, flat and evenly lit.";
        return view;
    }
    const double step = shortestStep(corners, pattern);
    // The window holds one corner and the edges that meet there, nothing of the next corner.
    const int half = std::clamp(static_cast<int>(0.35 * step), 3, 20);
    cv::cornerSubPix(photo.grey, corners, {half, half}, {-1, -1},
                     {cv::TermCriteria::COUNT | cv::TermCriteria::EPS, 60, 1e-4});
    for (int row = 0; row < board.rows; ++row)
        for (int column = 0; column < board.columns; ++column) {
            const cv::Point2f at = corners[static_cast<std::size_t>(row * board.columns + column)];
            view.seenPx.push_back(storedFromUpright({at.x, at.y}, photo.grey.size(), photo.exifOrientation));
            view.printedMm.push_back({column * board.squareMm, row * board.squareMm});
        }
    view.blurPx = medianBlur(photo.grey, edgesBetween(corners, pattern, 0.4 * step));
    return view;
}

BoardView viewPlate(const Photo& photo, const Box& box, const std::optional<Lens>& lens) {
    BoardView view = emptyView(photo);
    Box inAir = box;
    inAir.lens = lens;
    const auto plate = findPlate(photo, inAir);
    if (!plate) {
        view.notFound = plate.refusal().sentence;
        return view;
    }
    std::vector<Edge> edges;
    for (const FoundMarker& marker : plate.value().markers) {
        const PlateMarker* printed = markerOfPlate(box.plate, marker.id);
        if (printed == nullptr) continue;
        const auto cornersMm = markerCornersMm(*printed);
        for (std::size_t k = 0; k < 4; ++k) {
            const PixelPoint from = marker.cornersPx[k], to = marker.cornersPx[(k + 1) % 4];
            view.seenPx.push_back(storedFromUpright(from, photo.grey.size(), photo.exifOrientation));
            view.printedMm.push_back(cornersMm[k]);
            edges.push_back({from, to, 0.15 * distance(from, to)});  // the border is a cell wide, at least an eighth
        }
    }
    view.blurPx = medianBlur(photo.grey, edges);
    return view;
}

}  // namespace ringrule
