// SPDX-License-Identifier: GPL-3.0-or-later
#include "workflow/again_rules.h"

#include <algorithm>
#include <cmath>

#include "ringrule/records/measure_columns.h"
#include "ringrule/workflow/stored_correction.h"
#include "workflow/session_rules.h"

namespace ringrule {
namespace {

bool says(const std::vector<Remark>& remarks, Remark remark) {
    return std::find(remarks.begin(), remarks.end(), remark) != remarks.end();
}

/// In one order, without what is told anew at each reading of the collection.
std::vector<Remark> comparable(std::vector<Remark> remarks) {
    std::erase_if(remarks, [](Remark r) { return r == Remark::BoxCheckFailed || r == Remark::BoxCheckStale; });
    std::sort(remarks.begin(), remarks.end());
    return remarks;
}

/// To nine figures: what a database and its text form may do to a number.
bool sameNumber(double one, double other) {
    return std::abs(one - other) <= 1e-9 * std::max(std::abs(one), std::abs(other));
}

bool sameEstimate(const Estimate& one, const Estimate& other) {
    if (one.known() != other.known()) return false;
    return !one.known() || (sameNumber(one.value, other.value) && sameNumber(one.sdRandom, other.sdRandom) &&
                            sameNumber(one.sdShared, other.sdShared));
}

}  // namespace

bool correctedByHand(const StoredMeasure& stored, const AnimalReading* now) {
    const auto& remarks = stored.measurement.remarks;
    if (says(remarks, Remark::MovedByHand) || says(remarks, Remark::OutlinedByHand)) return true;
    for (const LandmarkColumn& column : kLandmarkColumns) {
        const auto& landmark = stored.landmarks.*column.member;
        if (landmark && landmark->movedByHand) return true;
    }
    // The engine says so of tails too, but then it says so again.
    return stored.replaces && says(remarks, Remark::TailClosed) &&
           !(now != nullptr && says(now->measurement.remarks, Remark::TailClosed));
}

bool countsAgain(const StoredMeasure& stored, const Measurement& now) {
    const bool unseen = countsUnseen(now);
    if (stored.accepted == countsUnseen(stored.measurement)) return unseen;
    if (!stored.accepted) return false;
    const std::vector<Remark> doubts = doubtsOf(now);
    return unseen || (now.measured() && std::all_of(doubts.begin(), doubts.end(), [&](Remark doubt) {
                          return says(stored.measurement.remarks, doubt);
                      }));
}

Measurement withoutFigures(const StoredMeasure& stored, const std::optional<Refusal>& ofPhoto) {
    Measurement none;
    none.shape = stored.measurement.shape;
    none.view = stored.measurement.view;
    none.protocol = stored.measurement.protocol;
    none.refusal = ofPhoto ? *ofPhoto
                           : Refusal{std::string(kSeenNoMore),
                                     "No animal was found before the plate. Check that it hangs in front of it."};
    return none;
}

bool sameFigures(const Measurement& stored, const Measurement& now) {
    const auto reason = [](const Measurement& m) { return m.refusal ? m.refusal->reason : std::string(); };
    return stored.shape == now.shape && stored.view == now.view && stored.protocol == now.protocol &&
           reason(stored) == reason(now) && comparable(stored.remarks) == comparable(now.remarks) &&
           std::all_of(kMeasureColumns.begin(), kMeasureColumns.end(), [&](const MeasureColumn& column) {
               return sameEstimate(stored.*column.member, now.*column.member);
           });
}

}  // namespace ringrule
