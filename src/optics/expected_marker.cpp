// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/expected_marker.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <Eigen/Dense>

#include <opencv2/aruco/dictionary.hpp>
#include <opencv2/imgproc.hpp>

#include "optics/marker_corners.h"

namespace ringrule {
namespace {

// Share of the light's variation across a marker and its white rim that the print must explain, beyond what a slope of
// the light does. A drop over two cells in an eighth of the marker leaves 0.8; an animal over a third of it 0.4.
constexpr double kLeastExplained = 0.6;
constexpr double kLeastContrast = 8.0;  // code values between ink and paper
constexpr double kMostOffShare = 0.06;  // corners from where they are expected, of the marker's side …
constexpr double kMostOffPx = 3.0;      // … or this

// Mean code value of a cell's middle; the square's corners are at (0, 0) to (cells, cells), so that the rim around it
// has row or column −1 and `cells`. Nothing outside the photo.
std::optional<double> cellMean(const cv::Mat& grey, const cv::Matx33d& pixelFromCells, int row, int column) {
    double sum = 0.0;
    constexpr int kSide = 4;
    for (int i = 0; i < kSide * kSide; ++i) {
        const double x = column + 0.25 + 0.5 * (i % kSide + 0.5) / kSide;
        const double y = row + 0.25 + 0.5 * (i / kSide + 0.5) / kSide;
        const cv::Vec3d at = pixelFromCells * cv::Vec3d(x, y, 1.0);
        const auto px = static_cast<int>(std::lround(at[0] / at[2])), py = static_cast<int>(std::lround(at[1] / at[2]));
        if (px < 0 || py < 0 || px >= grey.cols || py >= grey.rows) return std::nullopt;
        sum += grey.at<std::uint8_t>(py, px);
    }
    return sum / (kSide * kSide);
}

struct Cells {
    Eigen::VectorXd light;            // of cells in the photo, row by row, the white rim included
    Eigen::MatrixXd terms;            // columns: 1, x, y, paper
    std::vector<Eigen::Index> inner;  // those that bear the marker's bits
};

std::optional<Cells> cellsOf(const cv::Mat& grey, const FoundMarker& expected, const cv::Mat& bits) {
    const int cells = bits.rows + 2;
    std::array<cv::Point2f, 4> seen;
    for (std::size_t k = 0; k < 4; ++k) seen[k] = cv::Point2d(expected.cornersPx[k].x, expected.cornersPx[k].y);
    const auto side = static_cast<float>(cells);
    const std::array<cv::Point2f, 4> square{cv::Point2f{0, 0}, {side, 0}, {side, side}, {0, side}};
    const cv::Matx33d pixelFromCells = cv::getPerspectiveTransform(square.data(), seen.data());
    std::vector<Eigen::Vector4d> terms;
    std::vector<double> light;
    Cells result;
    for (int row = -1; row <= cells; ++row) {
        for (int column = -1; column <= cells; ++column) {
            const auto mean = cellMean(grey, pixelFromCells, row, column);
            const bool rim = row < 0 || column < 0 || row == cells || column == cells;
            if (!mean && !rim) return std::nullopt;
            if (!mean) continue;
            const bool data = row > 0 && column > 0 && row < cells - 1 && column < cells - 1;
            const bool paper = rim || (data && bits.at<std::uint8_t>(row - 1, column - 1) != 0);
            if (data) result.inner.push_back(static_cast<Eigen::Index>(light.size()));
            terms.emplace_back(1.0, column - 0.5 * cells, row - 0.5 * cells, paper ? 1.0 : 0.0);
            light.push_back(*mean);
        }
    }
    const auto count = static_cast<Eigen::Index>(light.size());
    result.light = Eigen::Map<Eigen::VectorXd>(light.data(), count);
    result.terms.resize(count, 4);
    for (Eigen::Index i = 0; i < count; ++i) result.terms.row(i) = terms[static_cast<std::size_t>(i)];
    return result;
}

// Whether the print explains the cells, and no other marker of the dictionary their bits as well.
bool asPrinted(const Cells& cells, const cv::aruco::Dictionary& words, int id) {
    const Eigen::Vector4d fit = cells.terms.colPivHouseholderQr().solve(cells.light);
    const auto slope = cells.terms.leftCols<3>();
    const Eigen::Vector3d plain = slope.colPivHouseholderQr().solve(cells.light);
    const double left = (cells.light - cells.terms * fit).squaredNorm();
    const double without = (cells.light - slope * plain).squaredNorm();
    if (fit(3) < kLeastContrast || left > (1.0 - kLeastExplained) * without) return false;
    const int side = words.markerSize;
    cv::Mat1b seen(side, side);
    for (std::size_t i = 0; i < cells.inner.size(); ++i) {
        const Eigen::Index at = cells.inner[i];
        const double halfWay = cells.terms.row(at).head<3>().dot(fit.head<3>()) + 0.5 * fit(3);
        seen(static_cast<int>(i) / side, static_cast<int>(i) % side) = cells.light(at) > halfWay ? 1 : 0;
    }
    const int own = words.getDistanceToId(seen, id, false);
    for (int other = 0; other < words.bytesList.rows; ++other) {
        if (other != id && words.getDistanceToId(seen, other, true) <= own) return false;
    }
    return true;
}

}  // namespace

std::optional<FoundMarker> markerAsExpected(const cv::Mat& grey, const FoundMarker& expected,
                                            const MarkerDictionary& dictionary, const std::optional<PhotoLens>& lens) {
    if (expected.id < 0 || expected.id >= dictionary.markers) return std::nullopt;
    const auto words = cv::aruco::getPredefinedDictionary(dictionary.opencvId);
    const cv::Mat bits = cv::aruco::Dictionary::getBitsFromByteList(words->bytesList.row(expected.id), dictionary.bits);
    const auto cells = cellsOf(grey, expected, bits);
    if (!cells || !asPrinted(*cells, *words, expected.id)) return std::nullopt;
    auto refined = refinedCorners(grey, expected, dictionary.bits + 2, lens);
    if (!refined) return std::nullopt;
    const double side = distance(expected.cornersPx[0], expected.cornersPx[1]);
    for (std::size_t k = 0; k < 4; ++k) {
        if (distance(refined->cornersPx[k], expected.cornersPx[k]) > std::max(kMostOffPx, kMostOffShare * side))
            return std::nullopt;
    }
    return refined;
}

}  // namespace ringrule
