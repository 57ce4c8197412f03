// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace ringrule {

/// Shapes of growth in length L with age t in days; parameters in the order given.
enum class GrowthModel {
    Linear,          ///< L = L0 + r·t; L0, r
    Exponential,     ///< L = L0·e^(g·t); L0, g
    VonBertalanffy,  ///< L = L∞·(1 − e^(−K(t − t0))); L∞, K, t0 (von Bertalanffy 1938)
    Gompertz,        ///< L = A·e^(−b·e^(−k·t)); A, b, k (Gompertz 1825)
    Logistic,        ///< L = A / (1 + e^(−k(t − ti))); A, k, ti (Verhulst 1838)
};

/// Stable id, e.g. "von-bertalanffy".
[[nodiscard]] std::string_view growthModelName(GrowthModel model);

/// All models, simplest first.
[[nodiscard]] const std::vector<GrowthModel>& allGrowthModels();

/// Number of parameters.
[[nodiscard]] int parameterCount(GrowthModel model);

/// Length (in the unit of the parameters) at an age in days. Precondition: `parameterCount(model)` parameters.
[[nodiscard]] double lengthAt(GrowthModel model, std::span<const double> parameters, double ageDays);

/// Length per day at an age.
[[nodiscard]] double rateAt(GrowthModel model, std::span<const double> parameters, double ageDays);

/// The length that the model approaches, or infinity for models that never level off.
[[nodiscard]] double asymptote(GrowthModel model, std::span<const double> parameters);

}  // namespace ringrule
