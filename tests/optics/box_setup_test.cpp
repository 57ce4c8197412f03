// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "drawn_box.h"
#include "ringrule/optics/box_setup.h"

using namespace ringrule;

namespace {

constexpr const char* kToday = "2031-03-04";

SetupStep stepOf(const std::optional<Box>& box, SetupStepKind kind, const std::vector<PastBoxCheck>& history = {}) {
    const auto steps = boxSetup(box, history, kToday);
    REQUIRE(steps.size() == 6);
    CHECK(steps[static_cast<std::size_t>(kind)].kind == kind);
    return steps[static_cast<std::size_t>(kind)];
}

// A box of which nothing is left to do but the rod.
Box readyBox() {
    Box box = drawn::benchBox();
    box.ruleCheck = RuleCheck{{0.993, 0.995}, "2031-02-20"};
    box.lensCovariance = LensCovariance{};
    (*box.lensCovariance)[0][0] = (*box.lensCovariance)[1][1] = 16.0;
    return box;
}

PastBoxCheck checked(const Box& box, bool passed) {
    PastBoxCheck past;
    past.checkedOn = "2031-03-01";
    past.passed = passed;
    past.rod = PastRodReading{100.0, 100.1, 0.4, 0.002};
    past.boxFingerprint = boxFingerprint(box);
    return past;
}

PastBoxCheck faulty(const Box& box, BoxFault fault) {
    PastBoxCheck past = checked(box, false);
    past.findings.push_back({fault, true, "Mend this."});
    return past;
}

}  // namespace

TEST_CASE("Without a box file the plate comes first", "[box_setup]") {
    const auto steps = boxSetup(std::nullopt, {}, kToday);
    REQUIRE(steps.size() == 6);
    CHECK(steps[0].state == SetupState::ToDo);
    for (std::size_t i = 1; i < steps.size(); ++i) CHECK(steps[i].state == SetupState::CannotTell);
    CHECK(nextSetupStep(steps)->kind == SetupStepKind::Print);
}

TEST_CASE("A box as the plate command writes it has all but the print to do", "[box_setup]") {
    Box box = drawn::benchBox();
    box.lens.reset();
    box.media.reset();
    box.animalPlane = {8.0, 8.0};
    CHECK(stepOf(box, SetupStepKind::Print).state == SetupState::Done);
    for (const auto kind : {SetupStepKind::Rule, SetupStepKind::Lens, SetupStepKind::Water, SetupStepKind::AnimalPlane,
                            SetupStepKind::Rod}) {
        const SetupStep step = stepOf(box, kind);
        CAPTURE(setupStepId(kind));
        CHECK(step.state == SetupState::ToDo);
        CHECK_FALSE(step.title.empty());
        CHECK_FALSE(step.found.empty());
        CHECK_FALSE(step.advice.empty());
    }
    CHECK(nextSetupStep(boxSetup(box, {}, kToday))->kind == SetupStepKind::Rule);
}

TEST_CASE("A finished box has nothing left to do", "[box_setup]") {
    const Box box = readyBox();
    const auto steps = boxSetup(box, {checked(box, true)}, kToday);
    for (const SetupStep& step : steps) {
        CAPTURE(setupStepId(step.kind), textOf(step.found), textOf(step.advice));
        CHECK(step.state == SetupState::Done);
        CHECK(step.advice.empty());
    }
    CHECK_FALSE(nextSetupStep(steps));
    // 2 mm over 1.339 × 473 mm of reduced distance.
    CHECK_THAT(textOf(steps[4].found), Catch::Contains("0.32 %") || Catch::Contains("0.33 %"));
}

TEST_CASE("What a check found wrong is told at the step that mends it", "[box_setup]") {
    const Box box = readyBox();
    const auto [fault, kind] = GENERATE(table<BoxFault, SetupStepKind>({
        {BoxFault::MarkerOff, SetupStepKind::Print},
        {BoxFault::PlateUneven, SetupStepKind::Print},
        {BoxFault::NotThisCamera, SetupStepKind::Lens},
        {BoxFault::DistanceOff, SetupStepKind::Water},
        {BoxFault::LengthOff, SetupStepKind::Rod},
    }));
    const SetupStep step = stepOf(box, kind, {faulty(box, fault)});
    CHECK(step.state == SetupState::Wrong);
    CHECK_THAT(textOf(step.advice), Catch::Contains("Mend this."));
    // Once the file is corrected the old check says nothing of that step.
    Box mended = box;
    mended.media->cameraToWindowMm += 5.0;
    CHECK(stepOf(mended, kind, {faulty(box, fault)}).state != SetupState::Wrong);
}

TEST_CASE("Another camera than at the rod check asks for the rod again", "[box_setup]") {
    const Box box = readyBox();
    PastBoxCheck rod = checked(box, true), plate = checked(box, true);
    rod.camera = {"Example", "One", 50.0};
    plate.rod.reset();
    plate.checkedOn = "2031-03-03";
    plate.camera = rod.camera;
    CHECK(stepOf(box, SetupStepKind::Rod, {rod, plate}).state == SetupState::Done);
    plate.camera.model = "Two";
    const SetupStep step = stepOf(box, SetupStepKind::Rod, {rod, plate});
    CHECK(step.state == SetupState::ToDo);
    CHECK_THAT(textOf(step.found), Catch::Contains("Another camera"));
}

TEST_CASE("What cannot be is wrong, what is old is to do again", "[box_setup]") {
    Box box = readyBox();
    SECTION("the rule check of last year") {
        box.ruleCheck->checkedOn = "2030-11-01";
        CHECK(stepOf(box, SetupStepKind::Rule).state == SetupState::ToDo);
    }
    SECTION("a rule check without a day") {
        box.ruleCheck->checkedOn.clear();
        CHECK(stepOf(box, SetupStepKind::Rule).state == SetupState::Done);
    }
    SECTION("a pane of air") {
        box.media->windowIndex = 1.0;
        CHECK(stepOf(box, SetupStepKind::Water).state == SetupState::Wrong);
        box.media->windowThicknessMm = 0.0;
        CHECK(stepOf(box, SetupStepKind::Water).state == SetupState::Done);
    }
    SECTION("an animal inside the plate") {
        box.animalPlane.distanceFromPlateMm = 0.0;
        CHECK(stepOf(box, SetupStepKind::AnimalPlane).state == SetupState::Wrong);
    }
    SECTION("an animal that never moves") {
        box.animalPlane.toleranceMm = 0.0;
        CHECK(stepOf(box, SetupStepKind::AnimalPlane).state == SetupState::Wrong);
    }
    SECTION("a lens known to a per cent") {
        (*box.lensCovariance)[0][0] = 42.5 * 42.5;
        CHECK(stepOf(box, SetupStepKind::Lens).state == SetupState::Wrong);
    }
}

TEST_CASE("What a step says names no command, and a lens of unknown origin is told as that", "[box_setup]") {
    Box box = readyBox();
    for (const auto& steps : {boxSetup(std::nullopt, {}, kToday), boxSetup(box, {}, kToday),
                              boxSetup(box, {faulty(box, BoxFault::LengthOff)}, kToday)}) {
        for (const SetupStep& step : steps) {
            CHECK_THAT(textOf(step.found) + textOf(step.advice), !Catch::Contains("ringrule "));
            CHECK_THAT(textOf(step.found) + textOf(step.advice), !Catch::Contains("%1"));
        }
    }
    box.lensOrigin = {};
    const std::string unknown = textOf(stepOf(box, SetupStepKind::Lens).found);
    CHECK_THAT(unknown, Catch::Contains("px focal length") && Catch::Contains("neither camera nor day"));
    box.lensOrigin.cameraModel = "One";
    box.lensOrigin.calibratedOn = "2031-01-02";
    const std::string known = textOf(stepOf(box, SetupStepKind::Lens).found);
    CHECK_THAT(known, Catch::Contains("Camera: One.") && Catch::Contains("Calibrated on 2031-01-02."));
}

TEST_CASE("A sentence puts its values where they belong, in any order", "[sentence]") {
    CHECK(Sentence{"%2 of %1 at 95 %.", {"three", "two"}}.text() == "two of three at 95 %.");
    CHECK(Sentence{"%1 % and %3", {"5"}}.text() == "5 % and %3");
    CHECK(textOf({{"One."}, {"%1.", {"Two"}}}) == "One. Two.");
    CHECK(textOf({}).empty());
}

TEST_CASE("Steps and states keep their ids", "[box_setup]") {
    CHECK(setupStepId(SetupStepKind::Print) == "print");
    CHECK(setupStepId(SetupStepKind::AnimalPlane) == "animal-plane");
    CHECK(setupStepId(SetupStepKind::Rod) == "rod");
    CHECK(setupStateId(SetupState::CannotTell) == "cannot-tell");
    CHECK(setupStateId(SetupState::Done) == "done");
}
