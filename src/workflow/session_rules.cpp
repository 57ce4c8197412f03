// SPDX-License-Identifier: GPL-3.0-or-later
#include "workflow/session_rules.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace ringrule {
namespace {

constexpr std::array kDoubts{Remark::OutlineDoubtful, Remark::BeforeDarkPlate, Remark::SeenByColour,
                             Remark::HeadEndGuessed,  Remark::CutOff,          Remark::SeveralCards};

}  // namespace

Cards cardsOf(const Store& store) {
    Cards cards;
    for (const Animal& animal : store.animals()) {
        if (!animal.card) continue;
        cards.animals[*animal.card] = animal;
        if (const auto shape = shapeFromName(animal.shape)) cards.shapes[*animal.card] = *shape;
    }
    return cards;
}

std::string unknownCardSentence(int card) {
    return "card " + std::to_string(card) +
           " belongs to no animal in this collection: add the animal or correct the card";
}

std::vector<Remark> doubtsOf(const Measurement& measurement) {
    std::vector<Remark> doubts;
    std::copy_if(measurement.remarks.begin(), measurement.remarks.end(), std::back_inserter(doubts),
                 [](Remark remark) { return std::find(kDoubts.begin(), kDoubts.end(), remark) != kDoubts.end(); });
    return doubts;
}

bool countsUnseen(const Measurement& measurement) {
    return measurement.measured() ? doubtsOf(measurement).empty() : measurement.trunkDepthMm.known();
}

std::string refusalSentence(const Measurement& measurement) {
    return measurement.refusal ? measurement.refusal->sentence : "the animal could not be measured";
}

}  // namespace ringrule
