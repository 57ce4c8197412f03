// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/milestones.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "judge/case_file.h"
#include "judge/words.h"
#include "ringrule/growth/forecast.h"
#include "ringrule/growth/group_growth.h"
#include "ringrule/judge/tankmates.h"

namespace ringrule {

namespace {

/// Further ahead than this no day is told, whatever the curve says.
constexpr double kFarthestDays = 36500.0;

/// The day from which an animal's ages count, as in `lengthsOf`: its hatching or, where that is not known, its first
/// believed session.
std::optional<Date> originOf(const CaseFile& file) {
    if (file.history->animal.hatchedOn) {
        return file.history->animal.hatchedOn;
    }
    return file.sound.empty() ? std::nullopt : std::optional<Date>(file.sound.front()->on);
}

std::optional<Date> dayAt(Date origin, const std::optional<double>& days) {
    if (!days || !std::isfinite(*days) || std::abs(*days) > kFarthestDays) {
        return std::nullopt;
    }
    return origin + std::chrono::days(static_cast<int>(std::lround(*days)));
}

std::string whatIsDue(const SpeciesMilestone& milestone) {
    return milestone.lengthMm ? numberText(*milestone.lengthMm, 0) + " mm" : "day " + numberText(*milestone.ageDays, 0);
}

std::string intervalText(const MilestoneDate& date) {
    const std::string from = date.earliest ? formatDate(*date.earliest) : "not told how early";
    const std::string to = date.latest ? formatDate(*date.latest) : "later than can be told";
    return date.earliest && date.latest && *date.earliest == *date.latest ? "" : " (" + from + " to " + to + ")";
}

void byAge(MilestoneDate& date, const AnimalHistory& animal, Date on) {
    const std::string what = date.animalCode + ", " + date.milestone.name + " at " + whatIsDue(date.milestone);
    if (!animal.animal.hatchedOn) {
        date.sentence = what + ": its hatch date is not known.";
        return;
    }
    const double half = 1.959963984540054 * animal.animal.hatchedSdDays;
    date.told = true;
    date.earliest = dayAt(*animal.animal.hatchedOn, *date.milestone.ageDays - half);
    date.expected = dayAt(*animal.animal.hatchedOn, *date.milestone.ageDays);
    date.latest = dayAt(*animal.animal.hatchedOn, *date.milestone.ageDays + half);
    date.reached = date.expected && *date.expected <= on;
    date.sentence = what + ": " + (date.expected ? formatDate(*date.expected) : "") + intervalText(date) +
                    (date.reached ? ", past." : ", by its age.");
}

/// Believed lengths of one animal up to the book's day, by days from its origin.
std::vector<GrowthPoint> pointsOf(const CaseFile& file, Date origin) {
    std::vector<GrowthPoint> points;
    for (const Observation* seen : file.sound) {
        if (seen->standardLengthMm.known()) {
            points.push_back({static_cast<double>((seen->on - origin).count()), seen->standardLengthMm.value,
                              lengthWeight(seen->standardLengthMm)});
        }
    }
    return points;
}

/// Why an animal without any length is past its milestones of length, if its records say so.
std::optional<std::string> grownWords(const CaseFile& file, Date on, const GroupOptions& options) {
    const AnimalHistory& animal = *file.history;
    const bool bred = std::any_of(animal.states.begin(), animal.states.end(),
                                  [&](const StateSpell& spell) { return spell.from <= on; });
    if (bred) {
        return "it has carried eggs or young";
    }
    if (animal.animal.hatchedOn && on - *animal.animal.hatchedOn >= std::chrono::days(options.adultDays)) {
        return "it is " + std::to_string((on - *animal.animal.hatchedOn).count()) + " days old";
    }
    return std::nullopt;
}

/// An animal that was never measured.
void unmeasured(MilestoneDate& date, const std::string& what, const CaseFile& file, Date on,
                const GroupOptions& options) {
    const auto grown = grownWords(file, on, options);
    date.told = date.reached = grown.has_value();
    date.sentence = grown ? what + ": passed before its first length, as " + *grown + "; a length will confirm it."
                          : what + ": cannot be told yet. It has no length so far; photograph it.";
}

/// The growth of an animal's group, or why there is none.
using Group = Outcome<GroupGrowth>;

/// When a length will be reached, or why that cannot be told: from one's own lengths, else from the group's.
Outcome<WhenReached> whenReached(const std::vector<GrowthPoint>& points, const Group* group, std::int64_t animal,
                                 double lengthMm) {
    const auto forecast =
        GrowthForecast::of(points, group != nullptr && group->ok() ? &group->value() : nullptr, animal);
    if (forecast) {
        return forecast.value().reaching(lengthMm);
    }
    return group != nullptr && !group->ok() && forecast.refusal().reason == "not-identified" ? group->refusal()
                                                                                             : forecast.refusal();
}

void byLength(MilestoneDate& date, const CaseFile& file, Date origin, const Group* group, Date on,
              const GroupOptions& options) {
    const std::string what = date.animalCode + ", " + date.milestone.name + " at " + whatIsDue(date.milestone);
    const std::vector<GrowthPoint> points = pointsOf(file, origin);
    if (points.empty()) {
        unmeasured(date, what, file, on, options);
        return;
    }
    const auto passed = std::find_if(points.begin(), points.end(), [&](const GrowthPoint& point) {
        return point.lengthMm >= *date.milestone.lengthMm;
    });
    if (passed != points.end()) {
        date.told = true;
        date.reached = true;
        date.latest = dayAt(origin, passed->ageDays);
        date.expected = date.latest;
        date.earliest = passed == points.begin() ? std::nullopt : dayAt(origin, std::prev(passed)->ageDays);
        date.sentence = what +
                        (date.earliest ? ": reached between " + formatDate(*date.earliest) + " and "
                                       : ": already passed at its first length, ") +
                        formatDate(*date.latest) + ".";
        return;
    }
    const auto when = whenReached(points, group, file.history->animal.id.value, *date.milestone.lengthMm);
    if (!when) {
        date.sentence = what + ": cannot be told yet. " + when.refusal().sentence;
        return;
    }
    date.told = true;
    date.earliest = dayAt(origin, when.value().earliestDays);
    date.expected = dayAt(origin, when.value().expectedDays);
    date.latest = dayAt(origin, when.value().latestDays);
    date.reached = date.expected && *date.expected <= on;
    date.sentence = what + ": " + (date.expected ? "about " + formatDate(*date.expected) : "no day can be expected") +
                    intervalText(date) + ", by " +
                    (when.value().basis == ForecastBasis::OwnCurve ? "its own growth."
                     : group->value().showsTurn
                         ? "the growth of its group."
                         : "the growth of its group, seen too few times to show whether it is about to slow down.");
}

/// The growth of the animals that share a tank and species, fitted once.
class Groups {
public:
    explicit Groups(const Casebook& book, Date on) : book_(book), on_(on) {}

    const Group* of(std::size_t animal) {
        const auto tank = tankOn(book_.animal(animal), on_);
        if (!tank) {
            return nullptr;
        }
        const auto key = std::pair(*tank, book_.animal(animal).animal.species);
        const auto known = fits_.find(key);
        return &(known != fits_.end() ? known : fits_.emplace(key, fit(*tank, key.second)).first)->second;
    }

private:
    [[nodiscard]] Group fit(TankId tank, const std::string& species) const {
        std::vector<std::vector<Observation>> seen;
        std::vector<std::int64_t> keys;
        for (std::size_t i = 0; i < book_.size(); ++i) {
            if (tankOn(book_.animal(i), on_) == tank && book_.animal(i).animal.species == species) {
                std::vector<Observation> sound;
                for (const Observation* one : book_.file(i).sound) {
                    sound.push_back(*one);
                    if (const auto hatched = book_.animal(i).animal.hatchedOn) {
                        sound.back().ageDays = static_cast<double>((one->on - *hatched).count());
                    }
                }
                seen.push_back(std::move(sound));
                keys.push_back(book_.animal(i).animal.id.value);
            }
        }
        std::vector<GroupMember> members;
        for (std::size_t i = 0; i < seen.size(); ++i) {
            members.push_back({keys[i], seen[i]});
        }
        const auto lengths = lengthsOf(members, -1);
        return lengths ? groupGrowth(lengths.value()) : Group(lengths.refusal());
    }

    const Casebook& book_;
    Date on_;
    std::map<std::pair<TankId, std::string>, Group> fits_;
};

}  // namespace

std::vector<MilestoneDate> milestonesOf(std::span<const AnimalHistory> animals, Date on,
                                        const std::vector<SpeciesFacts>& species, const JudgeOptions& options) {
    const Casebook book(animals, on, options);
    Groups groups(book, on);
    std::vector<MilestoneDate> dates;
    for (std::size_t i = 0; i < animals.size(); ++i) {
        const auto origin = originOf(book.file(i));
        if (hasLeft(animals[i], on)) {
            continue;
        }
        for (const SpeciesMilestone& milestone : factsOf(species, animals[i].animal.species).milestones) {
            MilestoneDate date;
            date.animal = animals[i].animal.id;
            date.animalCode = animals[i].animal.code;
            date.milestone = milestone;
            if (milestone.lengthMm) {
                byLength(date, book.file(i), origin.value_or(on), groups.of(i), on, options.group);
            } else {
                byAge(date, animals[i], on);
            }
            dates.push_back(std::move(date));
        }
    }
    return dates;
}

}  // namespace ringrule
