// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>

#include "ringrule/records/store.h"

namespace ringrule {

/// What the cards of a collection mean.
struct Cards {
    std::map<int, Animal> animals;
    std::map<int, Shape> shapes;
};

/// The cards as the animals of the collection have them now.
[[nodiscard]] Cards cardsOf(const Store& store);

/// What is said of a card that no animal has.
[[nodiscard]] std::string unknownCardSentence(int card);

/// The remarks of a measurement that keep it out of the histories until a person has looked at it.
[[nodiscard]] std::vector<Remark> doubtsOf(const Measurement& measurement);

/// Whether a measurement counts without a person's look: its main measure was taken and nothing is doubtful, or a part
/// was measured that still counts.
[[nodiscard]] bool countsUnseen(const Measurement& measurement);

/// Why an animal was not measured.
[[nodiscard]] std::string refusalSentence(const Measurement& measurement);

}  // namespace ringrule
