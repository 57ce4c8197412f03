// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "../scratch_folder.h"
#include "either_store.h"
#include "ringrule/records/keeper_questions.h"
#include "sample_records.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

const Date kToday{2031y / 7 / 1};

struct House {
    ScratchFolder scratch;
    Store store = newCollection(scratch / "house");

    AnimalId add(const std::string& code, Sex sex = Sex::Female) {
        Animal animal = sample::animal(code, std::nullopt);
        animal.sex = sex;
        return store.addAnimal(animal);
    }
    void photograph(AnimalId animal, Date on, bool accepted = true) {
        Session session = sample::session();
        session.on = on;
        StoredPhoto photo;
        photo.session = store.addSession(session);
        const std::string name = std::to_string(photo.session.value);
        StoredMeasure measure = sample::stored(store.addPhoto(photo, scratch.write(name + ".jpg", name)), animal);
        measure.accepted = accepted;
        store.addMeasure(measure);
    }
    void feed(AnimalId animal, int daysAgo, const std::string& outcome) {
        store.addFeedingNote({animal, {}, kToday - std::chrono::days(daysAgo), "mysids", outcome, "K1", ""});
    }
};

std::string codes(const std::vector<KeeperAnswer>& answers) {
    std::string all;
    for (const KeeperAnswer& answer : answers) all += (all.empty() ? "" : " ") + answer.code;
    return all;
}

}  // namespace

TEST_CASE("who is due for photos and who has no measure in six weeks", "[either]") {
    House house;
    house.add("never");
    house.photograph(house.add("recent"), kToday - std::chrono::days(29));
    house.photograph(house.add("due"), kToday - std::chrono::days(30));
    house.photograph(house.add("limit"), kToday - std::chrono::days(42));
    house.photograph(house.add("late"), kToday - std::chrono::days(43));
    const AnimalId doubtful = house.add("doubtful");
    house.photograph(doubtful, kToday - std::chrono::days(5), false);  // photographed, but no measure counts yet
    const AnimalId byHand = house.add("by-hand");
    house.store.addHandMeasure({byHand, kToday - std::chrono::days(3), "standard_length_mm", 90.0, {}, "", "", ""});
    house.photograph(house.add("later"), kToday + std::chrono::days(3));
    CHECK(codes(whoIsDue(house.store, kToday)) == "by-hand later never late limit due");
    CHECK(codes(whoIsUnmeasured(house.store, kToday)) == "doubtful later never late");
    CHECK(whoIsUnmeasured(house.store, kToday).back().why == "last measured on 2031-05-19, 43 days ago");
}

TEST_CASE("a last day longer ago than a year, and one of two photos or a hand, is found", "[either]") {
    House house;
    const AnimalId ancient = house.add("ancient");
    house.photograph(ancient, kToday - std::chrono::days(900));
    house.photograph(ancient, kToday - std::chrono::days(800));
    const AnimalId both = house.add("both");
    house.photograph(both, kToday - std::chrono::days(70));
    house.photograph(both, kToday - std::chrono::days(60));
    house.store.addHandMeasure({both, kToday - std::chrono::days(65), "standard_length_mm", 90.0, {}, "", "", ""});
    auto answers = whoIsUnmeasured(house.store, kToday);
    REQUIRE(codes(answers) == "ancient both");
    CHECK(answers[0].why == "last measured on 2029-04-22, 800 days ago");
    CHECK(answers[1].why == "last measured on 2031-05-02, 60 days ago");
    house.store.addHandMeasure({both, kToday - std::chrono::days(50), "standard_length_mm", 90.0, {}, "", "", ""});
    house.store.addHandMeasure({ancient, kToday - std::chrono::days(850), "height_mm", 90.0, {}, "", "", ""});
    answers = whoIsUnmeasured(house.store, kToday);
    CHECK(answers[0].why == "last measured on 2029-04-22, 800 days ago");
    CHECK(answers[1].why == "last measured on 2031-05-12, 50 days ago");
    CHECK(whoIsDue(house.store, kToday)[1].why == "last photographed on 2031-05-02, 60 days ago");
    CHECK(codes(whoIsDue(house.store, kToday, 500)) == "ancient");
}

TEST_CASE("who died or left is asked for no more", "[either]") {
    House house;
    house.add("here");
    const TankId tank = house.store.addTank({{}, "B3", ""});
    house.store.addStay({house.add("moved-out"), tank, Date{2031y / 1 / 1}, Date{2031y / 6 / 1}});
    house.store.addStay({house.add("in-tank"), tank, Date{2031y / 1 / 1}, std::nullopt});
    house.add("dead");
    house.store.changeRecord("animal", house.store.numberOf("animal", "dead"), 1,
                             {{"gone_on", "2031-06-30"}, {"gone_how", "died"}});
    CHECK(codes(whoIsDue(house.store, kToday)) == "here in-tank");
    CHECK(codes(whoIsDue(house.store, Date{2031y / 5 / 1})) == "dead here in-tank moved-out");
}

TEST_CASE("whose food was refused three days running", "[either]") {
    House house;
    const AnimalId refuser = house.add("refuser");
    const AnimalId eater = house.add("eater");
    const AnimalId gap = house.add("gap");
    const AnimalId past = house.add("past");
    for (const int ago : {0, 1, 2}) house.feed(refuser, ago, "refused");
    for (const int ago : {0, 1, 2}) house.feed(eater, ago, "refused");
    house.feed(eater, 1, "taken");
    for (const int ago : {0, 1, 3}) house.feed(gap, ago, "refused");
    for (const int ago : {20, 21, 22}) house.feed(past, ago, "refused");
    const auto answers = whoRefuses(house.store, kToday);
    CHECK(codes(answers) == "refuser");
    CHECK(answers.at(0).why == "refused on 3 days running, last mysids");
    CHECK(codes(whoRefuses(house.store, kToday, 2)) == "gap refuser");
    CHECK(codes(whoRefuses(house.store, kToday - std::chrono::days(20))) == "past");
}

TEST_CASE("who is of unknown sex at six months", "[either]") {
    House house;
    house.add("known");
    house.add("unknown", Sex::Unknown);  // hatched 2030-11-15
    CHECK(codes(whoIsOfUnknownSex(house.store, kToday)) == "unknown");
    CHECK(whoIsOfUnknownSex(house.store, Date{2031y / 5 / 16}).empty());  // 182 days
    CHECK(codes(whoIsOfUnknownSex(house.store, Date{2031y / 5 / 17})) == "unknown");
}

TEST_CASE("who is to be looked at again is told from the day on, until something was decided on the same finding",
          "[either]") {
    House house;
    const AnimalId animal = house.add("A1");
    const TankId tank = house.store.addTank({{}, "B3", "Bay 3"});
    Decision decision{animal, kToday - std::chrono::days(10), "thin", "watch", "K1", "weigh the food"};
    decision.findingText = "Thinner than its tankmates.";
    decision.findingOn = kToday - std::chrono::days(11);
    decision.followUpOn = kToday - std::chrono::days(1);
    const std::int64_t number = house.store.addDecision(decision);
    Decision ofTank{{}, kToday - std::chrono::days(10), "stalled", "acted", "K1", ""};
    ofTank.tank = tank;
    ofTank.followUpOn = kToday;
    house.store.addDecision(ofTank);
    CHECK(whoIsToFollowUp(house.store, kToday - std::chrono::days(2)).empty());
    CHECK(codes(whoIsToFollowUp(house.store, kToday - std::chrono::days(1))) == "A1");
    CHECK(codes(whoIsToFollowUp(house.store, kToday)) == "A1 tank B3");
    CHECK(whoIsToFollowUp(house.store, kToday).at(0).why ==
          "look again on 2031-06-30 (1 day ago): thin, watch on 2031-06-21, weigh the food");
    CHECK(house.store.decisions(animal).at(0).findingText == "Thinner than its tankmates.");
    CHECK(house.store.decisions(animal).at(0).findingOn == kToday - std::chrono::days(11));
    house.store.addDecision({animal, kToday, "stalled", "acted", "K1", ""});  // another finding
    CHECK(codes(whoIsToFollowUp(house.store, kToday)) == "A1 tank B3");
    house.store.addDecision({animal, kToday, "thin", "dismissed", "K2", "ate well"});
    CHECK(codes(whoIsToFollowUp(house.store, kToday)) == "tank B3");
    house.store.undo(house.store.changes().back().id);
    CHECK(codes(whoIsToFollowUp(house.store, kToday)) == "A1 tank B3");
    house.store.changeRecord("decision", number, 1, {{"follow_up_on", ""}});
    CHECK(codes(whoIsToFollowUp(house.store, kToday)) == "tank B3");
    CHECK_THROWS_AS(house.store.addDecision({{}, kToday, "thin", "watch", "K1", ""}), Error);  // of nobody
}
