// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/growth/model.h"

#include <cassert>
#include <limits>

#include "growth/growth_formula.h"
#include "ringrule/statistics/autodiff.h"

namespace ringrule {

std::string_view growthModelName(GrowthModel model) {
    switch (model) {
        case GrowthModel::Linear:
            return "linear";
        case GrowthModel::Exponential:
            return "exponential";
        case GrowthModel::VonBertalanffy:
            return "von-bertalanffy";
        case GrowthModel::Gompertz:
            return "gompertz";
        case GrowthModel::Logistic:
            return "logistic";
    }
    return "";
}

const std::vector<GrowthModel>& allGrowthModels() {
    static const std::vector<GrowthModel> models{GrowthModel::Linear, GrowthModel::Exponential,
                                                 GrowthModel::VonBertalanffy, GrowthModel::Gompertz,
                                                 GrowthModel::Logistic};
    return models;
}

int parameterCount(GrowthModel model) {
    return model == GrowthModel::Linear || model == GrowthModel::Exponential ? 2 : 3;
}

double lengthAt(GrowthModel model, std::span<const double> parameters, double ageDays) {
    assert(static_cast<int>(parameters.size()) == parameterCount(model));
    return growthFormula(model, parameters, ageDays);
}

double rateAt(GrowthModel model, std::span<const double> parameters, double ageDays) {
    assert(static_cast<int>(parameters.size()) == parameterCount(model));
    return growthFormula(model, parameters, Dual<1>(ageDays, 0)).v[0];
}

double asymptote(GrowthModel model, std::span<const double> parameters) {
    const bool levels = model != GrowthModel::Linear && model != GrowthModel::Exponential;
    return levels ? parameters[0] : std::numeric_limits<double>::infinity();
}

}  // namespace ringrule
