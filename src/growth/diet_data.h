// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "ringrule/growth/diet_effect.h"

namespace ringrule {

/// The animals of a comparison that can tell something, with diets and tanks numbered from 0.
struct DietData {
    struct Animal {
        std::size_t diet = 0;
        int tank = 0;
        std::vector<DayLength> lengths;  ///< in order of day, one a day
    };
    std::vector<Animal> animals;
    std::vector<std::int64_t> diets;
    std::vector<std::vector<int>> tanksOf;  ///< of each diet
    int tanks = 0;
    bool ownTanks = false;   ///< every tank held one diet
    bool ownSlopes = false;  ///< three animals or more were seen on three days: slopes can differ between animals
    bool weighted = false;
    double meanDay = 0.0;
    double unitDays = 1.0;  ///< the covariate is (day − meanDay)/unitDays
    std::size_t days = 0;   ///< different days
    std::vector<std::string> cautions;
};

/// Refuses as `compareDietEffects` says.
[[nodiscard]] Outcome<DietData> dietData(std::span<const DietAnimal> animals);

/// A model of the data.
struct DietDesign {
    EffectUnit unit = EffectUnit::MmPerDay;
    bool curved = false;
    bool tankBlocks = false;  ///< tanks have intercepts and slopes of their own
};

/// Columns: an intercept a diet, a slope a diet, then the common bend, then intercepts and slopes of all tanks but the
/// first.
[[nodiscard]] MixedData mixedDataOf(const DietData& data, const DietDesign& design);

/// An animal's own slope (per day, the common bend taken off), and its variance by scatter alone in units of σ².
struct OwnSlope {
    double value = 0.0;
    double errorVariance = 0.0;
};
[[nodiscard]] std::vector<OwnSlope> ownSlopes(const DietData& data, const DietDesign& design, double bend);

}  // namespace ringrule
