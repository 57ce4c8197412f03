// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_options.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// A measure that was not believed, and what it was compared with.
struct Doubt {
    const Observation* doubted = nullptr;
    const Observation* against = nullptr;
    Estimate logChange;  ///< ln of length, or of depth over length, from the earlier to the doubted one
    bool ofLength = true;
};

/// One animal with those of its observations, in order of time, that are believed.
struct CaseFile {
    const AnimalHistory* history = nullptr;
    std::vector<const Observation*> sound;
    std::optional<Doubt> doubt;  ///< about the last observation
};

/// All animals of one review with their case files, and who was in which tank on which day, looked up once a day.
/// Belongs to one thread.
class Casebook {
public:
    /// Precondition: `animals` and `options` outlive the book.
    Casebook(std::span<const AnimalHistory> animals, Date until, const JudgeOptions& options);

    [[nodiscard]] std::span<const AnimalHistory> animals() const { return animals_; }
    [[nodiscard]] const AnimalHistory& animal(std::size_t of) const { return animals_[of]; }
    /// Made when it is first asked for: a question about one tank costs no more than that tank.
    [[nodiscard]] const CaseFile& file(std::size_t of) const;
    [[nodiscard]] std::size_t size() const { return animals_.size(); }
    [[nodiscard]] const JudgeOptions& options() const { return *options_; }
    /// As `tankmatesOf`, without a search through the whole house.
    [[nodiscard]] std::vector<std::size_t> tankmates(std::size_t of, Date on) const;

private:
    using Tanks = std::map<TankId, std::vector<std::size_t>>;

    std::span<const AnimalHistory> animals_;
    Date until_;
    const JudgeOptions* options_;
    mutable std::vector<std::optional<CaseFile>> files_;
    mutable std::map<Date, Tanks> tanksOn_;
};

/// What is to be said of one animal that is still there, as of a day, in no order.
[[nodiscard]] std::vector<Finding> reviewOne(const Casebook& book, std::size_t of, Date on);

/// In words, why an observation cannot be one of this animal: a length not above zero, or a day before it hatched. Such
/// ones are never believed.
[[nodiscard]] std::optional<std::string> impossible(const AnimalHistory& animal, const Observation& seen);

/// Whether the day lies in the first week after a change of food.
[[nodiscard]] bool settlingToFood(const AnimalHistory& animal, Date on, const GroupOptions& options);

/// The state ("brooding", …) on record for a day, or empty.
[[nodiscard]] std::string stateOn(const AnimalHistory& animal, Date on);

/// Whether depth and girth may be judged in this observation.
[[nodiscard]] bool girthFair(const AnimalHistory& animal, const Observation& seen, const GroupOptions& options);

/// The believed observation nearest to a day within the tolerance of one session.
[[nodiscard]] const Observation* inSession(const CaseFile& file, Date on, const GroupOptions& options);

/// The gain in ln(standard length) between two days, from the animal's sessions of those days (scaled to the days
/// between them) or interpolated between the sessions around them; not known when these are missing or too far apart.
[[nodiscard]] Estimate logGain(const CaseFile& file, Date from, Date to, const JudgeOptions& options);

/// The standard deviation of ln(length) that one observation carries for comparisons between tankmates of a session:
/// the random part and what posture adds.
[[nodiscard]] double logLengthSd(const Observation& seen, const DoubtOptions& options);

}  // namespace ringrule
