// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "ringrule/outcome.h"

namespace ringrule {

/// Repeated values of several groups (animals). Rows of one group need not be neighbours.
struct MixedData {
    std::vector<double> y;
    std::vector<double> x;      ///< fixed effects: rows × columns, row by row; hold a column of ones for an intercept
    std::vector<double> slope;  ///< covariate of the random slope, one a row; empty: random intercept only
    std::vector<double> weights;  ///< var(error) = σ²/weight, one a row; empty: all 1
    std::vector<int> group;       ///< one a row: 0, 1, … without gaps
};

enum class MixedCriterion { MaximumLikelihood, RestrictedLikelihood };

/// The model y = Xβ + Z·b + e: b of each group normal with covariance G (intercept, or intercept and slope), e normal
/// with variance σ²/weight. Matrices are stored row by row.
struct MixedFit {
    MixedCriterion criterion = MixedCriterion::RestrictedLikelihood;
    int observations = 0;
    int groups = 0;
    std::vector<double> beta;              ///< p fixed effects
    std::vector<double> betaCovariance;    ///< p × p
    double residualSd = 0.0;               ///< σ
    std::vector<double> randomCovariance;  ///< G, q × q: intercept and slope at covariate 0
    double logLikelihood = 0.0;            ///< of the criterion, constants as in Pinheiro & Bates (2000)
    /// A variance between groups came out as zero, or intercepts and slopes as wholly dependent: the data hold less
    /// variation between groups than the model could tell, and intervals lean on that zero.
    bool boundary = false;

    std::vector<std::vector<double>> groupEffects;  ///< b of each group, q best linear unbiased predictions

    /// What predictions and degrees of freedom rest on, in the fit's own coordinates: X with orthonormal columns, the
    /// slope's covariate centred, y in units of its scatter. H = V/σ²; θ are the entries of the Cholesky factor Λ of
    /// G/σ².
    struct Basis {
        std::vector<double> xTransform;  ///< p × p, own x = xTransform · x
        double slopeCentre = 0.0;
        double slopeUnit = 1.0;
        double yUnit = 1.0;
        double residualVariance = 0.0;
        std::vector<double> theta;                          ///< 1 or 3: intercept; cross; slope
        std::vector<double> betaShape;                      ///< (X'H⁻¹X)⁻¹, p × p
        std::vector<std::vector<double>> precisionByTheta;  ///< −∂(X'H⁻¹X)/∂θ, p × p each
        std::vector<double> parameterCovariance;  ///< of (θ, σ²): twice the inverse Hessian of the deviance
        std::vector<double> zVz;                  ///< Z'H⁻¹Z, 2 × 2 a group
        std::vector<double> zVx;                  ///< Z'H⁻¹X, 2 × p a group
        std::vector<double> effects;              ///< b, 2 a group
    };
    Basis basis;

    [[nodiscard]] std::size_t fixedEffects() const { return beta.size(); }
    [[nodiscard]] std::size_t randomEffects() const { return basis.theta.size() == 3 ? 2 : 1; }
    [[nodiscard]] double interceptSd() const;
    [[nodiscard]] double slopeSd() const;      ///< 0 without random slope
    [[nodiscard]] double correlation() const;  ///< of intercepts and slopes; NaN when one of them does not vary
};

/// The fit by maximum or restricted likelihood, profiled over β and σ² and minimised by Newton steps with exact
/// derivatives over the Cholesky factor of G/σ², which reaches the boundary (Laird & Ware 1982; Bates et al. 2015).
/// Refuses with "too-few-groups" (fewer than two, or no degree of freedom left), "no-repeats" (no group with more
/// values than random effects, so that G and σ² cannot be told apart), "not-identified" (columns of X depend on each
/// other, or the random slope's covariate never varies within a group) or "no-scatter" (the values follow the model
/// exactly). Precondition: sizes agree, all values finite, weights above 0.
[[nodiscard]] Outcome<MixedFit> fitMixed(const MixedData& data,
                                         MixedCriterion criterion = MixedCriterion::RestrictedLikelihood);

/// The same model with each group's own intercept and slope as its own values tell them, drawn to no mean: σ² is the
/// scatter within groups, and predictions of single groups have its degrees of freedom. For few groups, whose spread
/// is not known well enough to lean on. Of the result only `predictGroup` has a meaning. Refuses as `fitMixed` does.
/// Precondition: as there, with a random slope.
[[nodiscard]] Outcome<MixedFit> fitOwnEffects(const MixedData& data);

/// A linear combination of effects with its Satterthwaite degrees of freedom.
struct MixedEstimate {
    double value = 0.0;
    double standardError = 0.0;
    double degreesOfFreedom = 0.0;
    double lower95 = 0.0;
    double upper95 = 0.0;

    [[nodiscard]] double t() const { return value / standardError; }
    [[nodiscard]] double pTwoSided() const;
};

/// Σ weights·β, with degrees of freedom by Satterthwaite's approximation as Kuznetsova, Brockhoff & Christensen (2017)
/// compute it. Precondition: one weight a fixed effect, not all zero.
[[nodiscard]] MixedEstimate contrast(const MixedFit& fit, std::span<const double> weights);

/// Several contrasts at once: F with denominator degrees of freedom by Fai & Cornelius (1996).
struct MixedFTest {
    double f = 0.0;
    double numerator = 0.0;
    double denominator = 0.0;
    double p = 1.0;
};
/// Precondition: rows of one weight a fixed effect each, independent of each other.
[[nodiscard]] MixedFTest jointTest(const MixedFit& fit, const std::vector<std::vector<double>>& rows);

/// Where a prediction is wanted: a row of X and one of Z. The difference of two points (x, intercept 0 and slope alike)
/// gives the change between them.
struct MixedPoint {
    std::vector<double> x;
    double intercept = 1.0;
    double slope = 0.0;  ///< ignored without a random slope
};

/// The mean of all groups at a point: x'β.
[[nodiscard]] MixedEstimate predictMean(const MixedFit& fit, const MixedPoint& at);
/// A further group at a point: x'β with the spread between groups in its interval; `errorVariance` (in σ²) adds that
/// of a single value: 0 for the group's own true value, 1/weight for a value to be measured.
[[nodiscard]] MixedEstimate predictNewGroup(const MixedFit& fit, const MixedPoint& at, double errorVariance);
/// A group of the data at a point: x'β + z'b, with Henderson's (1975) prediction error variance. Precondition: group
/// below `groups`.
[[nodiscard]] MixedEstimate predictGroup(const MixedFit& fit, std::size_t group, const MixedPoint& at,
                                         double errorVariance);
/// Akaike's criterion with the small-sample term, −2·logL + 2k + 2k(k+1)/(n−k−1), k counting β, G and σ² (Hurvich &
/// Tsai 1989); infinite when n ≤ k + 1. Compare fits by maximum likelihood only.
[[nodiscard]] double mixedAicc(const MixedFit& fit);

}  // namespace ringrule
