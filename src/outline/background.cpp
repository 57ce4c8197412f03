// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/background.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

#include <Eigen/Dense>

namespace ringrule {
namespace {

using Terms = Eigen::Matrix<double, 10, 1>;

Terms termsAt(double x, double y) {
    Terms terms;
    terms << 1.0, x, y, x * x, x * y, y * y, x * x * x, x * x * y, x * y * y, y * y * y;
    return terms;
}

struct Block {
    Terms terms;
    double light = 0.0;
    bool kept = true;
};

double scaledX(const cv::Size& size, double x) {
    return 2.0 * x / std::max(1, size.width - 1) - 1.0;
}
double scaledY(const cv::Size& size, double y) {
    return 2.0 * y / std::max(1, size.height - 1) - 1.0;
}

bool allUsable(const cv::Mat1b& block) {
    for (int y = 0; y < block.rows; ++y) {
        const auto* row = block.ptr<unsigned char>(y);
        if (std::find(row, row + block.cols, 0) != row + block.cols) return false;
    }
    return true;
}

std::vector<Block> blocksOf(const cv::Mat1f& light, const cv::Mat1b& usable) {
    const int side = std::max(2, std::max(light.cols, light.rows) / 56);
    std::vector<Block> blocks;
    for (int y = 0; y + side <= light.rows; y += side) {
        for (int x = 0; x + side <= light.cols; x += side) {
            if (!allUsable(usable(cv::Rect(x, y, side, side)))) continue;
            float sum = 0.0F;
            for (int j = y; j < y + side; ++j) sum = std::accumulate(&light(j, x), &light(j, x) + side, sum);
            const double half = 0.5 * (side - 1);
            blocks.push_back({termsAt(scaledX(light.size(), x + half), scaledY(light.size(), y + half)),
                              static_cast<double>(sum) / (side * side)});
        }
    }
    return blocks;
}

Terms solved(const std::vector<Block>& blocks) {
    Eigen::Matrix<double, 10, 10> normal = Eigen::Matrix<double, 10, 10>::Identity() * 1e-6;
    Terms right = Terms::Zero();
    for (const Block& block : blocks) {
        if (!block.kept) continue;
        for (Eigen::Index r = 0; r < 10; ++r) {
            for (Eigen::Index c = 0; c <= r; ++c) normal(r, c) += block.terms[r] * block.terms[c];
        }
        right += block.terms * block.light;
    }
    return normal.selfadjointView<Eigen::Lower>().ldlt().solve(right);
}

/// Starts without the darker half of each neighbourhood's likely range, so that a large animal cannot pull the fit
/// down.
void keepBright(std::vector<Block>& blocks) {
    std::vector<double> values;
    values.reserve(blocks.size());
    for (const Block& block : blocks) values.push_back(block.light);
    const auto middle = values.begin() + std::ssize(values) / 2;
    std::nth_element(values.begin(), middle, values.end());
    for (Block& block : blocks) block.kept = block.light > 0.7 * *middle;
}

}  // namespace

double Background::at(double x, double y) const {
    const Terms terms = termsAt(scaledX(size, x), scaledY(size, y));
    double sum = 0.0;
    for (std::size_t i = 0; i < 10; ++i) sum += coefficients[i] * terms[static_cast<Eigen::Index>(i)];
    return std::max(sum, 1e-4);
}

Background fitBackground(const cv::Mat1f& light, const cv::Mat1b& usable) {
    Background background;
    background.size = light.size();
    std::vector<Block> blocks = blocksOf(light, usable);
    if (blocks.size() < 40) return background;
    keepBright(blocks);
    Terms fit = solved(blocks);
    for (int round = 0; round < 6; ++round) {
        std::vector<double> above;
        for (const Block& block : blocks) {
            const double residual = block.light - block.terms.dot(fit);
            if (block.kept && residual > 0.0) above.push_back(residual);
        }
        if (above.size() < 15) return background;
        const auto middle = above.begin() + std::ssize(above) / 2;
        std::nth_element(above.begin(), middle, above.end());
        const double sd = std::max(*middle / 0.6745, 1e-4);
        bool changed = false;
        for (Block& block : blocks) {
            const double residual = block.light - block.terms.dot(fit);
            const bool kept = residual > -2.5 * sd && residual < 4.0 * sd;
            changed = changed || kept != block.kept;
            block.kept = kept;
        }
        background.relativeSd = sd / std::max(fit[0], 1e-4);
        if (!changed) break;
        fit = solved(blocks);
    }
    for (std::size_t i = 0; i < 10; ++i) background.coefficients[i] = fit[static_cast<Eigen::Index>(i)];
    background.fitted = fit.allFinite() && fit[0] > 1e-3;
    return background;
}

cv::Mat1f dividedBy(const cv::Mat1f& light, const Background& background) {
    cv::Mat1f ratio(light.size());
    const auto& c = background.coefficients;
    const auto last = static_cast<float>(std::max(1, light.cols - 1));
    const Eigen::ArrayXf x =
        Eigen::ArrayXf::LinSpaced(light.cols, 0.0F, static_cast<float>(light.cols - 1)) * (2.0F / last) - 1.0F;
    for (int row = 0; row < light.rows; ++row) {
        const double y = scaledY(light.size(), row);
        const auto c0 = static_cast<float>(c[0] + y * (c[2] + y * (c[5] + y * c[9])));
        const auto c1 = static_cast<float>(c[1] + y * (c[4] + y * c[8]));
        const auto c2 = static_cast<float>(c[3] + y * c[7]);
        const auto c3 = static_cast<float>(c[6]);
        const Eigen::Map<const Eigen::ArrayXf> from(light.ptr<float>(row), light.cols);
        Eigen::Map<Eigen::ArrayXf> to(ratio.ptr<float>(row), light.cols);
        to = from / (c0 + x * (c1 + x * (c2 + x * c3))).max(1e-4F);
    }
    return ratio;
}

}  // namespace ringrule
