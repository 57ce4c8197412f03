// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/likely_card.h"

#include <cmath>
#include <vector>

#include "judge/gain_comparison.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

/// Standard deviations within which a length fits an animal, and beyond which it does not.
constexpr double kFits = 2.0;
constexpr double kMisfits = 3.0;

/// What was measured of an animal in a session, believed or not.
const Observation* measuredIn(const Casebook& book, std::size_t of, Date on) {
    for (const Observation& seen : book.animal(of).observations) {
        if (std::chrono::abs(seen.on - on) <= std::chrono::days(book.options().group.sameSessionDays) &&
            seen.standardLengthMm.known()) {
            return &seen;
        }
    }
    return nullptr;
}

/// Its last believed length before a session.
const Observation* lastBefore(const Casebook& book, std::size_t of, Date on) {
    const GroupOptions& group = book.options().group;
    const Observation* last = nullptr;
    for (const Observation* seen : book.file(of).sound) {
        if (seen->standardLengthMm.known() && seen->on < on - std::chrono::days(group.sameSessionDays) &&
            on - seen->on <= std::chrono::days(book.options().lagging.longestGapDays)) {
            last = seen;
        }
    }
    return last;
}

/// Two animals of one session, and where the growth of the others lets each of them be.
struct Pair {
    double logMeasured = 0.0;  ///< under the first's card
    double logExpected = 0.0;  ///< of the second
    double sd = 0.0;           ///< of the difference

    [[nodiscard]] double sds() const { return std::abs(logMeasured - logExpected) / sd; }
};

/// The growth of the tankmates but two since a day, in ln(length). Not known when there is none.
Estimate othersGain(const Casebook& book, std::size_t one, std::size_t two, Date from, Date on) {
    std::vector<double> gains;
    for (std::size_t i : book.tankmates(one, on)) {
        const Estimate gain = i == two ? Estimate{} : logGain(book.file(i), from, on, book.options());
        if (gain.known()) {
            gains.push_back(gain.value);
        }
    }
    if (gains.empty()) {
        return {};
    }
    const double middle = median(gains);
    // A healthy animal's growth differs for good and from interval to interval, and so does the middle of few.
    const double differs = book.options().lagging.leastSpread * std::abs(middle);
    return {middle, std::sqrt(2.0 + std::pow(wobbleOfMiddle(gains.size()), 2)) * differs, 0.0};
}

/// The measure under one animal's card against another animal's expected length; the first may be the second.
std::optional<Pair> fitOf(const Casebook& book, std::size_t card, std::size_t animal, std::size_t other, Date on) {
    const Observation* seen = measuredIn(book, card, on);
    const Observation* last = lastBefore(book, animal, on);
    if (seen == nullptr || last == nullptr) {
        return std::nullopt;
    }
    const Estimate gain = othersGain(book, animal, other, last->on, on);
    if (!gain.known()) {
        return std::nullopt;
    }
    const DoubtOptions& doubt = book.options().doubt;
    return Pair{std::log(seen->standardLengthMm.value), std::log(last->standardLengthMm.value) + gain.value,
                std::hypot(gain.sdRandom, logLengthSd(*seen, doubt), logLengthSd(*last, doubt))};
}

std::optional<LikelyCard> explainedBy(const Casebook& book, std::size_t of, std::size_t mate, Date on) {
    const auto fits = fitOf(book, of, mate, of, on);
    const auto own = fitOf(book, of, of, mate, on);
    if (!fits || fits->sds() > kFits || (own && own->sds() < kMisfits)) {
        return std::nullopt;
    }
    LikelyCard likely{mate,
                      false,
                      std::exp(fits->logMeasured),
                      std::exp(fits->logExpected),
                      kZ95 * fits->sd * std::exp(fits->logExpected),
                      0.0};
    if (measuredIn(book, mate, on) == nullptr) {
        return likely;
    }
    const auto back = fitOf(book, mate, of, mate, on);
    const auto itself = fitOf(book, mate, mate, of, on);
    if (!back || back->sds() > kFits || !itself || itself->sds() < kMisfits) {
        return std::nullopt;
    }
    likely.swapped = true;
    likely.otherMm = std::exp(back->logMeasured);
    return likely;
}

}  // namespace

std::optional<LikelyCard> likelyCard(const Casebook& book, std::size_t of, Date on) {
    std::optional<LikelyCard> found;
    for (std::size_t mate : book.tankmates(of, on)) {
        const auto one = explainedBy(book, of, mate, on);
        if (one && found && found->swapped == one->swapped) {
            return std::nullopt;
        }
        if (one && (!found || one->swapped)) {
            found = one;
        }
    }
    return found;
}

}  // namespace ringrule
