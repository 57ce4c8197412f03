// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "histories.h"

using namespace ringrule;
using namespace histories;
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;

TEST_CASE("Healthy tankmates are not flagged") {
    const auto animals = group(7, 8);
    for (int n = 0; n < 8; ++n) {
        INFO("session " << n);
        CHECK(flags(reviewAnimals(animals, session(n))).empty());
    }
}

TEST_CASE("Two sessions below its past and its tankmates: thin, with whom, how much and since when") {
    auto animals = group(7, 7);
    thin(animals[3], 5, 0.86);
    thin(animals[3], 6, 0.85);
    CHECK(flags(reviewAnimals(animals, session(4))).empty());
    const auto found = flags(reviewAnimals(animals, session(6)));
    REQUIRE(found.size() == 1);
    const Finding& thinOne = found.front();
    CHECK(thinOne.kind == FindingKind::Thin);
    CHECK(thinOne.animalCode == "A4");
    CHECK(thinOne.on == session(6));
    CHECK(thinOne.since == session(5));
    CHECK(thinOne.comparedWith == std::vector<std::string>{"A1", "A2", "A3", "A5", "A6", "A7"});
    // 15 % less, its own build 0 to 3 % from the others' median, wobble 1 %.
    CHECK_THAT(thinOne.by.value, WithinAbs(-15.0, 4.0));
    CHECK(thinOne.by.u95() > 1.0);
    CHECK(thinOne.by.u95() < 8.0);
    CHECK(thinOne.unit == "%");
    CHECK_THAT(thinOne.sentence, Contains("A4 is ") && Contains("thinner for its length than its 6 tankmates") &&
                                     Contains("below its own earlier sessions") && Contains("since 2031-06-05"));
    CHECK_FALSE(thinOne.otherReasons.empty());
    CHECK_THAT(thinOne.nextStep, Contains("veterinarian"));
}

TEST_CASE("One odd session does not flag, however many agree afterwards") {
    auto animals = group(7, 7);
    thin(animals[3], 4, 0.90);
    for (int n = 4; n < 7; ++n) {
        INFO("session " << n);
        CHECK(flags(reviewAnimals(animals, session(n))).empty());
    }
}

TEST_CASE("One session with three agreeing photos and a large gap flags, and says that it is one") {
    auto animals = group(7, 6);
    thin(animals[3], 5, 0.78);
    const auto found = flags(reviewAnimals(animals, session(5)));
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::Thin);
    CHECK_THAT(found.front().sentence, Contains("one session"));
    SECTION("but not on one photo") {
        animals[3].observations.back().sidePhotos = 1;
        CHECK(flags(reviewAnimals(animals, session(5))).empty());
    }
    SECTION("nor when the photos disagree") {
        animals[3].observations.back().trunkDepthMm.sdRandom = 0.05 * animals[3].observations.back().trunkDepthMm.value;
        CHECK(flags(reviewAnimals(animals, session(5))).empty());
    }
}

TEST_CASE("No flag rests on a change smaller than the measures' own error") {
    auto animals = group(7, 7);
    thin(animals[3], 5, 0.88);
    thin(animals[3], 6, 0.88);
    REQUIRE(flags(reviewAnimals(animals, session(6))).size() == 1);
    for (auto& one : animals) {
        for (auto& observation : one.observations) {
            observation.trunkDepthMm.sdRandom = 0.07 * observation.trunkDepthMm.value;
        }
    }
    CHECK(flags(reviewAnimals(animals, session(6))).empty());
}

TEST_CASE("An error shared by a whole session flags nobody") {
    auto animals = group(7, 7);
    for (int n = 5; n < 7; ++n) {
        for (auto& one : animals) {
            thin(one, n, 0.93);  // a lamp that casts a shadow, say
        }
    }
    CHECK(flags(reviewAnimals(animals, session(6))).empty());
}

TEST_CASE("Brooding and carrying are never judged on girth") {
    auto animals = group(7, 7);
    for (int n = 5; n < 7; ++n) {
        thin(animals[3], n, 0.80);
    }
    SECTION("told by the observation") {
        animals[3].observations[5].girthFair = false;
        animals[3].observations[6].girthFair = false;
    }
    SECTION("told by a state on record") {
        animals[3].states.push_back({{4}, "carrying-eggs", session(5) - days(3), std::nullopt});
    }
    CHECK(flags(reviewAnimals(animals, session(6))).empty());
}

TEST_CASE("The first week after a change of food is not judged") {
    auto animals = group(7, 7);
    thin(animals[3], 5, 0.86);
    thin(animals[3], 6, 0.85);
    animals[3].dietSpells = {{{4}, {1}, kHatched, session(6) - days(5)},
                             {{4}, {2}, session(6) - days(5), std::nullopt}};
    const auto found = findingsOf(reviewAnimals(animals, session(6)), "A4");
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::CannotTell);
    CHECK_THAT(found.front().sentence, Contains("less than a week"));
    SECTION("a week later it is") {
        animals[3].dietSpells[1].from = session(6) - days(7);
        CHECK(flags(reviewAnimals(animals, session(6))).size() == 1);
    }
}

TEST_CASE("Body ratios are not compared across 25 mm") {
    auto animals = group(7, 6);
    for (auto& one : animals) {
        for (auto& observation : one.observations) {
            const double factor = 0.22;  // lengths 13 to 27 mm
            for (Estimate* value : {&observation.standardLengthMm, &observation.trunkDepthMm}) {
                *value = {value->value * factor, value->sdRandom * factor, value->sdShared * factor};
            }
        }
        // All change their shape on passing 25 mm in the last session.
        one.observations.back().trunkDepthMm.value *= 0.7;
    }
    CHECK(flags(reviewAnimals(animals, session(5))).empty());
}

TEST_CASE("Three tankmates: told, but weakly") {
    auto animals = group(4, 7);
    thin(animals[3], 5, 0.84);
    thin(animals[3], 6, 0.83);
    const auto found = flags(reviewAnimals(animals, session(6)));
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::Thin);
    CHECK(found.front().comparedWith.size() == 3);
    CHECK_THAT(found.front().sentence, Contains("weakly"));
}

TEST_CASE("Without tankmates an adult is compared with its own past") {
    auto animals = group(1, 7);
    for (int n = 0; n < 7; ++n) {
        setLength(animals[0], n, 150.0 + 0.1 * n);
        animals[0].observations[static_cast<std::size_t>(n)].trunkDepthMm.value = 5.4 * (n >= 5 ? 0.85 : wobble(1, n));
    }
    const auto found = flags(reviewAnimals(animals, session(6)));
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::GettingThinner);
    CHECK(found.front().comparedWith.empty());
    CHECK_THAT(found.front().sentence, Contains("its own earlier sessions") && !Contains("tankmate"));
}

TEST_CASE("A seahorse with a closed tail is judged on its last known length") {
    auto animals = group(7, 7);
    for (auto& one : animals) {
        for (std::size_t n = 0; n < 7; ++n) {
            auto& observation = one.observations[n];
            const double length = 150.0 * observation.standardLengthMm.value / usualLengthMm(static_cast<int>(n));
            observation.trunkDepthMm.value *= length / observation.standardLengthMm.value;
            observation.standardLengthMm.value = length;
        }
    }
    thin(animals[3], 5, 0.82);
    thin(animals[3], 6, 0.82);
    animals[3].observations[6].standardLengthMm = {};
    const auto found = flags(reviewAnimals(animals, session(6)));
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::Thin);
    const auto& reasons = found.front().otherReasons;
    CHECK(std::any_of(reasons.begin(), reasons.end(),
                      [](const std::string& r) { return r.find("last known length") != std::string::npos; }));
}

TEST_CASE("A belly seen head-on can tell what the side view misses") {
    auto animals = group(7, 7);
    for (std::size_t i = 0; i < animals.size(); ++i) {
        for (auto& observation : animals[i].observations) {
            observation.trunkWidthMm = {0.85 * observation.trunkDepthMm.value, 0.03, 0.01};
        }
    }
    animals[3].observations[5].trunkWidthMm.value *= 0.82;
    animals[3].observations[6].trunkWidthMm.value *= 0.80;
    const auto found = flags(reviewAnimals(animals, session(6)));
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::Thin);
    CHECK(found.front().measure == "condition index by trunk width");
    CHECK_THAT(found.front().sentence, Contains("narrower from above"));
}

TEST_CASE("Belly hollow is told as a supporting sign") {
    auto animals = group(7, 7);
    for (std::size_t i = 0; i < animals.size(); ++i) {
        for (int n = 0; n < 7; ++n) {
            animals[i].observations[static_cast<std::size_t>(n)].bellyHollowPercent = {
                -5.0 + wobble(static_cast<int>(i), n), 0.6, 0.0};
        }
    }
    animals[3].observations[6].bellyHollowPercent.value = 9.0;
    CHECK(flags(reviewAnimals(animals, session(6))).empty());  // alone it flags nothing
    thin(animals[3], 5, 0.86);
    thin(animals[3], 6, 0.85);
    const auto found = flags(reviewAnimals(animals, session(6)));
    REQUIRE(found.size() == 1);
    CHECK_THAT(found.front().sentence, Contains("belly line is hollow") && Contains("9.0 %"));
}

TEST_CASE("On its way back an animal is thin for a while, but not getting thinner") {
    auto animals = group(7, 9);
    const double course[] = {1, 1, 1, 0.93, 0.87, 0.82, 0.88, 0.92, 0.945};
    for (int n = 0; n < 9; ++n) {
        thin(animals[3], n, course[n]);
    }
    const auto worst = flags(reviewAnimals(animals, session(5)));
    REQUIRE(worst.size() == 1);
    CHECK(worst.front().kind == FindingKind::Thin);
    CHECK_THAT(worst.front().sentence, Contains("condition index has fallen by another"));
    const auto better = flags(reviewAnimals(animals, session(6)));
    REQUIRE(better.size() == 1);
    CHECK(better.front().kind == FindingKind::Thin);
    CHECK(better.front().since == worst.front().since);
    CHECK_THAT(better.front().sentence, Contains("condition index has risen"));
    for (const auto& finding : flags(reviewAnimals(animals, session(8)))) {
        CHECK(finding.kind != FindingKind::GettingThinner);
    }
}
