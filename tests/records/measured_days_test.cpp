// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "../scratch_folder.h"
#include "either_store.h"
#include "ringrule/records/measured_days.h"
#include "sample_records.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

struct House {
    ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    AnimalId first = store.addAnimal(sample::animal("A1", 1));
    AnimalId second = store.addAnimal(sample::animal("A2", 2));

    MeasureId measure(Date on, std::optional<AnimalId> animal, double lengthMm, bool accepted = true) {
        Session session = sample::session();
        session.on = on;
        StoredPhoto photo;
        photo.session = store.addSession(session);
        const std::string name = std::to_string(photo.session.value);
        StoredMeasure row = sample::stored(store.addPhoto(photo, scratch.write(name, name)), animal, lengthMm);
        row.accepted = accepted;
        return store.addMeasure(row);
    }
    /// "A1 2031-01-06 101.25 102" for each animal and day between two days.
    [[nodiscard]] std::vector<std::string> days(Date from, Date to) const {
        std::vector<std::string> told;
        eachMeasuredDay(store, from, to, [&](AnimalId animal, Date on, std::span<const Measurement> photos) {
            std::string line = (animal == first ? "A1 " : "A2 ") + formatDate(on);
            for (const Measurement& photo : photos)
                line += " " + std::to_string(static_cast<int>(photo.standardLengthMm.value));
            told.push_back(line);
        });
        return told;
    }
};

}  // namespace

TEST_CASE("each animal's day has the measures that count, of all its sessions, in order", "[either]") {
    House house;
    const Date day{2031y / 1 / 6};
    house.measure(day, house.second, 200.0);
    house.measure(day, house.first, 101.0);
    house.measure(day, house.second, 201.0);  // another session of the same day
    house.measure(day, house.first, 102.0, false);
    house.measure(day, std::nullopt, 103.0);
    const MeasureId wrong = house.measure(day + std::chrono::days(1), house.first, 104.0);
    StoredMeasure corrected = house.store.measuresOfAnimal(house.first).back();
    corrected.replaces = wrong;
    corrected.measurement.standardLengthMm.value = 105.0;
    house.store.addMeasure(corrected);
    CHECK(house.days(day, day + std::chrono::days(9)) ==
          std::vector<std::string>{"A1 2031-01-06 101", "A2 2031-01-06 200 201", "A1 2031-01-07 105"});
    CHECK(house.days(day + std::chrono::days(1), day + std::chrono::days(1)).size() == 1);
    CHECK(house.days(day + std::chrono::days(2), day + std::chrono::days(9)).empty());
}

TEST_CASE("a year of sessions, read a few at a time, lacks no day and tells none twice", "[either]") {
    House house;
    const Date from{2031y / 1 / 6};
    std::vector<std::string> expected;
    for (int session = 0; session < 23; ++session) {  // more than is read at a time, and no multiple of it
        const Date on = from + std::chrono::days(14 * session);
        house.measure(on, house.first, 100.0 + session);
        expected.push_back("A1 " + formatDate(on) + " " + std::to_string(100 + session));
    }
    CHECK(house.days(from, from + std::chrono::days(365)) == expected);
    Measurement whole;
    eachMeasuredDay(house.store, from, from,
                    [&](AnimalId, Date, std::span<const Measurement> photos) { whole = photos[0]; });
    const Measurement written = house.store.measuresOfAnimal(house.first).front().measurement;
    CHECK(whole.remarks == written.remarks);
    CHECK(whole.protocol == written.protocol);
    CHECK(whole.view == written.view);
    CHECK(whole.bellyHollowPercent.sdShared == written.bellyHollowPercent.sdShared);
    CHECK(whole.girthRatio.value == written.girthRatio.value);
}
