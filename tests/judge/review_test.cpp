// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/review.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "histories.h"
#include "ringrule/judge/judge_rules.h"
#include "ringrule/judge/tankmates.h"

using namespace ringrule;
using namespace histories;
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;

TEST_CASE("Every kind of finding has its own stable name") {
    CHECK(findingName(FindingKind::BehindTankmates) == "behind-tankmates");
    CHECK(findingName(FindingKind::Stalled) == "stalled");
    CHECK(findingName(FindingKind::Thin) == "thin");
    CHECK(findingName(FindingKind::GettingThinner) == "getting-thinner");
    CHECK(findingName(FindingKind::NotFeeding) == "not-feeding");
    CHECK(findingName(FindingKind::TankLow) == "tank-low");
    CHECK(findingName(FindingKind::MeasureDoubtful) == "measure-doubtful");
    CHECK(findingName(FindingKind::CannotTell) == "cannot-tell");
}

TEST_CASE("Tankmates: same tank that day, same species, like age, never itself") {
    auto animals = group(4, 3);
    CHECK(tankmatesOf(animals, 0, session(2)) == std::vector<std::size_t>{1, 2, 3});
    SECTION("moved away") {
        animals[1].stays = {{{2}, {1}, kHatched, session(1)}, {{2}, {9}, session(1), std::nullopt}};
        CHECK(tankmatesOf(animals, 0, session(1) - days(1)).size() == 3);
        CHECK(tankmatesOf(animals, 0, session(1)) == std::vector<std::size_t>{2, 3});  // on the day: where it went
    }
    SECTION("another species") {
        animals[2].animal.species = "Syngnathus acus";
        CHECK(tankmatesOf(animals, 0, session(2)) == std::vector<std::size_t>{1, 3});
    }
    SECTION("much younger") {
        animals[3].animal.hatchedOn = kHatched + days(40);
        CHECK(tankmatesOf(animals, 0, session(2)) == std::vector<std::size_t>{1, 2});
        animals[3].animal.hatchedSdDays = 10.0;  // an estimated date: 40 days are within 21 and twice its error
        CHECK(tankmatesOf(animals, 0, session(2)) == std::vector<std::size_t>{1, 2, 3});
        animals[3].animal.hatchedSdDays = 0.0;
        CHECK(tankmatesOf(animals, 0, session(20)).size() == 3);  // grown up, all are of like age
    }
    SECTION("age unknown: by length") {
        animals[1].animal.hatchedOn.reset();
        CHECK(tankmatesOf(animals, 0, session(2)).size() == 3);
        setLength(animals[1], 2, 40.0);
        CHECK(tankmatesOf(animals, 0, session(2)) == std::vector<std::size_t>{2, 3});
    }
    SECTION("sexes count once grown") {
        animals[0].animal.sex = Sex::Female;
        animals[1].animal.sex = Sex::Male;
        CHECK(likeSex(animals[0], animals[1], kHatched + days(109), {}));
        CHECK_FALSE(likeSex(animals[0], animals[1], kHatched + days(110), {}));
        CHECK(likeSex(animals[0], animals[2], session(9), {}));  // unknown sex: nothing speaks against it
    }
}

TEST_CASE("Growing less than its tankmates over two intervals: behind, with rates and since when") {
    auto animals = group(7, 7);
    const double start = animals[3].observations[3].standardLengthMm.value;
    for (int n = 4; n < 7; ++n) {
        setLength(animals[3], n, start + 5.0 * (n - 3));
        animals[3].observations[static_cast<std::size_t>(n)].trunkDepthMm.value = (start + 5.0 * (n - 3)) / 28.0;
    }
    CHECK(flags(reviewAnimals(animals, session(3))).empty());
    const auto found = flags(reviewAnimals(animals, session(6)));
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::BehindTankmates);
    CHECK(found.front().since == session(4));
    // 5 mm a month against 12: 58 % less; the tankmates' gain scales with length, so a few percent more or less.
    CHECK_THAT(found.front().by.value, WithinAbs(-56.0, 6.0));
    CHECK_THAT(found.front().sentence, Contains("less than its 6 tankmates") && Contains("0.17 mm/day"));
}

TEST_CASE("A little slower than the rest is within the ordinary spread") {
    auto animals = group(7, 9);
    for (int n = 0; n < 9; ++n) {
        setLength(animals[5], n, 60.0 + 0.92 * 12.0 * n);
        animals[5].observations[static_cast<std::size_t>(n)].trunkDepthMm.value = (60.0 + 0.92 * 12.0 * n) / 28.0;
    }
    for (int n = 0; n < 9; ++n) {
        CHECK(flags(reviewAnimals(animals, session(n))).empty());
    }
}

TEST_CASE("Not growing at all where tankmates grow: stalled") {
    auto animals = group(7, 7);
    for (int n = 5; n < 7; ++n) {
        setLength(animals[3], n, animals[3].observations[4].standardLengthMm.value + 0.1 * (n - 4));
        animals[3].observations[static_cast<std::size_t>(n)].trunkDepthMm = animals[3].observations[4].trunkDepthMm;
    }
    const auto found = flags(reviewAnimals(animals, session(6)));
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::Stalled);
    CHECK(found.front().unit == "mm/day");
    CHECK(found.front().by.value < -0.3);
    CHECK_THAT(found.front().sentence, Contains("did not grow beyond measuring error"));
}

TEST_CASE("Adults near their asymptote are not stalled, alone or together") {
    for (int count : {1, 7}) {
        auto animals = group(count, 12);
        for (auto& one : animals) {
            for (int n = 0; n < 12; ++n) {
                const double length = 150.0 * (1.0 - 0.6 * std::exp(-0.5 * n)) * wobble(2, n) / 1.0;
                const double smooth = 150.0 * (1.0 - 0.6 * std::exp(-0.5 * n));
                setLength(one, n, 0.9 * smooth + 0.1 * std::min(length, smooth));
                one.observations[static_cast<std::size_t>(n)].trunkDepthMm.value = smooth / 28.0;
            }
        }
        for (int n = 0; n < 12; ++n) {
            INFO(count << " animals, session " << n);
            CHECK(flags(reviewAnimals(animals, session(n))).empty());
        }
    }
}

TEST_CASE("Alone, a juvenile that stops growing is stalled against its own past") {
    auto animals = group(1, 9);
    for (int n = 7; n < 9; ++n) {
        setLength(animals[0], n, animals[0].observations[6].standardLengthMm.value);
    }
    const auto found = flags(reviewAnimals(animals, session(8)));
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::Stalled);
    CHECK_THAT(found.front().sentence, Contains("from its own past"));
}

TEST_CASE("A fish that shrank is a doubtful measure, not a thin or lagging fish") {
    auto animals = group(7, 7);
    setLength(animals[3], 5, 0.9 * animals[3].observations[4].standardLengthMm.value);
    const auto found = flags(reviewAnimals(animals, session(5)));
    REQUIRE(found.size() == 1);
    CHECK(found.front().kind == FindingKind::MeasureDoubtful);
    CHECK_THAT(found.front().sentence, Contains("do not shrink"));
    CHECK(std::count(found.front().otherReasons.begin(), found.front().otherReasons.end(), "a wrong animal card") == 1);
    // The next session is back on the old course: the odd one is left out and nothing is flagged.
    CHECK(flags(reviewAnimals(animals, session(6))).empty());
}

TEST_CASE("One session too long is outvoted by two that agree") {
    auto animals = group(7, 7);
    setLength(animals[3], 4, 1.5 * animals[3].observations[4].standardLengthMm.value);
    const auto jumped = findingsOf(reviewAnimals(animals, session(4)), "A4");
    REQUIRE_FALSE(jumped.empty());
    CHECK(jumped.front().kind == FindingKind::MeasureDoubtful);
    CHECK(flags(reviewAnimals(animals, session(6))).empty());
}

TEST_CASE("Later observations are not looked at") {
    auto animals = group(7, 7);
    thin(animals[3], 4, 0.86);
    thin(animals[3], 5, 0.85);
    thin(animals[3], 6, 0.80);
    auto truncated = animals;
    for (auto& one : truncated) {
        one.observations.pop_back();
    }
    const auto full = reviewAnimals(animals, session(5));
    const auto early = reviewAnimals(truncated, session(5));
    REQUIRE(full.size() == early.size());
    for (std::size_t i = 0; i < full.size(); ++i) {
        CHECK(full[i].sentence == early[i].sentence);
    }
}

TEST_CASE("An animal never belongs to what it is compared with") {
    // What the others are told does not depend on copies of the failing animal, and its own gap is against them alone.
    auto animals = group(7, 7);
    thin(animals[3], 5, 0.80);
    thin(animals[3], 6, 0.80);
    const auto found = flags(reviewAnimals(animals, session(6)));
    REQUIRE(found.size() == 1);
    CHECK(std::count(found.front().comparedWith.begin(), found.front().comparedWith.end(), "A4") == 0);
    auto doubled = animals;
    thin(doubled[3], 6, 0.95);
    const auto thinner = flags(reviewAnimals(doubled, session(6)));
    REQUIRE(thinner.size() == 1);
    // Its own depth fell by a further 5 %: were it part of its reference, the gap would move by less.
    CHECK_THAT((100.0 + thinner.front().by.value) / (100.0 + found.front().by.value), WithinAbs(0.95, 1e-6));
}

TEST_CASE("First session, missed session, animal that left") {
    auto animals = group(7, 4);
    const auto first = reviewAnimals(animals, session(0));
    REQUIRE(first.size() == 7);
    for (const auto& finding : first) {
        CHECK(finding.kind == FindingKind::CannotTell);
        CHECK_FALSE(finding.nextStep.empty());
    }
    animals[3].observations.pop_back();
    const auto missed = findingsOf(reviewAnimals(animals, session(3)), "A4");
    REQUIRE(missed.size() == 1);
    CHECK_THAT(missed.front().sentence, Contains("not photographed with its tankmates"));
    animals[3].stays.front().to = session(3) - days(2);
    CHECK(findingsOf(reviewAnimals(animals, session(3)), "A4").empty());
    CHECK(reviewAnimals({}, session(0)).empty());
}

TEST_CASE("Most urgent first") {
    auto animals = group(7, 7);
    setLength(animals[1], 6, 0.8 * animals[1].observations[5].standardLengthMm.value);
    thin(animals[3], 5, 0.85);
    thin(animals[3], 6, 0.85);
    const auto found = flags(reviewAnimals(animals, session(6)));
    REQUIRE(found.size() == 2);
    CHECK(found[0].kind == FindingKind::Thin);
    CHECK(found[1].kind == FindingKind::MeasureDoubtful);
}

TEST_CASE("No finding names an illness or a cause as certain") {
    auto animals = group(7, 7);
    thin(animals[3], 5, 0.8);
    thin(animals[3], 6, 0.8);
    for (const auto& finding : reviewAnimals(animals, session(6))) {
        for (const char* word : {"sick", "ill ", "disease", "infect", "parasite", "starv", "diagnos", "because"}) {
            CHECK_THAT(finding.sentence, !Contains(word));
        }
    }
}

namespace {

/// Notes on days before session 5, the last first: 'r' refused, 't' taken, 'b' both, '.' no note.
AnimalHistory eater(const std::string& daysBack) {
    AnimalHistory one = group(1, 6).front();
    for (std::size_t i = 0; i < daysBack.size(); ++i) {
        const Date on = session(5) - days(static_cast<int>(i));
        for (const char c : daysBack[i] == 'b' ? std::string("rt") : std::string(1, daysBack[i])) {
            if (c != '.') {
                one.feedingNotes.push_back(
                    {one.animal.id, {}, on, "frozen mysid", c == 'r' ? "refused" : "taken", "", ""});
            }
        }
    }
    return one;
}

bool notFeeding(const std::string& daysBack) {
    const auto found = reviewAnimals(std::vector{eater(daysBack)}, session(5));
    return std::any_of(found.begin(), found.end(), [](const Finding& f) { return f.kind == FindingKind::NotFeeding; });
}

}  // namespace

TEST_CASE("Food refused three days running is told, with since when; anything taken ends the run") {
    CHECK(notFeeding("rrr"));
    CHECK(notFeeding("rrrt"));
    CHECK(notFeeding("....rrr"));
    CHECK_FALSE(notFeeding("rr"));
    CHECK_FALSE(notFeeding("rrtr"));
    CHECK_FALSE(notFeeding("rbrr"));
    CHECK_FALSE(notFeeding("trrr"));
    CHECK_FALSE(notFeeding("rr.rr"));         // a day without a note: not known to be running
    CHECK_FALSE(notFeeding("........rrrr"));  // the last note is more than a week old
    const auto found = reviewAnimals(std::vector{eater("rrrrt")}, session(5));
    REQUIRE_FALSE(found.empty());
    const Finding& finding = found.front();
    CHECK(finding.kind == FindingKind::NotFeeding);
    CHECK(finding.since == session(5) - days(3));
    CHECK_THAT(finding.by.value, WithinAbs(4.0, 0.0));
    CHECK_THAT(finding.sentence, Contains("4 days running") && Contains("frozen mysid"));
    CHECK_THAT(finding.nextStep, Contains("veterinarian"));
}

TEST_CASE("With one tankmate, slow growth is told against the own past and that tankmate; never without a past") {
    auto animals = group(2, 8);
    double length = animals[0].observations[4].standardLengthMm.value;
    for (int n = 5; n < 8; ++n) {
        length += 5.0;  // where 12 were usual
        setLength(animals[0], n, length);
    }
    const auto found = findingsOf(flags(reviewAnimals(animals, session(7))), "A1");
    REQUIRE(found.size() == 1);
    CHECK(found[0].kind == FindingKind::BehindTankmates);
    CHECK(found[0].comparedWith == std::vector<std::string>{"A2"});
    CHECK_THAT(found[0].sentence, Contains("its tankmate A2") && Contains("weakly told"));
    CHECK(findingsOf(flags(reviewAnimals(animals, session(7))), "A2").empty());
    for (auto& one : animals) {
        one.observations.erase(one.observations.begin(), one.observations.begin() + 4);
    }
    CHECK(flags(reviewAnimals(animals, session(7))).empty());
}

TEST_CASE("With one tankmate, thinning is told of the animal that changed, not of the other") {
    auto animals = group(2, 8);
    for (int n = 5; n < 8; ++n) {
        thin(animals[0], n, 1.0 - 0.07 * (n - 4));
    }
    const auto found = flags(reviewAnimals(animals, session(7)));
    REQUIRE(found.size() == 1);
    CHECK(found[0].animalCode == "A1");
    CHECK(found[0].kind == FindingKind::GettingThinner);
    // The other grows fatter meanwhile: the gap widens, but nobody thins.
    auto fatter = group(2, 8);
    for (int n = 5; n < 8; ++n) {
        thin(fatter[1], n, 1.0 + 0.07 * (n - 4));
    }
    CHECK(flags(reviewAnimals(fatter, session(7))).empty());
}

TEST_CASE("Thresholds by name: every one is set and read again, nonsense is refused in words") {
    JudgeOptions options;
    for (const Threshold& threshold : thresholds()) {
        INFO(threshold.name);
        const double usual = threshold.get(options);
        CHECK(usual >= threshold.least);
        CHECK(usual <= threshold.most);
        CHECK_FALSE(setThreshold(options, threshold.name, threshold.most).has_value());
        CHECK(threshold.get(options) == threshold.most);
        CHECK(setThreshold(options, threshold.name, threshold.most + 1.0).has_value());
        CHECK(threshold.get(options) == threshold.most);
        CHECK(setThreshold(options, threshold.name, std::nan("")).has_value());
        CHECK_FALSE(setThreshold(options, threshold.name, usual).has_value());
    }
    CHECK_THAT(setThreshold(options, "settle_days", 7.5).value(), Contains("whole number"));
    CHECK_THAT(setThreshold(options, "settel_days", 7.0).value(), Contains("known"));
}

TEST_CASE("Each species is judged by its own thresholds") {
    auto animals = group(7, 7);
    const double start = animals[3].observations[3].standardLengthMm.value;
    for (int n = 4; n < 7; ++n) {
        setLength(animals[3], n, start + 5.0 * (n - 3));
    }
    JudgeRules rules;
    CHECK(flags(reviewAnimals(animals, session(6), rules)).size() == 1);
    rules.bySpecies["Syngnathus typhle"].lagging.lagSds = 20.0;
    rules.bySpecies["Syngnathus typhle"].lagging.singleLagSds = 50.0;
    CHECK(flags(reviewAnimals(animals, session(6), rules)).empty());
    rules.bySpecies.clear();
    rules.bySpecies["Hippocampus kuda"].lagging.lagSds = 20.0;
    CHECK(flags(reviewAnimals(animals, session(6), rules)).size() == 1);
}
