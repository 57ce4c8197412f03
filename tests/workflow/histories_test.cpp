// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "../records/sample_records.h"
#include "../scratch_folder.h"
#include "ringrule/workflow/collection_review.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

struct House {
    ScratchFolder scratch;
    Store store = Store::create(scratch / "house");
    AnimalId animal = store.addAnimal(sample::animal());
    int photos = 0;

    SessionId session(Date on) {
        Session s = sample::session();
        s.on = on;
        return store.addSession(s);
    }
    MeasureId measure(SessionId session, double lengthMm, bool accepted = true) {
        StoredPhoto photo;
        photo.session = session;
        const std::string name = "p" + std::to_string(photos++) + ".jpg";
        StoredMeasure stored = sample::stored(store.addPhoto(photo, scratch.write(name, name)), animal, lengthMm);
        stored.accepted = accepted;
        return store.addMeasure(stored);
    }
    [[nodiscard]] AnimalHistory history() const { return historiesFromStore(store).at(0); }
};

}  // namespace

TEST_CASE("photos of one session are one observation, sessions come in order of time") {
    House house;
    const SessionId later = house.session(Date{2031y / 2 / 3});
    const SessionId first = house.session(Date{2031y / 1 / 6});
    house.measure(later, 111.0);
    house.measure(first, 100.0);
    house.measure(first, 100.2);
    const AnimalHistory history = house.history();
    REQUIRE(history.observations.size() == 2);
    CHECK(history.observations[0].on == Date{2031y / 1 / 6});
    CHECK(history.observations[0].sidePhotos == 2);
    CHECK(history.observations[0].standardLengthMm.value == Approx(100.1).margin(0.11));
    CHECK(history.observations[1].standardLengthMm.value == Approx(111.0).margin(1e-9));
    // 2030-11-15 to 2031-01-06: 15 + 31 + 6 days.
    CHECK(history.observations[0].ageDays == 52.0);
}

TEST_CASE("a measure that was not accepted, or was replaced, is no part of the history") {
    House house;
    const SessionId session = house.session(Date{2031y / 1 / 6});
    const MeasureId wrong = house.measure(session, 50.0, false);
    CHECK(house.history().observations.empty());
    house.store.setAccepted(wrong, true);
    CHECK(house.history().observations.size() == 1);
    StoredMeasure corrected = house.store.measuresOfAnimal(house.animal).at(0);
    corrected.replaces = wrong;
    corrected.measurement.standardLengthMm.value = 101.0;
    house.store.addMeasure(corrected);
    REQUIRE(house.history().observations.size() == 1);
    CHECK(house.history().observations[0].standardLengthMm.value == Approx(101.0).margin(1e-9));
}

TEST_CASE("girth is not fair on any day of a state, its first and last included") {
    House house;
    house.store.addState({house.animal, "brooding", Date{2031y / 5 / 1}, Date{2031y / 5 / 16}});
    struct Case {
        Date on;
        bool fair;
    };
    const auto day = GENERATE(values<Case>({{Date{2031y / 4 / 30}, true},
                                            {Date{2031y / 5 / 1}, false},
                                            {Date{2031y / 5 / 16}, false},
                                            {Date{2031y / 5 / 17}, true}}));
    house.measure(house.session(day.on), 100.0);
    CHECK(house.history().observations.at(0).girthFair == day.fair);
}

TEST_CASE("a state that has not ended goes on") {
    House house;
    house.store.addState({house.animal, "brooding", Date{2031y / 5 / 1}, std::nullopt});
    house.measure(house.session(Date{2032y / 5 / 1}), 100.0);
    CHECK_FALSE(house.history().observations.at(0).girthFair);
}

TEST_CASE("each history has its own animal's stays, diets and states only") {
    House house;
    const AnimalId other = house.store.addAnimal(sample::animal("P5", 15));
    const TankId tank = house.store.addTank({{}, "B3", "Bay 3"});
    house.store.addStay({house.animal, tank, Date{2031y / 1 / 1}, std::nullopt});
    house.store.addStay({other, tank, Date{2031y / 1 / 2}, std::nullopt});
    const auto histories = historiesFromStore(house.store);
    REQUIRE(histories.size() == 2);
    REQUIRE(histories[1].stays.size() == 1);
    CHECK(histories[1].stays[0].from == Date{2031y / 1 / 2});
    CHECK(histories[1].observations.empty());
}

TEST_CASE("lengths by hand are part of the growth on days without photos, with their own interval or a wide one") {
    House house;
    house.measure(house.session(Date{2031y / 1 / 6}), 100.0);
    const auto byHand = [&](Date on, const std::string& measure, double value, std::optional<double> u95) {
        house.store.addHandMeasure({house.animal, on, measure, value, u95, "ruler", "K1", ""});
    };
    byHand(Date{2030y / 12 / 1}, "standard_length_mm", 60.0, 0.5);
    byHand(Date{2030y / 12 / 20}, "standard_length_mm", 80.0, std::nullopt);
    byHand(Date{2031y / 1 / 6}, "standard_length_mm", 140.0, 0.5);  // photos of that day win
    byHand(Date{2031y / 1 / 7}, "trunk_depth_mm", 4.0, 0.5);        // not judged beside a photo's
    const auto observations = house.history().observations;
    REQUIRE(observations.size() == 3);
    CHECK(observations[0].standardLengthMm.value == 60.0);
    CHECK(observations[0].standardLengthMm.u95() == Approx(0.5));
    CHECK(observations[0].ageDays == 16.0);
    CHECK(observations[0].sidePhotos == 0);
    CHECK_FALSE(observations[0].trunkDepthMm.known());
    CHECK(observations[1].standardLengthMm.u95() == Approx(2.4));  // 3 %
    CHECK(observations[2].standardLengthMm.value == Approx(100.0).margin(1e-9));
}
