// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_options.h"

namespace ringrule {

/// A threshold by its name in files, e.g. "settle_days" or "lag_sds", with the values that make sense.
struct Threshold {
    std::string_view name;
    double least = 0.0;
    double most = 0.0;
    bool whole = false;
    double (*get)(const JudgeOptions&) = nullptr;
    void (*set)(JudgeOptions&, double) = nullptr;
};

/// Every threshold that may be set, in the order of `JudgeOptions`.
[[nodiscard]] std::span<const Threshold> thresholds();

/// Sets one by its name. A sentence says what is wrong when the name is not known or the value makes no sense; then
/// nothing is changed.
[[nodiscard]] std::optional<std::string> setThreshold(JudgeOptions& options, std::string_view name, double value);

/// The thresholds of each species, and those of all others.
struct JudgeRules {
    JudgeOptions usual;
    std::map<std::string, JudgeOptions> bySpecies;

    [[nodiscard]] const JudgeOptions& of(const std::string& species) const;
};

/// As `reviewAnimals` with one set of thresholds, each species by its own.
[[nodiscard]] std::vector<Finding> reviewAnimals(std::span<const AnimalHistory> animals, Date on,
                                                 const JudgeRules& rules);

}  // namespace ringrule
