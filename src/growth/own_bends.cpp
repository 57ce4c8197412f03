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
/// Chance of so small an F under the spread that is taken (own_bends.h), chosen by coverage: with one half, rates and
/// forecasts of three animals seen four times, growing as von Bertalanffy has it, were covered 90 %, with a tenth 93 %.
/// With a tenth, rates of twelve straight ones seen twelve times were covered 98 %, with a fifth 97 %.
double levelFor(std::size_t animals) {
    constexpr std::size_t kMany = 6;
    return animals < kMany ? 0.1 : 0.2;
}

/// Weighted sums of one animal, its values less its first, so that digits are not lost.
struct Sums {
    int n = 0;
    double first = 0.0;
    Eigen::Matrix3d xx = Eigen::Matrix3d::Zero();
    Eigen::Vector3d xy = Eigen::Vector3d::Zero();
    double yy = 0.0;
};

std::vector<Sums> sumsOf(std::span<const BendRow> rows, std::size_t animals) {
    std::vector<Sums> all(animals);
    for (const BendRow& row : rows) {
        Sums& sums = all[static_cast<std::size_t>(row.animal)];
        if (sums.n++ == 0) {
            sums.first = row.y;
        }
        const Eigen::Vector3d x(row.x[0], row.x[1], row.x[2]);
        sums.xx += row.weight * x * x.transpose();
        sums.xy += row.weight * (row.y - sums.first) * x;
        sums.yy += row.weight * (row.y - sums.first) * (row.y - sums.first);
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

}  // namespace

std::optional<OwnBends> ownBends(std::span<const BendRow> rows, std::size_t animals, bool commonBend) {
    const std::vector<Sums> all = sumsOf(rows, animals);
    std::vector<Bend> bends;
    OwnBends result;
    double squares = 0.0;
    for (const Sums& sums : all) {
        if (const auto bend = bendOf(sums)) {
            bends.push_back(*bend);
            squares += bend->squares;
            result.freedom += sums.n - 3;
        }
    }
    const double tested = static_cast<double>(bends.size()) - (commonBend ? 1.0 : 0.0);
    if (tested < 1.0 || result.freedom < 2.0 || !(squares > 0.0)) {
        return std::nullopt;
    }
    result.variance = squares / result.freedom;
    const double spread =
        spreadFor(bends, fisherQuantile(levelFor(bends.size()), tested, result.freedom), result.variance, commonBend);
    if (!(spread > 0.0)) {
        return std::nullopt;
    }
    const Spread known = spreadOf(bends, spread, result.variance, commonBend);
    result.spread = std::sqrt(spread * result.variance);
    result.commonVariance = commonBend ? result.variance / known.weight : 0.0;
    for (const Sums& sums : all) {
        result.of.push_back(curveOf(sums, 1.0 / spread, known.common));
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
