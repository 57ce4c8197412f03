// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>

#include "../scratch_folder.h"
#include "sample_records.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

BoxCheckRecord check(const std::string& at, BoxVerdict verdict) {
    BoxCheckRecord record;
    record.at = at;
    record.boxName = "bench box";
    record.verdict = verdict;
    return record;
}

const Date kDay{2031y / 1 / 6};

bool has(const StoredMeasure& measure, Remark remark) {
    const auto& remarks = measure.measurement.remarks;
    return std::find(remarks.begin(), remarks.end(), remark) != remarks.end();
}

}  // namespace

TEST_CASE("the standing of a box follows its checks") {
    using enum BoxVerdict;
    const auto on = [](std::vector<BoxCheckRecord> checks) { return boxStanding(checks, kDay, 62); };
    CHECK(on({}) == BoxStanding::NeverChecked);
    CHECK(on({check("2031-01-06T08:00:00", Holds)}) == BoxStanding::Good);
    CHECK(on({check("2030-11-05T08:00:00", Holds)}) == BoxStanding::Good);   // 62 days
    CHECK(on({check("2030-11-04T08:00:00", Holds)}) == BoxStanding::Stale);  // 63
    CHECK(on({check("2031-01-05", Holds), check("2031-01-06", Fails)}) == BoxStanding::Failed);
    CHECK(on({check("2031-01-06T08:00:00", Fails), check("2031-01-06T08:10:00", Holds)}) == BoxStanding::Good);
    CHECK(on({check("2031-01-05", Holds), check("2031-02-06", Fails)}) == BoxStanding::Failed);  // went off between
    CHECK(on({check("2031-01-05", Holds), check("2031-02-06", Holds), check("2031-03-06", Fails)}) ==
          BoxStanding::Good);
    CHECK(on({check("2031-02-06", Holds)}) == BoxStanding::NeverChecked);
    CHECK(on({check("2031-01-05", CannotTell)}) == BoxStanding::NeverChecked);
    CHECK(on({check("2031-01-04", Fails), check("2031-01-05", CannotTell)}) == BoxStanding::Failed);
}

TEST_CASE("a check comes back with all that was told") {
    const ScratchFolder scratch;
    Store store = Store::create(scratch / "house");
    BoxCheckRecord given = check("2031-01-06T08:30:00", BoxVerdict::Fails);
    given.keeper = "K2";
    given.withRod = true;
    given.sentences = "The rod reads 1 % long.";
    given.markerRmsPx = 0.25;
    given.rodMm = 100.0;
    given.readMm = 101.0;
    given.readU95Mm = 0.5;
    given.photoName = "rod.jpg";
    given.photoHash = "abc";
    store.addBoxCheck(given);
    store.addBoxCheck(check("2031-01-05", BoxVerdict::Holds));
    const auto all = store.boxChecks("bench box");
    REQUIRE(all.size() == 2);
    CHECK(all[0].at == "2031-01-05");
    CHECK_FALSE(all[0].withRod);
    CHECK_FALSE(all[0].rodMm.has_value());
    CHECK(all[1].verdict == BoxVerdict::Fails);
    CHECK(all[1].withRod);
    CHECK(all[1].keeper == "K2");
    CHECK(all[1].sentences == given.sentences);
    CHECK(all[1].markerRmsPx == 0.25);
    CHECK(all[1].readMm == 101.0);
    CHECK(all[1].readU95Mm == 0.5);
    CHECK(all[1].photoHash == "abc");
    CHECK(store.boxChecks("other box").empty());
    CHECK_THROWS_AS(store.removeRecord("box-check", 1, 1), Error);
}

TEST_CASE("measures are marked while the box's check says so, and no longer once it holds") {
    const ScratchFolder scratch;
    Store store = Store::create(scratch / "house");
    StoredPhoto photo;
    photo.session = store.addSession(sample::session());
    const PhotoId id = store.addPhoto(photo, scratch.write("a.jpg", "x"));
    store.addMeasure(sample::stored(id, std::nullopt));
    const auto measure = [&] { return store.measuresOfPhoto(id).at(0); };
    CHECK_FALSE(has(measure(), Remark::BoxCheckFailed));
    CHECK_FALSE(has(measure(), Remark::BoxCheckStale));
    store.addBoxCheck(check("2030-06-01", BoxVerdict::Holds));
    CHECK(has(measure(), Remark::BoxCheckStale));
    store.set("box_check_days", "365");
    CHECK_FALSE(has(measure(), Remark::BoxCheckStale));
    store.addBoxCheck(check("2031-01-06T09:00:00", BoxVerdict::Fails));
    CHECK(has(measure(), Remark::BoxCheckFailed));
    CHECK(store.boxStandingOn("bench box", kDay) == BoxStanding::Failed);

    // A correction made meanwhile does not keep the remark for good.
    StoredMeasure corrected = measure();
    corrected.replaces = corrected.id;
    store.addMeasure(corrected);
    store.addBoxCheck(check("2031-01-06T10:00:00", BoxVerdict::Holds));
    CHECK_FALSE(has(measure(), Remark::BoxCheckFailed));
    CHECK(measure().measurement.remarks == sample::measurement().remarks);
}
