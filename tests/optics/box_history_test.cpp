// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "drawn_box.h"
#include "ringrule/optics/box_history.h"

using namespace ringrule;

namespace {

const CameraSeen kCamera{"Example", "One", 50.0};

PastBoxCheck check(const Box& box, const std::string& day, bool withRod, bool passed) {
    PastBoxCheck past;
    past.checkedOn = day;
    past.passed = passed;
    if (withRod) past.rod = PastRodReading{100.0, passed ? 100.1 : 103.0, 0.4, passed ? 0.002 : 0.031};
    if (!passed)
        past.findings.push_back(
            {withRod ? BoxFault::LengthOff : BoxFault::DistanceOff, true, "It reads 3 % too long."});
    past.camera = kCamera;
    past.boxFingerprint = boxFingerprint(box);
    return past;
}

}  // namespace

TEST_CASE("A box never checked is told so, also when checks came later or could not tell", "[box_history]") {
    const Box box = drawn::benchBox();
    CHECK(judgeBox(boxFingerprint(box), {}, "2031-03-04").state == BoxState::NeverChecked);
    CHECK(judgeBox(boxFingerprint(box), {check(box, "2031-03-05", true, true)}, "2031-03-04").state ==
          BoxState::NeverChecked);
    PastBoxCheck blank;
    blank.checkedOn = "2031-03-01";
    blank.refusalReason = "no-plate";
    CHECK(judgeBox(boxFingerprint(box), {blank}, "2031-03-04").state == BoxState::NeverChecked);
    CHECK(judgeBox(boxFingerprint(box), {check(box, "2031-03-01", true, true)}, "no day").state ==
          BoxState::NeverChecked);
}

TEST_CASE("A rod that read true holds for a while", "[box_history]") {
    const Box box = drawn::benchBox();
    const std::vector<PastBoxCheck> history{check(box, "2031-02-26", true, true)};
    const auto fresh = judgeBox(boxFingerprint(box), history, "2031-03-04T08:40:00", kCamera);
    CHECK(fresh.state == BoxState::Passed);
    CHECK(fresh.reason == "checked");
    CHECK(fresh.ageDays == 6);  // 2031 is no leap year
    CHECK(judgeBox(boxFingerprint(box), history, "2031-04-29").state == BoxState::Passed);
    const auto old = judgeBox(boxFingerprint(box), history, "2031-04-30");
    CHECK(old.state == BoxState::Stale);
    CHECK(old.reason == "check-old");
    CHECK(old.ageDays == 63);
    CHECK(judgeBox(boxFingerprint(box), history, "2031-04-30", {}, {90}).state == BoxState::Passed);
}

TEST_CASE("What changed since the check makes it stale", "[box_history]") {
    const Box box = drawn::benchBox();
    const std::vector<PastBoxCheck> history{check(box, "2031-03-01", true, true)};
    CHECK(judgeBox(boxFingerprint(box), history, "2031-03-04", {"Example", "Two", {}}).reason == "camera-changed");
    CHECK(judgeBox(boxFingerprint(box), history, "2031-03-04", {"Example", "One", 55.0}).reason == "camera-changed");
    CHECK(judgeBox(boxFingerprint(box), history, "2031-03-04", {"Example", "One", 50.2}).state == BoxState::Passed);
    CHECK(judgeBox(boxFingerprint(box), history, "2031-03-04", {}).state == BoxState::Passed);
    Box moved = box;
    moved.animalPlane.distanceFromPlateMm += 1.0;
    CHECK(judgeBox(boxFingerprint(moved), history, "2031-03-04", kCamera).reason == "box-changed");
    Box warmer = box;
    warmer.media->temperatureC += 1.5;
    warmer.name = "renamed";
    CHECK(judgeBox(boxFingerprint(warmer), history, "2031-03-04", kCamera).state == BoxState::Passed);
}

TEST_CASE("A failure stands until a check of its kind passes", "[box_history]") {
    const Box box = drawn::benchBox();
    std::vector<PastBoxCheck> history{check(box, "2031-03-02", true, false), check(box, "2031-03-03", false, true)};
    const auto failed = judgeBox(boxFingerprint(box), history, "2031-03-04", kCamera);
    CHECK(failed.state == BoxState::Failed);
    CHECK(failed.ageDays == 2);
    CHECK_THAT(failed.sentence.text(), Catch::Contains("It reads 3 % too long."));
    history.push_back(check(box, "2031-03-04", true, true));
    CHECK(judgeBox(boxFingerprint(box), history, "2031-03-04", kCamera).state == BoxState::Passed);
    history.push_back(check(box, "2031-03-04", false, false));  // the plate, later that day
    CHECK(judgeBox(boxFingerprint(box), history, "2031-03-04", kCamera).state == BoxState::Failed);
    // Checks come in any order; those before a day judge that day.
    std::reverse(history.begin(), history.end());
    CHECK(judgeBox(boxFingerprint(box), history, "2031-03-02", kCamera).state == BoxState::Failed);
    Box mended = box;
    mended.animalPlane.distanceFromPlateMm += 1.0;
    CHECK(judgeBox(boxFingerprint(mended), history, "2031-03-02", kCamera).reason == "box-changed");
}

TEST_CASE("A box that fails its next check may have been off before", "[box_history]") {
    const Box box = drawn::benchBox();
    const std::string file = boxFingerprint(box);
    std::vector<PastBoxCheck> history{check(box, "2031-02-26", true, true), check(box, "2031-03-10", true, false)};
    const auto between = judgeBox(file, history, "2031-03-04", kCamera);
    CHECK(between.state == BoxState::Failed);
    CHECK(between.reason == "next-check-failed");
    CHECK_THAT(between.sentence.text(), Catch::Contains("2031-03-10") && Catch::Contains("3 % too long"));
    SECTION("a plate that looked good meanwhile does not clear the rod") {
        history.push_back(check(box, "2031-03-06", false, true));
        CHECK(judgeBox(file, history, "2031-03-04", kCamera).state == BoxState::Failed);
    }
    SECTION("a rod that read true meanwhile does") {
        history.push_back(check(box, "2031-03-06", true, true));
        CHECK(judgeBox(file, history, "2031-03-04", kCamera).state == BoxState::Passed);
    }
    SECTION("a plate that is off later is cleared by a good plate meanwhile") {
        history.back() = check(box, "2031-03-10", false, false);
        CHECK(judgeBox(file, history, "2031-03-04", kCamera).state == BoxState::Failed);
        history.push_back(check(box, "2031-03-06", false, true));
        CHECK(judgeBox(file, history, "2031-03-04", kCamera).state == BoxState::Passed);
    }
    SECTION("what another box file's check says does not count; an unknown file may be any") {
        Box other = box;
        other.animalPlane.distanceFromPlateMm += 1.0;
        history.back() = check(other, "2031-03-10", true, false);
        CHECK(judgeBox(file, history, "2031-03-04", kCamera).state == BoxState::Passed);
        CHECK(judgeBox({}, history, "2031-03-04", kCamera).state == BoxState::Failed);
    }
}

TEST_CASE("The plate alone never tells a box true", "[box_history]") {
    const Box box = drawn::benchBox();
    const auto judgement =
        judgeBox(boxFingerprint(box), {check(box, "2031-03-03", false, true)}, "2031-03-04", kCamera);
    CHECK(judgement.state == BoxState::Stale);
    CHECK(judgement.reason == "rod-check-missing");
}

TEST_CASE("States keep their ids", "[box_history]") {
    for (const BoxState state : {BoxState::NeverChecked, BoxState::Passed, BoxState::Failed, BoxState::Stale})
        CHECK(boxStateFromId(boxStateId(state)) == state);
    CHECK(boxStateId(BoxState::Stale) == "stale");
    CHECK_FALSE(boxStateFromId("good"));
}
