// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/edge.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <Eigen/Dense>

#include "outline/normal_table.h"

namespace ringrule {
namespace {

/// Slopes beside the step are held near zero with this strength (per sample): they exist, but must not eat the step.
constexpr double kSlopeRidge = 4.0;

/// Weight, in samples, of the light known from nearby for the inside of a thin body.
constexpr double kInsidePrior = 8.0;

using Vector5 = Eigen::Matrix<double, 5, 1>;
using Matrix5 = Eigen::Matrix<double, 5, 5>;

/// Start values: levels as means of the parts on both sides of the start.
Vector5 startOf(const Profile& profile, const StepPrior& prior) {
    double sum[2] = {0.0, 0.0};
    double count[2] = {0.0, 0.0};
    const double guard = std::min(1.2 * prior.sigmaPx, 0.4 * std::min(-profile.first(), profile.last()));
    for (std::size_t i = 0; i < profile.light.size(); ++i) {
        const double t = profile.at(i) - prior.startPx;
        if (std::abs(t) < guard) continue;
        const int side = t > 0.0 ? 1 : 0;
        sum[side] += static_cast<double>(profile.light[i]);
        count[side] += 1.0;
    }
    Vector5 start = Vector5::Zero();
    start[0] = count[0] > 0.0 ? sum[0] / count[0] : static_cast<double>(profile.light.front());
    start[1] = count[1] > 0.0 ? sum[1] / count[1] : static_cast<double>(profile.light.back());
    start[2] = prior.startPx;
    return start;
}

struct Equations {
    Matrix5 normal = Matrix5::Zero();
    Vector5 right = Vector5::Zero();
    double squares = 0.0;
};

/// Normal equations of the step model about the parameters: inside, outside, place, slope inside, slope outside.
Equations equationsAt(const Profile& profile, const StepPrior& prior, const Vector5& p) {
    const NormalTable& table = normalTable();
    Equations equations;
    const double sigma = prior.sigmaPx;
    const double width = p[2] - prior.oppositePx;
    const bool thin = width < 6.0 * sigma;
    for (std::size_t i = 0; i < profile.light.size(); ++i) {
        const double t = profile.at(i) - p[2];
        auto [share, density] = table.at(t / sigma);
        if (thin) share += 1.0 - table.at((t + width) / sigma).share;
        const double before = std::min(0.0, t);
        const double after = std::max(0.0, t);
        const double model = p[0] + (p[1] - p[0]) * share + p[3] * before + p[4] * after;
        const double residual = static_cast<double>(profile.light[i]) - model;
        Vector5 row;
        row << 1.0 - share, share, -(p[1] - p[0]) * density / sigma, before, after;
        equations.normal.noalias() += row * row.transpose();
        equations.right.noalias() += row * residual;
        equations.squares += residual * residual;
    }
    const double ridge = kSlopeRidge * profile.last() * profile.last();
    for (const int k : {3, 4}) {
        equations.normal(k, k) += ridge;
        equations.right[k] -= ridge * p[k];
    }
    if (thin && prior.insideLight >= 0.0) {
        equations.normal(0, 0) += kInsidePrior;
        equations.right[0] += kInsidePrior * (prior.insideLight - p[0]);
    }
    equations.normal(2, 2) += 1e-9;
    return equations;
}

}  // namespace

float lightAt(const cv::Mat& grey, const Tone& tone, PixelPoint at) {
    const double x = std::clamp(at.x, 0.0, grey.cols - 1.001);
    const double y = std::clamp(at.y, 0.0, grey.rows - 1.001);
    const int ix = static_cast<int>(x);
    const int iy = static_cast<int>(y);
    const float tx = static_cast<float>(x - ix);
    const float ty = static_cast<float>(y - iy);
    const unsigned char* top = grey.ptr<unsigned char>(iy) + ix;
    const unsigned char* bottom = grey.ptr<unsigned char>(iy + 1) + ix;
    const float above = tone.lightOf[top[0]] * (1.0F - tx) + tone.lightOf[top[1]] * tx;
    const float below = tone.lightOf[bottom[0]] * (1.0F - tx) + tone.lightOf[bottom[1]] * tx;
    return above * (1.0F - ty) + below * ty;
}

Profile sampleProfile(const cv::Mat& grey, const Tone& tone, PixelPoint at, PixelPoint outward, double stepPx,
                      int reach) {
    Profile profile;
    profile.stepPx = stepPx;
    profile.inner = reach;
    profile.light.reserve(static_cast<std::size_t>(2 * reach + 1));
    for (int i = -reach; i <= reach; ++i) profile.light.push_back(lightAt(grey, tone, at + outward * (i * stepPx)));
    return profile;
}

StepEdge fitStep(const Profile& profile, const StepPrior& prior) {
    Vector5 p = startOf(profile, prior);
    StepEdge edge;
    const double longest = 1.0 + 0.5 * prior.sigmaPx;
    for (int round = 0; round < 8; ++round) {
        const Equations equations = equationsAt(profile, prior, p);
        Vector5 change = equations.normal.ldlt().solve(equations.right);
        if (!change.allFinite()) return edge;
        change[2] = std::clamp(change[2], -longest, longest);
        p += change;
        edge.rms = std::sqrt(equations.squares / static_cast<double>(profile.light.size()));
        const double margin = 0.5 * prior.sigmaPx;
        if (p[2] < profile.first() + margin || p[2] > profile.last() - margin) return edge;
        if (round > 0 && std::abs(change[2]) < 0.003) break;
    }
    edge.atPx = p[2];
    edge.inside = p[0];
    edge.outside = p[1];
    edge.found = p[1] - p[0] >= prior.leastContrast;
    return edge;
}

double pooledBlur(std::span<const Profile> profiles, std::span<const StepEdge> edges) {
    constexpr double kBin = 0.25;
    constexpr int kHalf = 24;
    std::array<std::vector<float>, 2 * kHalf + 1> bins;
    for (std::size_t k = 0; k < profiles.size(); ++k) {
        const StepEdge& edge = edges[k];
        if (!edge.found) continue;
        for (std::size_t i = 0; i < profiles[k].light.size(); ++i) {
            const double t = profiles[k].at(i) - edge.atPx;
            const long bin = std::lround(t / kBin) + kHalf;
            if (bin < 0 || bin > 2 * kHalf) continue;
            const double normalised =
                (static_cast<double>(profiles[k].light[i]) - edge.inside) / (edge.outside - edge.inside);
            bins[static_cast<std::size_t>(bin)].push_back(static_cast<float>(normalised));
        }
    }
    Profile pooled;
    pooled.stepPx = kBin;
    int reach = 0;
    while (reach < kHalf && bins[static_cast<std::size_t>(kHalf + reach + 1)].size() > 15 &&
           bins[static_cast<std::size_t>(kHalf - reach - 1)].size() > 15) {
        ++reach;
    }
    if (reach < 6) return 0.0;
    pooled.inner = reach;
    for (int i = kHalf - reach; i <= kHalf + reach; ++i) {
        auto& bin = bins[static_cast<std::size_t>(i)];
        if (bin.empty()) return 0.0;
        std::nth_element(bin.begin(), bin.begin() + std::ssize(bin) / 2, bin.end());
        pooled.light.push_back(bin[bin.size() / 2]);
    }
    double best = 0.0;
    double bestRms = 1e9;
    for (double sigma = 0.3; sigma < 5.0; sigma *= 1.06) {
        const StepEdge edge = fitStep(pooled, {.sigmaPx = sigma, .leastContrast = 0.3});
        if (edge.found && edge.rms < bestRms) {
            bestRms = edge.rms;
            best = sigma;
        }
    }
    return best;
}

}  // namespace ringrule
