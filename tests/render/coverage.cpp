// SPDX-License-Identifier: GPL-3.0-or-later
#include "coverage.h"

#include <algorithm>
#include <cmath>

namespace render {

namespace {

// Adds one edge piece that lies inside a single cell: `rise` in y, mean place `xMean` in x.
void addPiece(cv::Mat1d& sums, cv::Point2d from, cv::Point2d to) {
    const double rise = to.y - from.y;
    const double xMean = 0.5 * (from.x + to.x);
    const int row = std::clamp(static_cast<int>(std::floor(0.5 * (from.y + to.y))), 0, sums.rows - 1);
    const int column = std::clamp(static_cast<int>(std::floor(xMean)), 0, sums.cols - 2);
    const double right = xMean - column;
    sums(row, column) += rise * (1.0 - right);
    sums(row, column + 1) += rise * right;
}

// Cuts an edge at every cell border that it crosses.
void addEdge(cv::Mat1d& sums, cv::Point2d from, cv::Point2d to) {
    std::vector<double> cuts{0.0, 1.0};
    const auto cutAlong = [&cuts](double a, double b) {
        const double low = std::min(a, b);
        const double high = std::max(a, b);
        for (double line = std::floor(low) + 1.0; line < high; line += 1.0) {
            cuts.push_back((line - a) / (b - a));
        }
    };
    cutAlong(from.x, to.x);
    cutAlong(from.y, to.y);
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 1; i < cuts.size(); ++i) {
        addPiece(sums, from + (to - from) * cuts[i - 1], from + (to - from) * cuts[i]);
    }
}

cv::Rect boundsOf(const std::vector<cv::Point2d>& polygon) {
    cv::Point2d low = polygon.front();
    cv::Point2d high = polygon.front();
    for (const cv::Point2d& point : polygon) {
        low = {std::min(low.x, point.x), std::min(low.y, point.y)};
        high = {std::max(high.x, point.x), std::max(high.y, point.y)};
    }
    const cv::Point corner(static_cast<int>(std::floor(low.x)) - 1, static_cast<int>(std::floor(low.y)) - 1);
    const cv::Point end(static_cast<int>(std::ceil(high.x)) + 3, static_cast<int>(std::ceil(high.y)) + 3);
    return {corner, end};
}

}  // namespace

Coverage coverageOf(const std::vector<cv::Point2d>& polygon) {
    if (polygon.size() < 3) {
        return {};
    }
    Coverage result;
    result.bounds = boundsOf(polygon);
    cv::Mat1d sums(result.bounds.size(), 0.0);
    const cv::Point2d shift(0.5 - result.bounds.x, 0.5 - result.bounds.y);
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        addEdge(sums, polygon[i] + shift, polygon[(i + 1) % polygon.size()] + shift);
    }
    result.share.create(result.bounds.size());
    for (int row = 0; row < sums.rows; ++row) {
        double sum = 0.0;
        for (int column = 0; column < sums.cols; ++column) {
            sum += sums(row, column);
            result.share(row, column) = static_cast<float>(std::min(1.0, std::abs(sum)));
        }
    }
    return result;
}

Coverage united(const Coverage& first, const Coverage& second) {
    if (first.share.empty() || second.share.empty()) {
        return first.share.empty() ? second : first;
    }
    Coverage result;
    result.bounds = first.bounds | second.bounds;
    cv::Mat1f open(result.bounds.size(), 1.0F);
    for (const Coverage* part : {&first, &second}) {
        cv::Mat1f window = open(part->bounds - result.bounds.tl());
        cv::multiply(window, 1.0F - part->share, window);
    }
    cv::subtract(1.0, open, result.share);
    return result;
}

}  // namespace render
