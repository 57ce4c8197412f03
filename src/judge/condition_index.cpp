// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/condition_index.h"

#include <cmath>

#include "judge/condition.h"

namespace ringrule {
namespace {

Estimate indexOf(const ConditionSeries& series) {
    if (series.points.empty() || series.points.back().mates == 0) return {};
    const ConditionPoint& last = series.points.back();
    const double index = 100.0 * std::exp(last.gap);
    return {index, index * last.sd, 0.0};
}

}  // namespace

std::vector<Estimate> conditionIndices(std::span<const AnimalHistory> animals, Date on, const JudgeOptions& options) {
    const Casebook book(animals, on, options);
    std::vector<Estimate> indices;
    indices.reserve(animals.size());
    for (std::size_t k = 0; k < animals.size(); ++k) {
        const bool seen = !book.file(k).sound.empty();
        indices.push_back(
            seen ? indexOf(conditionSeries(book, k, book.file(k).sound.back()->on, ConditionMeasure::Depth))
                 : Estimate{});
    }
    return indices;
}

}  // namespace ringrule
