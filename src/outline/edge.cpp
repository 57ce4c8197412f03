// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/edge.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "outline/normal_table.h"

namespace ringrule {
namespace {

/// Slopes beside the step are held near zero with this strength (per sample): they exist, but must not eat the step.
constexpr double kSlopeRidge = 4.0;
constexpr double kShadedRidge = 0.05;  ///< inside a pale round body, which darkens toward its rim, and in deep shadow

/// Weight, in samples, of the light known from nearby for the inside of a thin body.
constexpr double kInsidePrior = 8.0;

/// A Gauss–Newton step this short leaves an error far below what light allows: the steps shrink with the square.
constexpr double kSettledPx = 0.08;

/// Parameters of a step: light inside, light outside, place, slope inside, slope outside.
using Vector5 = std::array<double, 5>;

/// Start values: levels as means of the parts on both sides of the start.
Vector5 startOf(const Profile& profile, const StepPrior& prior) {
    std::array<double, 2> sum{};
    std::array<double, 2> count{};
    const double guard = std::min(1.2 * prior.sigmaPx, 0.4 * std::min(-profile.first(), profile.last()));
    for (std::size_t i = 0; i < profile.light.size(); ++i) {
        const double t = profile.at(i) - prior.startPx;
        if (std::abs(t) < guard) continue;
        const std::size_t side = t > 0.0 ? 1 : 0;
        sum[side] += static_cast<double>(profile.light[i]);
        count[side] += 1.0;
    }
    return {count[0] > 0.0 ? sum[0] / count[0] : static_cast<double>(profile.light.front()),
            count[1] > 0.0 ? sum[1] / count[1] : static_cast<double>(profile.light.back()), prior.startPx, 0.0, 0.0};
}

/// Normal equations, lower triangle row by row, with the right side.
struct Equations {
    std::array<double, 15> normal{};
    Vector5 right{};
    double squares = 0.0;
};

constexpr std::size_t diagonal(std::size_t k) {
    return k * (k + 1) / 2 + k;
}

/// Normal equations of the step model about its parameters.
Equations equationsAt(const Profile& profile, const StepPrior& prior, const Vector5& p) {
    const NormalTable& table = normalTable();
    Equations eq;
    const double sigma = prior.sigmaPx;
    const double width = p[2] - prior.oppositePx;
    const bool thin = width < 6.0 * sigma;
    const double perSigma = 1.0 / sigma;
    const double step = p[1] - p[0];
    const double stepPerSigma = -step * perSigma;
    // Written out: this is where the program spends its time. A sample has a slope term on its own side only.
    double n00 = 0.0, n10 = 0.0, n11 = 0.0, n20 = 0.0, n21 = 0.0, n22 = 0.0;
    double n30 = 0.0, n31 = 0.0, n32 = 0.0, n33 = 0.0, n40 = 0.0, n41 = 0.0, n42 = 0.0, n44 = 0.0;
    double r0 = 0.0, r1 = 0.0, r2 = 0.0, r3 = 0.0, r4 = 0.0, squares = 0.0;
    double t = profile.first() - p[2];
    for (const float light : profile.light) {
        const NormalTable::Both& normal = table.at(t * perSigma);
        auto share = static_cast<double>(normal.share);
        if (thin) share += 1.0 - static_cast<double>(table.at((t + width) * perSigma).share);
        const double inner = 1.0 - share;
        const double place = stepPerSigma * static_cast<double>(normal.density);
        const double residual = static_cast<double>(light) - (p[0] + step * share + (t < 0.0 ? p[3] : p[4]) * t);
        n00 += inner * inner, n10 += share * inner, n11 += share * share;
        n20 += place * inner, n21 += place * share, n22 += place * place;
        r0 += inner * residual, r1 += share * residual, r2 += place * residual;
        squares += residual * residual;
        if (t < 0.0) {
            n30 += t * inner, n31 += t * share, n32 += t * place, n33 += t * t, r3 += t * residual;
        } else {
            n40 += t * inner, n41 += t * share, n42 += t * place, n44 += t * t, r4 += t * residual;
        }
        t += profile.stepPx;
    }
    eq.normal = {n00, n10, n11, n20, n21, n22, n30, n31, n32, n33, n40, n41, n42, 0.0, n44};
    eq.right = {r0, r1, r2, r3, r4};
    eq.squares = squares;
    const double square = profile.last() * profile.last();
    const std::array ridges{(prior.shadedRim || prior.inShadow ? kShadedRidge : kSlopeRidge) * square,
                            (prior.inShadow ? kShadedRidge : kSlopeRidge) * square};
    for (const std::size_t k : {std::size_t{3}, std::size_t{4}}) {
        eq.normal[diagonal(k)] += ridges[k - 3];
        eq.right[k] -= ridges[k - 3] * p[k];
    }
    if (thin && prior.insideLight >= 0.0) {
        eq.normal[0] += kInsidePrior;
        eq.right[0] += kInsidePrior * (prior.insideLight - p[0]);
    }
    for (std::size_t k = 0; k < 5; ++k) eq.normal[diagonal(k)] += 1e-9;
    return eq;
}

/// Solution by Cholesky's decomposition; false when the equations are singular.
bool solve(Equations& eq, Vector5& x) {
    auto& l = eq.normal;
    for (std::size_t r = 0; r < 5; ++r) {
        for (std::size_t c = 0; c <= r; ++c) {
            double sum = l[r * (r + 1) / 2 + c];
            for (std::size_t k = 0; k < c; ++k) sum -= l[r * (r + 1) / 2 + k] * l[c * (c + 1) / 2 + k];
            if (r == c) {
                if (!(sum > 0.0)) return false;
                l[diagonal(r)] = std::sqrt(sum);
            } else {
                l[r * (r + 1) / 2 + c] = sum / l[diagonal(c)];
            }
        }
    }
    for (std::size_t r = 0; r < 5; ++r) {
        double sum = eq.right[r];
        for (std::size_t k = 0; k < r; ++k) sum -= l[r * (r + 1) / 2 + k] * x[k];
        x[r] = sum / l[diagonal(r)];
    }
    for (std::size_t r = 5; r-- > 0;) {
        double sum = x[r];
        for (std::size_t k = r + 1; k < 5; ++k) sum -= l[k * (k + 1) / 2 + r] * x[k];
        x[r] = sum / l[diagonal(r)];
    }
    return true;
}

/// Normalised light by distance from many edges, a median each quarter pixel; empty when there are too few.
Profile pooledProfile(std::span<const Profile> profiles, std::span<const StepEdge> edges) {
    constexpr double kBin = 0.25;
    constexpr int kHalf = 24;
    constexpr std::size_t kLeast = 15;
    std::array<std::vector<float>, 2 * kHalf + 1> bins;
    for (std::size_t k = 0; k < profiles.size(); ++k) {
        const StepEdge& edge = edges[k];
        if (!edge.found) continue;
        for (std::size_t i = 0; i < profiles[k].light.size(); ++i) {
            const long bin = std::lround((profiles[k].at(i) - edge.atPx) / kBin) + kHalf;
            if (bin < 0 || bin > 2 * kHalf) continue;
            const auto light = static_cast<double>(profiles[k].light[i]);
            const double normalised = (light - edge.inside) / (edge.outside - edge.inside);
            bins[static_cast<std::size_t>(bin)].push_back(static_cast<float>(normalised));
        }
    }
    const auto count = [&bins](int i) { return bins[static_cast<std::size_t>(i) + kHalf].size(); };
    Profile pooled;
    pooled.stepPx = kBin;
    while (pooled.inner < kHalf && count(pooled.inner + 1) > kLeast && count(-pooled.inner - 1) > kLeast) {
        ++pooled.inner;
    }
    if (count(0) == 0) return {};
    for (int i = kHalf - pooled.inner; i <= kHalf + pooled.inner; ++i) {
        auto& bin = bins[static_cast<std::size_t>(i)];
        std::nth_element(bin.begin(), bin.begin() + std::ssize(bin) / 2, bin.end());
        pooled.light.push_back(bin[bin.size() / 2]);
    }
    return pooled;
}

}  // namespace

float lightAt(const cv::Mat& grey, const Tone& tone, PixelPoint at) {
    const double x = std::clamp(at.x, 0.0, grey.cols - 1.001);
    const double y = std::clamp(at.y, 0.0, grey.rows - 1.001);
    const int ix = static_cast<int>(x);
    const int iy = static_cast<int>(y);
    const auto tx = static_cast<float>(x - ix);
    const auto ty = static_cast<float>(y - iy);
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
    profile.light.resize(2 * static_cast<std::size_t>(reach) + 1);
    for (std::size_t i = 0; i < profile.light.size(); ++i) {
        profile.light[i] = lightAt(grey, tone, at + outward * profile.at(i));
    }
    return profile;
}

StepEdge fitStep(const Profile& profile, const StepPrior& prior) {
    Vector5 p = startOf(profile, prior);
    StepEdge edge;
    const double longest = 1.0 + 0.5 * prior.sigmaPx;
    const double margin = 0.5 * prior.sigmaPx;
    for (int round = 0; round < 8; ++round) {
        Equations equations = equationsAt(profile, prior, p);
        Vector5 change{};
        if (!solve(equations, change)) return edge;
        change[2] = std::clamp(change[2], -longest, longest);
        for (std::size_t k = 0; k < 5; ++k) p[k] += change[k];
        edge.rms = std::sqrt(equations.squares / static_cast<double>(profile.light.size()));
        if (p[2] < profile.first() + margin || p[2] > profile.last() - margin) return edge;
        if (round > 0 && std::abs(change[2]) < kSettledPx) break;
    }
    edge.atPx = p[2];
    edge.inside = p[0];
    edge.outside = p[1];
    edge.found = p[1] - p[0] >= prior.leastContrast;
    return edge;
}

double pooledBlur(std::span<const Profile> profiles, std::span<const StepEdge> edges) {
    const Profile pooled = pooledProfile(profiles, edges);
    if (pooled.inner < 6) return 0.0;
    const auto rmsAt = [&pooled](double logSigma) {
        const StepEdge edge = fitStep(pooled, {.sigmaPx = std::exp(logSigma), .leastContrast = 0.3});
        return edge.found ? edge.rms : 1e9;
    };
    double step = 0.35;
    double best = 0.0;
    double bestRms = rmsAt(best);
    while (step > 0.02) {
        const double lower = rmsAt(best - step);
        const double higher = rmsAt(best + step);
        if (std::min(lower, higher) < bestRms) {
            best += lower < higher ? -step : step;
            bestRms = std::min(lower, higher);
        } else {
            step *= 0.4;
        }
        if (std::abs(best) > 1.8) break;
    }
    return bestRms < 1e8 ? std::exp(best) : 0.0;
}

}  // namespace ringrule
