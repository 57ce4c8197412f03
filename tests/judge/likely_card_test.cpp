// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "histories.h"
#include "ringrule/judge/tank_growth.h"
#include "ringrule/judge/time_to_notice.h"

using namespace ringrule;
using namespace histories;
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;

namespace {

double lengthOf(const AnimalHistory& one, int session) {
    return one.observations[static_cast<std::size_t>(session)].standardLengthMm.value;
}

/// Seven animals, the sixth a fifth larger than the rest.
std::vector<AnimalHistory> oneLarge() {
    auto animals = group(7, 6);
    for (int n = 0; n < 6; ++n) {
        setLength(animals[5], n, 1.2 * lengthOf(animals[5], n));
    }
    return animals;
}

}  // namespace

TEST_CASE("Two exchanged cards are told by whom each measure fits") {
    auto animals = oneLarge();
    const double sixth = lengthOf(animals[5], 5);
    const double second = lengthOf(animals[1], 5);
    setLength(animals[5], 5, second);
    setLength(animals[1], 5, sixth);
    const auto found = findingsOf(reviewAnimals(animals, session(5)), "A6");
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::MeasureDoubtful);
    CHECK_THAT(found.front().sentence, Contains("Likely a wrong card") && Contains("fits A2"));
    CHECK_THAT(found.front().sentence, Contains("were likely exchanged"));
    CHECK(found.front().comparedWith == std::vector<std::string>{"A2"});
    CHECK_THAT(found.front().nextStep, Contains("earlier ones of both animals"));
}

TEST_CASE("A tankmate without a photo whose length was told under another's card is named; two of one length are not") {
    auto animals = oneLarge();
    setLength(animals[5], 5, lengthOf(animals[1], 5));
    animals[1].observations.pop_back();
    const auto found = findingsOf(reviewAnimals(animals, session(5)), "A6");
    REQUIRE(found.size() == 1);
    CHECK_THAT(found.front().sentence, Contains("A2 has no photo of this session"));

    // A7 is as long as A2 and was not photographed either: either could be it, so nobody is named.
    for (int n = 0; n < 5; ++n) {
        setLength(animals[6], n, lengthOf(animals[1], n));
    }
    animals[6].observations.pop_back();
    const auto either = findingsOf(reviewAnimals(animals, session(5)), "A6");
    REQUIRE(either.size() == 1);
    CHECK_THAT(either.front().sentence, !Contains("Likely a wrong card"));
}

TEST_CASE("A measure that fits nobody is doubted without naming a card") {
    auto animals = oneLarge();
    setLength(animals[5], 5, 0.8 * lengthOf(animals[5], 4));
    const auto found = findingsOf(reviewAnimals(animals, session(5)), "A6");
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::MeasureDoubtful);
    CHECK_THAT(found.front().sentence, !Contains("Likely a wrong card"));
}

TEST_CASE("Exchanged cards in simulated groups: the larger the difference, the surer; a wrong animal is seldom named") {
    // Two of six animals exchange cards in the fifth session. By how much they differ in length decides: below the
    // error of a length and of what growth lets expect (a month's 12 mm, differing by 7 %, is 1 %), nothing can be
    // seen.
    struct Told {
        int swaps = 0;
        int doubted = 0;
        int named = 0;
        int wrong = 0;
    };
    Told near;
    Told far;
    GroupTrial trial;
    trial.sizeSpread = 0.10;
    for (int g = 0; g < 400; ++g) {
        auto animals = simulatedGroup(trial, g);
        const std::size_t longer = lengthOf(animals[0], 4) > lengthOf(animals[1], 4) ? 0 : 1;
        const double apart = std::abs(std::log(lengthOf(animals[0], 4) / lengthOf(animals[1], 4)));
        std::swap(animals[0].observations[4], animals[1].observations[4]);
        Told& told = apart > 0.15 ? far : near;
        ++told.swaps;
        const Date on = animals[0].observations[4].on;
        for (const Finding& finding : findingsOf(reviewAnimals(animals, on), animals[longer].animal.code)) {
            if (finding.kind != FindingKind::MeasureDoubtful) {
                continue;
            }
            ++told.doubted;
            const bool named = finding.sentence.find("Likely a wrong card") != std::string::npos;
            const bool right = finding.comparedWith == std::vector<std::string>{animals[1 - longer].animal.code};
            told.named += named && right ? 1 : 0;
            told.wrong += named && !right ? 1 : 0;
        }
    }
    INFO("far: " << far.swaps << " swaps, " << far.doubted << " doubted, " << far.named << " named, " << far.wrong
                 << " wrongly; near: " << near.swaps << ", " << near.doubted << ", " << near.named << ", "
                 << near.wrong);
    CHECK(far.swaps > 80);
    // At more than 15 % apart the longer one seems to shrink, as a month brings no more: measured, 107 of 107 doubted
    // and 104 named; 4 in 100 of chance are left. Nearer ones are hidden by a month's growth (docs/judgement.md).
    CHECK(far.doubted >= 103);
    CHECK(far.named >= 99);
    CHECK(far.wrong + near.wrong <= 4);  // measured 0; a hundredth
}

namespace {

std::vector<SpeciesFacts> publishedGrowth(double mmPerDay, double low) {
    SpeciesFacts facts;
    facts.species = "Syngnathus typhle";
    facts.growth = {{50.0, 250.0, mmPerDay, low, "", "a test"}, {50.0, 250.0, 2.0 * mmPerDay, low, "female", "a test"}};
    return {facts};
}

}  // namespace

TEST_CASE("A whole tank below published growth is told, with how much and of how many") {
    const auto animals = group(5, 5);  // 0.4 mm a day
    const auto slow = tankGrowth(animals, {1}, session(4), publishedGrowth(0.8, 0.6));
    REQUIRE(slow.ok());
    CHECK(slow.value().low);
    CHECK(slow.value().codes.size() == 5);
    CHECK(slow.value().since == session(3));
    CHECK_THAT(slow.value().partPercent.value, WithinAbs(-50.0, 3.0));
    const Finding finding = tankGrowthFinding(slow.value(), "B3");
    CHECK(finding.kind == FindingKind::TankLow);
    CHECK_THAT(finding.sentence, Contains("slower than is published of Syngnathus typhle") && Contains("0.80"));
    // Within what is published, though below its middle; and a low end that the error reaches.
    CHECK_FALSE(tankGrowth(animals, {1}, session(4), publishedGrowth(0.5, 0.3)).value().low);
    CHECK_FALSE(tankGrowth(animals, {1}, session(4), publishedGrowth(0.5, 0.4)).value().low);
}

TEST_CASE("Published growth of a sex is used for animals of that sex; without a reference nothing is told") {
    auto animals = group(5, 5);
    for (auto& one : animals) {
        one.animal.sex = Sex::Female;
    }
    CHECK(tankGrowth(animals, {1}, session(4), publishedGrowth(0.4, 0.3)).value().publishedMmPerDay == 0.8);
    const auto reason = [&](const std::vector<SpeciesFacts>& facts, int on) {
        return tankGrowth(animals, {1}, session(on), facts).refusal().reason;
    };
    CHECK(reason({}, 4) == "no-reference");
    CHECK(reason(publishedGrowth(0.4, 0.3), 1) == "too-few-animals");
    animals[0].animal.hatchedOn.reset();
    animals[1].animal.hatchedOn.reset();
    animals[2].animal.hatchedOn.reset();
    CHECK(reason(publishedGrowth(0.4, 0.3), 4) == "too-few-animals");
}
