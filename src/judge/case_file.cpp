// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/case_file.h"

#include <algorithm>
#include <cmath>

#include "judge/words.h"
#include "ringrule/judge/tankmates.h"
#include "ringrule/statistics/propagate.h"

namespace ringrule {

namespace {

/// ln(depth / length) with its error from one photo set-up, where the scale cancels.
Estimate logShape(const Observation& seen) {
    return difference(logarithm(seen.trunkDepthMm), logarithm(seen.standardLengthMm), SharedPart::Common);
}

/// Why `later` cannot be the animal that `earlier` was, if so.
std::optional<Doubt> doubtBetween(const AnimalHistory& animal, const Observation& earlier, const Observation& later,
                                  const JudgeOptions& options) {
    if (earlier.standardLengthMm.known() && later.standardLengthMm.known()) {
        Estimate change =
            difference(logarithm(later.standardLengthMm), logarithm(earlier.standardLengthMm), SharedPart::Separate);
        change.sdRandom = std::hypot(change.sdRandom, std::sqrt(2.0) * options.doubt.postureVariation);
        if (change.value < -options.doubt.shrinkSds * change.sd()) {
            return Doubt{&later, &earlier, change, true};
        }
    }
    const bool likeShape = (earlier.standardLengthMm.value < options.group.shapeChangesAtMm) ==
                           (later.standardLengthMm.value < options.group.shapeChangesAtMm);
    if (likeShape && girthFair(animal, earlier, options.group) && girthFair(animal, later, options.group)) {
        const Estimate change = difference(logShape(later), logShape(earlier), SharedPart::Separate);
        if (change.known() && std::abs(change.value) > options.doubt.depthJump &&
            std::abs(change.value) > options.doubt.shrinkSds * change.sd()) {
            return Doubt{&later, &earlier, change, false};
        }
    }
    return std::nullopt;
}

/// Goes through the observations keeping those that agree with the last believed one. Two that agree with each other
/// against the last believed one overrule it: then that one was wrong.
CaseFile believed(const AnimalHistory& animal, Date until, const JudgeOptions& options) {
    CaseFile file;
    file.history = &animal;
    const Observation* outvoted = nullptr;
    for (const Observation& seen : animal.observations) {
        if (seen.on > until || until - seen.on > std::chrono::days(options.group.lookBackDays) ||
            impossible(animal, seen)) {
            continue;
        }
        file.doubt.reset();
        if (!file.sound.empty()) {
            file.doubt = doubtBetween(animal, *file.sound.back(), seen, options);
        }
        if (!file.doubt) {
            outvoted = nullptr;
            file.sound.push_back(&seen);
        } else if (outvoted != nullptr && !doubtBetween(animal, *outvoted, seen, options)) {
            file.sound.back() = outvoted;
            file.sound.push_back(&seen);
            file.doubt.reset();
            outvoted = nullptr;
        } else {
            outvoted = &seen;
        }
    }
    return file;
}

/// ln of standard length on a day between two believed sessions.
Estimate interpolatedLogLength(const CaseFile& file, Date on, const JudgeOptions& options) {
    const Observation* before = nullptr;
    const Observation* after = nullptr;
    for (const Observation* seen : file.sound) {
        if (!seen->standardLengthMm.known()) {
            continue;
        }
        if (seen->on <= on) {
            before = seen;
        }
        if (seen->on >= on && after == nullptr) {
            after = seen;
        }
    }
    if (before == nullptr || after == nullptr ||
        after->on - before->on > std::chrono::days(options.lagging.longestGapDays)) {
        return {};
    }
    const auto span = static_cast<double>((after->on - before->on).count());
    const double part = span > 0.0 ? static_cast<double>((on - before->on).count()) / span : 0.0;
    const double value =
        (1.0 - part) * std::log(before->standardLengthMm.value) + part * std::log(after->standardLengthMm.value);
    const double sd =
        std::hypot((1.0 - part) * logLengthSd(*before, options.doubt), part * logLengthSd(*after, options.doubt));
    return {value, sd, 0.0};
}

}  // namespace

Casebook::Casebook(std::span<const AnimalHistory> animals, Date until, const JudgeOptions& options)
    : animals_(animals), until_(until), options_(&options), files_(animals.size()) {}

const CaseFile& Casebook::file(std::size_t of) const {
    if (!files_[of]) {
        files_[of] = believed(animals_[of], until_, *options_);
    }
    return *files_[of];
}

std::vector<std::size_t> Casebook::tankmates(std::size_t of, Date on) const {
    const auto [day, isNew] = tanksOn_.try_emplace(on);
    if (isNew) {
        for (std::size_t i = 0; i < animals_.size(); ++i) {
            if (const auto tank = tankOn(animals_[i], on)) {
                day->second[*tank].push_back(i);
            }
        }
    }
    const auto tank = tankOn(animals_[of], on);
    if (!tank) {
        return {};
    }
    std::vector<std::size_t> mates;
    for (std::size_t i : day->second.at(*tank)) {
        if (i != of && areTankmates(animals_[of], animals_[i], on, options_->group)) {
            mates.push_back(i);
        }
    }
    return mates;
}

std::optional<std::string> impossible(const AnimalHistory& animal, const Observation& seen) {
    if (seen.standardLengthMm.known() && !(seen.standardLengthMm.value > 0.0)) {
        return "a length of " + numberText(seen.standardLengthMm.value, 1) + " mm, and none is zero or below";
    }
    const auto& hatched = animal.animal.hatchedOn;
    // An estimated hatch date may be some days late.
    const auto slack = std::chrono::days(static_cast<int>(std::ceil(2.0 * animal.animal.hatchedSdDays)));
    if (hatched && seen.on + slack < *hatched) {
        return "a day before its hatch date, " + formatDate(*hatched);
    }
    return std::nullopt;
}

bool settlingToFood(const AnimalHistory& animal, Date on, const GroupOptions& options) {
    return std::any_of(animal.dietSpells.begin(), animal.dietSpells.end(), [&](const DietSpell& spell) {
        const bool first = std::none_of(animal.dietSpells.begin(), animal.dietSpells.end(),
                                        [&](const DietSpell& other) { return other.from < spell.from; });
        return !first && spell.from <= on && on - spell.from < std::chrono::days(options.settleDays);
    });
}

std::string stateOn(const AnimalHistory& animal, Date on) {
    for (const StateSpell& spell : animal.states) {
        if (spell.from <= on && (!spell.to || on <= *spell.to)) {
            return spell.state;
        }
    }
    return {};
}

bool girthFair(const AnimalHistory& animal, const Observation& seen, const GroupOptions& options) {
    return seen.girthFair && stateOn(animal, seen.on).empty() && !settlingToFood(animal, seen.on, options);
}

const Observation* inSession(const CaseFile& file, Date on, const GroupOptions& options) {
    const auto tolerance = std::chrono::days(options.sameSessionDays);
    const Observation* nearest = nullptr;
    const auto first = std::lower_bound(file.sound.begin(), file.sound.end(), on - tolerance,
                                        [](const Observation* seen, Date day) { return seen->on < day; });
    for (auto seen = first; seen != file.sound.end() && (*seen)->on <= on + tolerance; ++seen) {
        if (nearest == nullptr || std::chrono::abs((*seen)->on - on) < std::chrono::abs(nearest->on - on)) {
            nearest = *seen;
        }
    }
    return nearest;
}

double logLengthSd(const Observation& seen, const DoubtOptions& options) {
    return std::hypot(seen.standardLengthMm.sdRandom / seen.standardLengthMm.value, options.postureVariation);
}

Estimate logGain(const CaseFile& file, Date from, Date to, const JudgeOptions& options) {
    const Observation* first = inSession(file, from, options.group);
    const Observation* last = inSession(file, to, options.group);
    const bool both = first != nullptr && last != nullptr && first->standardLengthMm.known() &&
                      last->standardLengthMm.known() && first->on < last->on;
    if (both) {
        const double stretch =
            static_cast<double>((to - from).count()) / static_cast<double>((last->on - first->on).count());
        const double gain = std::log(last->standardLengthMm.value / first->standardLengthMm.value);
        return {stretch * gain, std::hypot(logLengthSd(*first, options.doubt), logLengthSd(*last, options.doubt)), 0.0};
    }
    return difference(interpolatedLogLength(file, to, options), interpolatedLogLength(file, from, options),
                      SharedPart::Common);
}

}  // namespace ringrule
