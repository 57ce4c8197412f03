// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/tankmates.h"

#include <algorithm>
#include <cmath>

namespace ringrule {

namespace {

bool covers(const Stay& stay, Date on) {
    return stay.from <= on && (!stay.to || on <= *stay.to);
}

std::optional<double> lastLengthMm(const AnimalHistory& animal, Date on) {
    std::optional<double> length;
    for (const Observation& one : animal.observations) {
        if (one.on <= on && one.standardLengthMm.known()) {
            length = one.standardLengthMm.value;
        }
    }
    return length;
}

bool likeAge(const AnimalHistory& one, const AnimalHistory& other, Date on, const GroupOptions& options) {
    const auto ageOne = ageOn(one, on);
    const auto ageOther = ageOn(other, on);
    if (ageOne && ageOther) {
        const auto [younger, older] = std::minmax(*ageOne, *ageOther);
        const double doubtDays = 2.0 * std::hypot(one.animal.hatchedSdDays, other.animal.hatchedSdDays);
        return younger >= options.adultDays || older - younger <= options.likeAgeDays + doubtDays ||
               older <= options.likeAgeRatio * younger;
    }
    const auto lengthOne = lastLengthMm(one, on);
    const auto lengthOther = lastLengthMm(other, on);
    // Without age or length nothing speaks against it: animals of one tank are usually of one batch.
    return !lengthOne || !lengthOther ||
           std::max(*lengthOne, *lengthOther) <= options.likeLengthRatio * std::min(*lengthOne, *lengthOther);
}

}  // namespace

std::optional<TankId> tankOn(const AnimalHistory& animal, Date on) {
    // On the day of a move both stays cover it: the later one counts.
    const Stay* found = nullptr;
    for (const Stay& stay : animal.stays) {
        if (covers(stay, on) && (found == nullptr || stay.from >= found->from)) {
            found = &stay;
        }
    }
    return found == nullptr ? std::nullopt : std::optional(found->tank);
}

bool hasLeft(const AnimalHistory& animal, Date on) {
    return !animal.stays.empty() && std::all_of(animal.stays.begin(), animal.stays.end(),
                                                [on](const Stay& stay) { return stay.to && *stay.to < on; });
}

std::optional<double> ageOn(const AnimalHistory& animal, Date on) {
    if (!animal.animal.hatchedOn) {
        return std::nullopt;
    }
    return static_cast<double>((on - *animal.animal.hatchedOn).count());
}

bool likeSex(const AnimalHistory& one, const AnimalHistory& other, Date on, const GroupOptions& options) {
    if (one.animal.sex == Sex::Unknown || other.animal.sex == Sex::Unknown || one.animal.sex == other.animal.sex) {
        return true;
    }
    const auto age = ageOn(one, on);
    return age && *age < options.sexCountsFromDays;
}

bool areTankmates(const AnimalHistory& one, const AnimalHistory& other, Date on, const GroupOptions& options) {
    return one.animal.species == other.animal.species && likeAge(one, other, on, options);
}

std::vector<std::size_t> tankmatesOf(std::span<const AnimalHistory> animals, std::size_t of, Date on,
                                     const GroupOptions& options) {
    const AnimalHistory& subject = animals[of];
    const auto tank = tankOn(subject, on);
    std::vector<std::size_t> mates;
    for (std::size_t i = 0; tank && i < animals.size(); ++i) {
        const AnimalHistory& other = animals[i];
        if (i != of && tankOn(other, on) == tank && areTankmates(subject, other, on, options)) {
            mates.push_back(i);
        }
    }
    return mates;
}

}  // namespace ringrule
