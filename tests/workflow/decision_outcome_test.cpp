// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/decision_outcome.h"

#include <catch2/catch.hpp>

using namespace ringrule;

namespace {

Date day(const char* text) {
    return *parseDate(text);
}

AnimalHistory seenOn(std::int64_t id, std::initializer_list<const char*> days) {
    AnimalHistory history;
    history.animal.id.value = id;
    for (const char* each : days) {
        Observation seen;
        seen.on = day(each);
        history.observations.push_back(seen);
    }
    return history;
}

Finding thin(std::int64_t animal, const char* on) {
    Finding finding;
    finding.kind = FindingKind::Thin;
    finding.animal.value = animal;
    finding.on = day(on);
    finding.by = {-6.0, 1.0, 0.0};
    return finding;
}

Decision decided(std::int64_t animal, const char* on, std::int64_t number = 1) {
    Decision decision;
    decision.animal = AnimalId{animal};
    decision.on = decision.findingOn.emplace(day(on));
    decision.finding = "thin";
    decision.number = number;
    return decision;
}

}  // namespace

TEST_CASE("what became of a decision is told by the next session, and only by that") {
    const Decision decision = decided(4, "2031-03-03");
    const std::vector<AnimalHistory> before{seenOn(4, {"2031-02-03", "2031-03-03"}), seenOn(5, {"2031-04-07"})};
    using State = DecisionOutcome::State;
    CHECK(outcomeOf(decision, before, std::vector{thin(4, "2031-03-03")}, day("2031-04-07")).state ==
          State::NoSessionSince);
    const std::vector<AnimalHistory> after{seenOn(4, {"2031-03-03", "2031-04-07"})};
    const auto still = outcomeOf(decision, after, std::vector{thin(4, "2031-04-07")}, day("2031-04-07"));
    CHECK(still.state == State::StillTold);
    CHECK(still.session == day("2031-04-07"));
    CHECK(still.by.value == -6.0);
    // A finding that is only carried over from the session that was decided on says nothing new.
    CHECK(outcomeOf(decision, after, std::vector{thin(4, "2031-03-03")}, day("2031-04-07")).state ==
          State::NoLongerTold);
    CHECK(outcomeOf(decision, after, {}, day("2031-04-07")).state == State::NoLongerTold);
    CHECK(outcomeOf(decision, after, {}, day("2031-03-20")).state == State::NoSessionSince);
}

TEST_CASE("a finding counts as decided on until it is told anew") {
    const std::vector<Decision> decisions{decided(4, "2031-03-03", 1), decided(4, "2031-03-03", 2)};
    const Decision* last = decisionOn(thin(4, "2031-03-03"), decisions);
    REQUIRE(last != nullptr);
    CHECK(last->number == 2);
    CHECK(decisionOn(thin(4, "2031-04-07"), decisions) == nullptr);
    CHECK(decisionOn(thin(5, "2031-03-03"), decisions) == nullptr);
    Finding stalled = thin(4, "2031-03-03");
    stalled.kind = FindingKind::Stalled;
    CHECK(decisionOn(stalled, decisions) == nullptr);
    Finding tank = thin(4, "2031-03-03");
    tank.tank = TankId{4};
    CHECK(decisionOn(tank, decisions) == nullptr);
}

TEST_CASE("what is due to be looked at again, the longest first, unless it was decided on again") {
    Decision first = decided(4, "2031-03-03", 1), second = decided(5, "2031-03-03", 2);
    first.followUpOn = day("2031-04-07");
    second.followUpOn = day("2031-03-10");
    CHECK(decisionsDue(std::vector{first, second}, day("2031-03-09")).empty());
    const auto due = decisionsDue(std::vector{first, second}, day("2031-04-07"));
    REQUIRE(due.size() == 2);
    CHECK(due[0].number == 2);
    CHECK(decisionsDue(std::vector{first, second, decided(5, "2031-03-12", 3)}, day("2031-04-07")).size() == 1);
}
