// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "../records/sample_records.h"
#include "../scratch_folder.h"
#include "ringrule/workflow/repeat_report.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

struct House {
    ScratchFolder scratch;
    Store store = Store::create(scratch / "house");
    std::vector<AnimalId> animals;
    int photos = 0;

    House() {
        for (const char* code : {"P1", "P2"}) {
            Animal animal = sample::animal();
            animal.code = code;
            animal.card = static_cast<int>(animals.size()) + 40;
            animals.push_back(store.addAnimal(animal));
        }
    }
    void session(Date on, const std::string& keeper, const std::vector<std::vector<double>>& lengthsMm) {
        Session s = sample::session();
        s.on = on;
        s.keeper = keeper;
        const SessionId id = store.addSession(s);
        for (std::size_t animal = 0; animal < lengthsMm.size(); ++animal) {
            for (const double lengthMm : lengthsMm[animal]) {
                StoredPhoto photo;
                photo.session = id;
                photo.originalName = "p" + std::to_string(photos++) + ".jpg";
                StoredMeasure stored =
                    sample::stored(store.addPhoto(photo, scratch.write(photo.originalName, photo.originalName)),
                                   animals[animal], lengthMm);
                stored.accepted = true;
                store.addMeasure(stored);
            }
        }
    }
};

const Repeatability& lengthOf(const RepeatReport& report) {
    REQUIRE_FALSE(report.lines.empty());
    CHECK(report.lines.front().measure == "standard length");
    return report.lines.front().repeats;
}

}  // namespace

TEST_CASE("repeats of a day, and of a keeper over all days") {
    House house;
    house.session(Date{2031y / 1 / 6}, "K1", {{100.0, 100.2}, {80.0, 80.4}});
    house.session(Date{2031y / 2 / 3}, "K2", {{110.0, 111.0}});
    house.session(Date{2031y / 3 / 3}, "K1", {{120.0, 120.2}});
    const Repeatability day = lengthOf(repeatsOfDay(house.store, Date{2031y / 1 / 6}));
    CHECK(day.groups == 2);
    CHECK(day.readings == 4);
    // Pairs that differ by 0.2 and 0.4: sqrt((0.04 + 0.16) / 4); for two single photos 1.96 √2 times that.
    CHECK(day.tem == Approx(0.223607).epsilon(1e-5));
    CHECK(day.smallestRealChange == Approx(0.619795).epsilon(1e-5));
    const Repeatability keeper = lengthOf(repeatsOfKeeper(house.store, "K1"));
    CHECK(keeper.groups == 3);
    // Half the mean of 0.04, 0.16 and 0.04, its root: an animal's growth between days is no error.
    CHECK(keeper.tem == Approx(0.2).epsilon(1e-6));
    CHECK(repeatsOfKeeper(house.store, "K9").lines.empty());
}

TEST_CASE("a photo that disagrees with the animal's others is named") {
    House house;
    house.session(Date{2031y / 1 / 6}, "K1", {{100.0, 100.1, 130.0}});
    const RepeatReport report = repeatsOfDay(house.store, Date{2031y / 1 / 6});
    REQUIRE(report.odd.size() == 1);
    CHECK(report.odd.front().find("P1, 2031-01-06: p2.jpg disagrees") == 0);
}
