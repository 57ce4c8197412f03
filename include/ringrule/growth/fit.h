// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <Eigen/Core>
#include <optional>
#include <span>
#include <vector>

#include "ringrule/growth/model.h"
#include "ringrule/outcome.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// A length at an age. `weight` counts relative to the others (1/sd², or 1 for all alike).
struct GrowthPoint {
    double ageDays = 0.0;
    double lengthMm = 0.0;
    double weight = 1.0;
};

struct GrowthFitOptions {
    /// Von Bertalanffy's t0 held at this age; absent: fitted.
    std::optional<double> heldT0Days;
};

/// A fitted growth curve.
struct GrowthFit {
    GrowthModel model = GrowthModel::Linear;
    std::vector<double> parameters;
    Eigen::MatrixXd covariance;
    double residualSdMm = 0.0;  ///< of a point of weight 1
    double residualSumOfSquares = 0.0;
    int points = 0;
    int degreesOfFreedom = 0;
    double aicc = 0.0;  ///< n·ln(RSS/n) + 2k + 2k(k+1)/(n−k−1), k counting the residual variance (Hurvich & Tsai 1989)
    double youngestDays = 0.0;  ///< ages between which the curve rests on data
    double oldestDays = 0.0;

    [[nodiscard]] double lengthAtDays(double ageDays) const;
    /// The curve at an age; its random part is the standard error of the mean curve (delta method).
    [[nodiscard]] Estimate meanAt(double ageDays) const;
    /// A further animal at an age: the curve with the scatter of single animals added.
    [[nodiscard]] Estimate newAnimalAt(double ageDays) const;
    /// Half-widths of 95 % intervals by Student's t, for bands in a chart.
    [[nodiscard]] double meanBandMm(double ageDays) const;
    [[nodiscard]] double newAnimalBandMm(double ageDays) const;
    [[nodiscard]] double asymptoteMm() const { return asymptote(model, parameters); }
};

/// The least-squares curve of one model. Refuses with "too-few-ages" (fewer different ages than parameters, or all
/// equal), or as `solveLeastSquares` does.
[[nodiscard]] Outcome<GrowthFit> fitGrowth(std::span<const GrowthPoint> points, GrowthModel model,
                                           const GrowthFitOptions& options = {});

/// Every model that could be fitted, the one of least AICc first.
struct GrowthChoice {
    std::vector<GrowthFit> fits;  ///< never empty
    std::vector<std::pair<GrowthModel, Refusal>> notFitted;

    [[nodiscard]] const GrowthFit& best() const { return fits.front(); }
};

/// The models fitted and ranked by AICc; models with too few points for an AICc are left out. Refuses when none fits.
[[nodiscard]] Outcome<GrowthChoice> chooseGrowth(std::span<const GrowthPoint> points,
                                                 std::span<const GrowthModel> models = allGrowthModels());

}  // namespace ringrule
