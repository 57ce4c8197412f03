// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/judge_rules.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "ringrule/judge/review.h"

namespace ringrule {

namespace {

template <auto Group, auto Field>
double get(const JudgeOptions& options) {
    return static_cast<double>((options.*Group).*Field);
}

template <auto Group, auto Field>
void set(JudgeOptions& options, double value) {
    auto& field = (options.*Group).*Field;
    field = static_cast<std::remove_reference_t<decltype(field)>>(value);
}

template <auto Group, auto Field>
constexpr Threshold threshold(std::string_view name, double least, double most) {
    using Value = std::remove_cvref_t<decltype((JudgeOptions{}.*Group).*Field)>;
    return {name, least, most, std::is_same_v<Value, int>, &get<Group, Field>, &set<Group, Field>};
}

constexpr auto kGroup = &JudgeOptions::group;
constexpr auto kThin = &JudgeOptions::thinness;
constexpr auto kLag = &JudgeOptions::lagging;
constexpr auto kDoubt = &JudgeOptions::doubt;

constexpr std::array kThresholds{
    threshold<kGroup, &GroupOptions::sameSessionDays>("same_session_days", 0, 14),
    threshold<kGroup, &GroupOptions::toldForDays>("told_for_days", 1, 3650),
    threshold<kGroup, &GroupOptions::lookBackDays>("look_back_days", 60, 36500),
    threshold<kGroup, &GroupOptions::likeAgeRatio>("like_age_ratio", 1, 10),
    threshold<kGroup, &GroupOptions::likeAgeDays>("like_age_days", 0, 3650),
    threshold<kGroup, &GroupOptions::adultDays>("adult_days", 1, 36500),
    threshold<kGroup, &GroupOptions::likeLengthRatio>("like_length_ratio", 1, 10),
    threshold<kGroup, &GroupOptions::sexCountsFromDays>("sex_counts_from_days", 0, 36500),
    threshold<kGroup, &GroupOptions::shapeChangesAtMm>("shape_changes_at_mm", 0, 1000),
    threshold<kGroup, &GroupOptions::settleDays>("settle_days", 0, 90),
    threshold<kGroup, &GroupOptions::refusedDays>("refused_days", 1, 60),
    threshold<kThin, &ThinnessOptions::leastSpread>("depth_spread", 0.001, 0.5),
    threshold<kThin, &ThinnessOptions::spreadOfFew>("depth_spread_of_few", 0.001, 0.5),
    threshold<kThin, &ThinnessOptions::sessionVariation>("depth_variation", 0.001, 0.5),
    threshold<kThin, &ThinnessOptions::sessionVariationOfFew>("depth_variation_of_few", 0.001, 0.5),
    threshold<kThin, &ThinnessOptions::changeSds>("thin_change_sds", 1, 20),
    threshold<kThin, &ThinnessOptions::changeSdsOfFew>("thin_change_sds_of_few", 1, 20),
    threshold<kThin, &ThinnessOptions::supportedLevelSds>("thin_level_sds", 0, 20),
    threshold<kThin, &ThinnessOptions::levelSds>("thin_level_alone_sds", 1, 20),
    threshold<kThin, &ThinnessOptions::singleChangeSds>("thin_single_sds", 1, 50),
    threshold<kLag, &LaggingOptions::leastDays>("rate_least_days", 1, 365),
    threshold<kLag, &LaggingOptions::growthSpread>("growth_spread", 0.001, 1),
    threshold<kLag, &LaggingOptions::monthlySpread>("growth_monthly_spread", 0.001, 1),
    threshold<kLag, &LaggingOptions::lagSds>("lag_sds", 1, 20),
    threshold<kLag, &LaggingOptions::lagSdsOfFew>("lag_sds_of_few", 1, 20),
    threshold<kLag, &LaggingOptions::leastLag>("lag_least_part", 0, 1),
    threshold<kLag, &LaggingOptions::singleLagSds>("lag_single_sds", 1, 50),
    threshold<kLag, &LaggingOptions::singleLagPart>("lag_single_part", 0, 1),
    threshold<kLag, &LaggingOptions::stalledPart>("stalled_part", 0, 1),
    threshold<kLag, &LaggingOptions::grownUpPart>("grown_up_part", 0.1, 1),
    threshold<kDoubt, &DoubtOptions::postureVariation>("posture_variation", 0, 0.2),
    threshold<kDoubt, &DoubtOptions::shrinkSds>("shrink_sds", 1, 20),
    threshold<kDoubt, &DoubtOptions::jumpPart>("jump_part", 0, 2),
    threshold<kDoubt, &DoubtOptions::depthJump>("depth_jump", 0.01, 2),
};

std::string plain(double value) {
    std::string text = std::to_string(value);
    text.erase(text.find_last_not_of('0') + 1);
    return text.back() == '.' ? text.substr(0, text.size() - 1) : text;
}

}  // namespace

std::span<const Threshold> thresholds() {
    return kThresholds;
}

std::optional<std::string> setThreshold(JudgeOptions& options, std::string_view name, double value) {
    const auto* found =
        std::find_if(kThresholds.begin(), kThresholds.end(), [name](const Threshold& one) { return one.name == name; });
    if (found == kThresholds.end()) {
        return "is no threshold that is known; \"ringrule species\" lists them";
    }
    if (!(value >= found->least && value <= found->most)) {
        return "must be from " + plain(found->least) + " to " + plain(found->most) + ", not " + plain(value);
    }
    if (found->whole && value != std::floor(value)) {
        return "must be a whole number, not " + plain(value);
    }
    found->set(options, value);
    return std::nullopt;
}

const JudgeOptions& JudgeRules::of(const std::string& species) const {
    const auto found = bySpecies.find(species);
    return found == bySpecies.end() ? usual : found->second;
}

std::vector<Finding> reviewAnimals(std::span<const AnimalHistory> animals, Date on, const JudgeRules& rules) {
    // Tankmates are of one species, so that each can be reviewed alone.
    std::map<std::string, std::vector<AnimalHistory>> groups;
    for (const AnimalHistory& animal : animals) {
        const bool own = rules.bySpecies.contains(animal.animal.species);
        groups[own ? animal.animal.species : std::string()].push_back(animal);
    }
    std::vector<Finding> findings;
    for (const auto& [species, group] : groups) {
        const auto some = reviewAnimals(group, on, rules.of(species));
        findings.insert(findings.end(), some.begin(), some.end());
    }
    sortByUrgency(findings);
    return findings;
}

}  // namespace ringrule
