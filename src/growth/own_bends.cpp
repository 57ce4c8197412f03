// SPDX-License-Identifier: GPL-3.0-or-later
#include "growth/own_bends.h"

#include <Eigen/Cholesky>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <vector>

#include "ringrule/statistics/distributions.h"

namespace ringrule {

namespace {

constexpr int kLeastAgesForBend = 4;

/// Chance of so small an F under the spread that is taken (own_bends.h), chosen by the coverage in docs/growth.md.
/// Under six animals: with a half, rates and forecasts of three animals seen four times, growing as von Bertalanffy has
/// it, were covered 90 %, with a tenth 93 %. From there on it is a fifth while little is known of the scatter, and two
/// fifths where much is: with a fifth, straight growth of twelve animals seen twelve times was covered 98 %, with two
/// fifths von Bertalanffy's of twelve seen six times 91 %.
double levelFor(std::size_t animals, double freedom) {
    constexpr std::size_t kMany = 6;
    constexpr double kLittle = 36.0;
    constexpr double kMuch = 72.0;
    if (animals < kMany) {
        return 0.1;
    }
    return 0.2 + 0.2 * std::clamp((freedom - kLittle) / (kMuch - kLittle), 0.0, 1.0);
}

/// Rounds in which own rates are followed; more change no figure in docs/growth.md.
constexpr int kRounds = 6;
/// A rate of one's own is sought between a fifth and five times the group's: beyond, a few sessions tell a straight
/// line or one step, and k is not known.
constexpr double kMostLogRate = 1.6;

/// Weighted sums of one animal, its values less its first, so that digits are not lost.
struct Sums {
    int n = 0;
    double first = 0.0;
    Eigen::Matrix3d xx = Eigen::Matrix3d::Zero();
    Eigen::Vector3d xy = Eigen::Vector3d::Zero();
    double yy = 0.0;
};

/// Sums about the curves as they are: of a rate of one's own the tangent (Lindstrom & Bates 1990, Biometrics 46:673).
std::vector<Sums> sumsOf(std::span<const BendRow> rows, const BendKind& kind,
                         const std::vector<OwnBends::Curve>& about) {
    std::vector<Sums> all(about.size());
    for (const BendRow& row : rows) {
        const OwnBends::Curve& curve = about[static_cast<std::size_t>(row.animal)];
        Sums& sums = all[static_cast<std::size_t>(row.animal)];
        if (sums.n++ == 0) {
            sums.first = row.y;
        }
        Eigen::Vector3d x(row.x[0], row.x[1], row.x[2]);
        double y = row.y - sums.first;
        if (kind.saturation) {
            const auto [at, byRate] = saturated(*kind.saturation, row.sinceDays, curve.logRate);
            x[1] = at;
            x[2] = curve.at[1] * byRate;
            y += x[2] * curve.logRate;
        }
        sums.xx += row.weight * x * x.transpose();
        sums.xy += row.weight * y * x;
        sums.yy += row.weight * y * y;
    }
    return all;
}

/// An animal's own bend beside its own line.
struct Bend {
    double value = 0.0;
    double precision = 0.0;  ///< in units of 1/σ²
    double squares = 0.0;    ///< about its own bent curve
};

std::optional<Bend> bendOf(const Sums& sums) {
    if (sums.n < kLeastAgesForBend) {
        return std::nullopt;
    }
    const Eigen::LDLT<Eigen::Matrix2d> line(sums.xx.topLeftCorner<2, 2>());
    const Eigen::Vector2d third = line.solve(sums.xx.col(2).head<2>());
    const Eigen::Vector2d own = line.solve(sums.xy.head<2>());
    Bend bend;
    bend.precision = sums.xx(2, 2) - third.dot(sums.xx.col(2).head<2>());
    if (!(bend.precision > 1e-9 * sums.xx(2, 2))) {
        return std::nullopt;
    }
    const double onY = sums.xy[2] - third.dot(sums.xy.head<2>());
    bend.value = onY / bend.precision;
    bend.squares = std::max(0.0, sums.yy - own.dot(sums.xy.head<2>()) - onY * bend.value);
    return bend;
}

/// How far bends differ, in units of what a spread between them (in σ²) lets expect, and their common bend.
struct Spread {
    double common = 0.0;
    double weight = 0.0;
    double f = 0.0;
};

Spread spreadOf(const std::vector<Bend>& bends, double spread, double sigma2, bool commonBend) {
    Spread result;
    double onValue = 0.0;
    for (const Bend& bend : bends) {
        const double weight = 1.0 / (spread + 1.0 / bend.precision);
        result.weight += weight;
        onValue += weight * bend.value;
    }
    result.common = commonBend ? onValue / result.weight : 0.0;
    for (const Bend& bend : bends) {
        const double apart = bend.value - result.common;
        result.f += apart * apart / (spread + 1.0 / bend.precision);
    }
    result.f /= sigma2 * (static_cast<double>(bends.size()) - (commonBend ? 1.0 : 0.0));
    return result;
}

/// The spread of bends (in σ²) at which their F is `wanted`; zero when it is less without any.
double spreadFor(const std::vector<Bend>& bends, double wanted, double sigma2, bool commonBend) {
    if (spreadOf(bends, 0.0, sigma2, commonBend).f <= wanted) {
        return 0.0;
    }
    double high = 1.0 / bends.front().precision;
    while (spreadOf(bends, high, sigma2, commonBend).f > wanted && high < 1e12) {
        high *= 4.0;
    }
    double low = 0.0;
    for (int i = 0; i < 50; ++i) {
        const double middle = 0.5 * (low + high);
        (spreadOf(bends, middle, sigma2, commonBend).f > wanted ? low : high) = middle;
    }
    return high;
}

OwnBends::Curve curveOf(const Sums& sums, double penalty, double common) {
    OwnBends::Curve curve;
    curve.told = sums.n >= 2;
    if (!curve.told) {
        return curve;
    }
    Eigen::Matrix3d xx = sums.xx;
    xx(2, 2) += penalty;
    Eigen::Vector3d xy = sums.xy;
    xy[2] += penalty * common;
    const Eigen::Matrix3d inverse = xx.inverse();
    Eigen::Vector3d at = inverse * xy;
    at[0] += sums.first;
    const Eigen::Vector3d byCommon = penalty * inverse.col(2);
    std::copy(at.data(), at.data() + 3, curve.at.begin());
    std::copy(inverse.data(), inverse.data() + 9, curve.inverse.begin());
    std::copy(byCommon.data(), byCommon.data() + 3, curve.byCommon.begin());
    return curve;
}

/// The bends that the sums hold, and what scatters about them.
struct Known {
    std::vector<Bend> bends;
    double variance = 0.0;
    double freedom = 0.0;
    double tested = 0.0;  ///< degrees of freedom of how far bends differ
};

/// Nothing where bends and scatter cannot be told apart.
std::optional<Known> knownFrom(const std::vector<Sums>& all, bool commonBend) {
    Known known;
    double squares = 0.0;
    for (const Sums& sums : all) {
        if (const auto bend = bendOf(sums)) {
            known.bends.push_back(*bend);
            squares += bend->squares;
            known.freedom += sums.n - 3;
        }
    }
    known.tested = static_cast<double>(known.bends.size()) - (commonBend ? 1.0 : 0.0);
    if (known.tested < 1.0 || known.freedom < 2.0 || !(squares > 0.0)) {
        return std::nullopt;
    }
    known.variance = squares / known.freedom;
    return known;
}

/// A bend of a saturating curve becomes the rate at which the next tangent is laid.
void follow(OwnBends::Curve& curve) {
    curve.logRate = std::clamp(curve.at[2], -kMostLogRate, kMostLogRate);
    curve.at[2] = 0.0;
}

}  // namespace

std::array<double, 2> saturated(const Saturation& saturation, double sinceDays, double logRate) {
    const double ran = saturation.perDay * std::exp(logRate) * sinceDays;
    const double left = std::exp(-ran);
    return {(-left - saturation.centre) / saturation.spread, ran * left / saturation.spread};
}

std::optional<OwnBends> ownBends(std::span<const BendRow> rows, std::size_t animals, const BendKind& kind) {
    OwnBends result;
    result.of.assign(animals, {});
    for (OwnBends::Curve& curve : result.of) {
        curve.at[1] = kind.slope;
    }
    for (int round = 0; round < (kind.saturation ? kRounds : 1); ++round) {
        const std::vector<Sums> all = sumsOf(rows, kind, result.of);
        const auto known = knownFrom(all, kind.common);
        if (!known) {
            return std::nullopt;
        }
        const double wanted =
            fisherQuantile(levelFor(known->bends.size(), known->freedom), known->tested, known->freedom);
        const double spread = spreadFor(known->bends, wanted, known->variance, kind.common);
        if (!(spread > 0.0)) {
            return std::nullopt;
        }
        const Spread at = spreadOf(known->bends, spread, known->variance, kind.common);
        result.variance = known->variance;
        result.freedom = known->freedom;
        result.spread = std::sqrt(spread * known->variance);
        result.commonVariance = kind.common ? known->variance / at.weight : 0.0;
        for (std::size_t i = 0; i < all.size(); ++i) {
            result.of[i] = curveOf(all[i], 1.0 / spread, at.common);
            if (kind.saturation) {
                follow(result.of[i]);
            }
        }
    }
    return result;
}

MixedEstimate predictBend(const OwnBends& bends, std::size_t animal, const std::array<double, 3>& x,
                          double errorVariance) {
    const OwnBends::Curve& curve = bends.of[animal];
    const Eigen::Map<const Eigen::Vector3d> at(curve.at.data());
    const Eigen::Map<const Eigen::Matrix3d> inverse(curve.inverse.data());
    const Eigen::Map<const Eigen::Vector3d> point(x.data());
    MixedEstimate result;
    result.value = at.dot(point);
    const double byCommon = point.dot(Eigen::Map<const Eigen::Vector3d>(curve.byCommon.data()));
    result.standardError = std::sqrt(bends.variance * (point.dot(inverse * point) + errorVariance) +
                                     byCommon * byCommon * bends.commonVariance);
    result.degreesOfFreedom = bends.freedom;
    const double half = studentQuantile(0.975, bends.freedom) * result.standardError;
    result.lower95 = result.value - half;
    result.upper95 = result.value + half;
    return result;
}

}  // namespace ringrule
