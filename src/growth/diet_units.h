// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "growth/diet_data.h"
#include "ringrule/growth/diet_effect.h"

namespace ringrule {

/// The unit that was given a diet: an animal, or a whole tank with the mean of its animals.
struct FedUnit {
    std::size_t diet = 0;
    int tank = 0;
    double slope = 0.0;   ///< growth per day
    double weight = 1.0;  ///< how much it counts in a permutation: less when it was seen seldom
};

/// Animals with weights by how well each one's slope is told, the spread between animals included.
[[nodiscard]] std::vector<FedUnit> animalUnits(const DietData& data, const std::vector<OwnSlope>& slopes,
                                               double slopeVariance, double errorVariance);
[[nodiscard]] std::vector<FedUnit> tankUnits(const DietData& data, const std::vector<FedUnit>& animals);

/// Mean and spread of units of each diet: a comparison of plain means with a common variance, for tanks, and for
/// animals when the mixed model sits on its boundary.
struct UnitMeans {
    std::vector<double> mean;
    std::vector<int> count;
    double variance = 0.0;  ///< between units of one diet; 0 when there is no degree of freedom
    double degreesOfFreedom = 0.0;

    [[nodiscard]] std::optional<MixedEstimate> rate(std::size_t diet) const;
    [[nodiscard]] std::optional<MixedEstimate> difference(std::size_t first, std::size_t second) const;
};
[[nodiscard]] UnitMeans unitMeans(std::span<const FedUnit> units, std::size_t diets);

/// Permutation of units over two diets, within tanks when `withinTanks`. Nothing when no split is possible.
[[nodiscard]] std::optional<PermutationResult> permuted(std::span<const FedUnit> units, std::size_t first,
                                                        std::size_t second, bool withinTanks,
                                                        const PermutationOptions& options);

/// What would be enough to tell `difference`. `unitVariance` is that of a unit's slope as seen; of it
/// `lastingVariance` stays however long one watches, and the rest shrinks with sessions `daysBetween` apart, of which
/// `sessions` were held and the error variance of a slope goes with 12/(h²·m(m²−1)).
struct PowerQuestion {
    double difference = 0.0;
    double unitVariance = 0.0;
    double lastingVariance = 0.0;
    double errorVariance = 0.0;  ///< of a single value
    double daysBetween = 0.0;
    int firstUnits = 0;
    int secondUnits = 0;
    bool timeHelps = true;
    double power = 0.8;
};
[[nodiscard]] EnoughToTell enoughToTell(const PowerQuestion& question);

}  // namespace ringrule
