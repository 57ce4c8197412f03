// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>

#include "../records/sample_records.h"
#include "../scratch_folder.h"
#include "ringrule/error.h"
#include "ringrule/workflow/collection_review.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

const std::filesystem::path kSource(RINGRULE_SOURCE_DIR);

struct House {
    ScratchFolder scratch;
    Store store = Store::create(scratch / "house");
    Box box = readBox(kSource / "calibration/bench-box.json");
    AnimalId animal = store.addAnimal(sample::animal("P1", 1));

    void copyPhoto(const std::string& day, const std::string& name, const std::string& as) const {
        std::filesystem::create_directories((scratch / as).parent_path());
        std::filesystem::copy_file(kSource / "sample_images" / day / name, scratch / as);
    }
    SessionSummary add(const std::string& folder, Date on = {}, const Progress& progress = {}) {
        Session session;
        session.on = on;
        session.keeper = "K1";
        return addSessionFolder(store, scratch / folder, session, box, 2, progress);
    }
    [[nodiscard]] std::size_t photoFiles() const { return filesIn(scratch / "house/photos"); }
};

bool says(const std::vector<std::string>& troubles, const std::string& part) {
    return std::any_of(troubles.begin(), troubles.end(),
                       [&](const std::string& t) { return t.find(part) != std::string::npos; });
}

}  // namespace

TEST_CASE("a folder becomes a session on the photos' own day, each animal told by its card") {
    House house;
    house.copyPhoto("2031-01-06", "P1-a_rendered.jpg", "photos/P1-a.jpg");
    house.copyPhoto("2031-01-06", "P1-b_rendered.jpg", "photos/P1-b.jpg");
    house.copyPhoto("2031-01-06", "above/P1-c_rendered.jpg", "photos/above/P1-c.jpg");
    const SessionSummary summary = house.add("photos");
    CHECK(summary.on == Date{2031y / 1 / 6});
    CHECK(summary.photos == 3);
    CHECK(summary.measured == 3);
    CHECK(summary.troubles.empty());
    const auto photos = house.store.photos(summary.session);
    REQUIRE(photos.size() == 3);
    CHECK(photos[2].originalName == "above/P1-c.jpg");
    CHECK(photos[2].view == View::Above);
    const auto histories = historiesFromStore(house.store);
    REQUIRE(histories[0].observations.size() == 1);
    CHECK(histories[0].observations[0].sidePhotos == 2);
    CHECK(histories[0].observations[0].trunkWidthMm.known());
    CHECK(house.store.sessions().at(0).boxName == "bench box");
}

TEST_CASE("a day told by hand that the photos contradict is said, and theirs is kept") {
    House house;
    house.copyPhoto("2031-01-06", "P1-a_rendered.jpg", "photos/P1-a.jpg");
    const SessionSummary summary = house.add("photos", Date{2031y / 1 / 7});
    CHECK(summary.on == Date{2031y / 1 / 6});
    CHECK(says(summary.troubles, "the photos say 2031-01-06, the session was told as 2031-01-07"));
}

TEST_CASE("a photo of another day is kept and named") {
    House house;
    house.copyPhoto("2031-01-06", "P1-a_rendered.jpg", "photos/P1-a.jpg");
    house.copyPhoto("2031-01-06", "P1-b_rendered.jpg", "photos/P1-b.jpg");
    house.copyPhoto("2031-02-03", "P1-a_rendered.jpg", "photos/late.jpg");
    const SessionSummary summary = house.add("photos");
    CHECK(summary.on == Date{2031y / 1 / 6});
    CHECK(says(summary.troubles, "late.jpg: was taken on 2031-02-03, not on the session's day"));
}

TEST_CASE("bad photos and unknown cards are told and do not keep the others out") {
    House house;
    house.copyPhoto("2031-01-06", "P1-a_rendered.jpg", "photos/P1-a.jpg");
    house.copyPhoto("2031-01-06", "P2-a_rendered.jpg", "photos/P2-a.jpg");
    house.scratch.write("photos/text.jpg", "not a photo");
    const SessionSummary summary = house.add("photos");
    CHECK(summary.photos == 3);
    CHECK(summary.measured == 2);
    CHECK(summary.refused == 1);
    CHECK(says(summary.troubles, "text.jpg"));
    CHECK(says(summary.troubles, "card 2 belongs to no animal in this collection: add the animal or correct the card"));
    CHECK(house.store.measuresOfSession(summary.session).size() == 2);
    CHECK(house.store.measuresOfAnimal(house.animal).size() == 1);
}

TEST_CASE("a run that is stopped leaves the collection as it was") {
    House house;
    house.copyPhoto("2031-01-06", "P1-a_rendered.jpg", "photos/P1-a.jpg");
    house.copyPhoto("2031-01-06", "P1-b_rendered.jpg", "photos/P1-b.jpg");
    CHECK_THROWS_AS(house.add("photos", {}, [](double fraction, std::string_view) { return fraction < 0.4; }), Error);
    CHECK(house.store.sessions().empty());
    CHECK(house.photoFiles() == 0);
}

TEST_CASE("the same folder twice adds nothing the second time") {
    House house;
    house.copyPhoto("2031-01-06", "P1-a_rendered.jpg", "photos/P1-a.jpg");
    static_cast<void>(house.add("photos"));
    CHECK_THROWS_AS(house.add("photos"), Error);
    CHECK(house.store.sessions().size() == 1);
    // A new photo beside the old one is a session of its own; the old one is named.
    house.copyPhoto("2031-01-06", "P1-b_rendered.jpg", "photos/P1-b.jpg");
    const SessionSummary second = house.add("photos");
    CHECK(house.store.photos(second.session).size() == 1);
    CHECK(says(second.troubles, "P1-a.jpg: this photo is already in the collection"));
    CHECK(historiesFromStore(house.store)[0].observations.size() == 1);
}

TEST_CASE("box files are kept once each, another content under another name") {
    House house;
    const auto box = house.scratch.write("bench.json", "one");
    keepBoxFile(house.store, box);
    keepBoxFile(house.store, box);
    CHECK(filesIn(house.scratch / "house/calibration") == 1);
    house.scratch.write("bench.json", "two");
    keepBoxFile(house.store, box);
    CHECK(contentOf(house.scratch / "house/calibration/bench.json") == "one");
    CHECK(contentOf(house.scratch / "house/calibration/bench-2.json") == "two");
}
