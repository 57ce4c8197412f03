// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>

#include "ringrule/workflow/collection_review.h"

namespace ringrule {

struct AgainOptions {
    /// Measures that a person corrected are measured again too, with what was moved or drawn by hand made again in the
    /// photo; without it they stay as they are.
    bool correctedToo = false;
    std::string keeper;  ///< initials of who asks for it
    int jobs = 0;        ///< photos at a time; 0: one a core
};

/// What measuring a session again did to its measures.
struct AgainSummary {
    SessionSummary session;        ///< the session as it was read now
    int corrected = 0;             ///< replaced by a new reading
    int added = 0;                 ///< of animals that were not seen the first time
    int same = 0;                  ///< read as before: nothing stored
    int left = 0;                  ///< corrected by a person, and left
    int given = 0;                 ///< given to the animal that has their card now
    std::int64_t firstChange = 0;  ///< lines of the change log, each taken back by `Store::undo`; 0: none
    std::int64_t lastChange = 0;
};

/// Measures the stored originals of a session again with `box`, the photo of the empty box that was kept for the
/// session, and the cards as the animals have them now. What reads differently is stored as a correction: the earlier
/// reading stays, replaced. An animal that is seen no more gets a correction without figures that says so. A measure
/// without animal is given to the one that has its card; one that has an animal keeps it. Whether a measure counts is
/// judged anew, unless a person had decided it. All of it, or nothing. Throws `Error(BadUse)` when there is no such
/// session, or when not one animal can be measured with this box; `ChangedMeanwhile` when somebody else changed the
/// measures.
[[nodiscard]] AgainSummary measureSessionAgain(Store& store, SessionId session, const Box& box,
                                               const AgainOptions& options = {}, const Progress& progress = {});

/// The box file kept in the collection with which a session was measured. Throws `Error(BadUse)` when none has its
/// name, or several of different content.
[[nodiscard]] std::filesystem::path boxFileOf(const Store& store, SessionId session);

}  // namespace ringrule
