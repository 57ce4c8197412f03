// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>

#include "../scratch_folder.h"
#include "either_store.h"
#include "ringrule/optics/box_judgement.h"
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

BoxCheckRecord rodCheck(const std::string& at, BoxVerdict verdict) {
    BoxCheckRecord record = check(at, verdict);
    record.withRod = true;
    record.rodMm = 100.0;
    record.readMm = verdict == BoxVerdict::Holds ? 100.1 : 101.0;
    if (verdict == BoxVerdict::Fails) record.sentences = "fails length-off: The rod reads 1 % long.";
    return record;
}

const Date kDay{2031y / 1 / 6};

bool has(const StoredMeasure& measure, Remark remark) {
    const auto& remarks = measure.measurement.remarks;
    return std::find(remarks.begin(), remarks.end(), remark) != remarks.end();
}

}  // namespace

TEST_CASE("a kept check is judged as the optics judge one", "[either]") {
    using enum BoxVerdict;
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    const auto on = [&store](Date day) { return store.boxJudgementOn("bench box", day); };
    CHECK(on(kDay).state == BoxState::NeverChecked);
    store.addBoxCheck(check("2030-11-04T09:00:00", CannotTell));
    CHECK(on(kDay).state == BoxState::NeverChecked);
    store.addBoxCheck(check("2030-11-04T10:00:00", Holds));
    CHECK(on(kDay).reason == "rod-check-missing");
    store.addBoxCheck(rodCheck("2030-11-05T08:00:00", Holds));
    CHECK(on(kDay).state == BoxState::Passed);  // 62 days
    CHECK(on(kDay + std::chrono::days(1)).reason == "check-old");
    store.addBoxCheck(rodCheck("2031-02-06T08:00:00", Fails));
    CHECK(on(kDay).reason == "next-check-failed");
    CHECK(on(Date{2031y / 2 / 7}).reason == "check-failed");
    CHECK(on(Date{2031y / 2 / 7}).sentence.text().find("The rod reads 1 % long.") != std::string::npos);
}

TEST_CASE("a check comes back with all that was told", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
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
    given.cameraMake = "Example";
    given.cameraModel = "One";
    given.focalLengthMm = 50.0;
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
    CHECK(all[1].cameraMake == "Example");
    CHECK(all[1].cameraModel == "One");
    CHECK(all[1].focalLengthMm == 50.0);
    CHECK_FALSE(all[0].focalLengthMm.has_value());
    CHECK(store.boxChecks("other box").empty());
    CHECK_THROWS_AS(store.removeRecord("box-check", 1, 1), Error);
}

TEST_CASE("measures are marked while the box's check says so, and no longer once it holds", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    StoredPhoto photo;
    photo.session = store.addSession(sample::session());
    const PhotoId id = store.addPhoto(photo, scratch.write("a.jpg", "x"));
    store.addMeasure(sample::stored(id, std::nullopt));
    const auto measure = [&] { return store.measuresOfPhoto(id).at(0); };
    CHECK_FALSE(has(measure(), Remark::BoxCheckFailed));
    CHECK_FALSE(has(measure(), Remark::BoxCheckStale));
    store.addBoxCheck(rodCheck("2030-06-01", BoxVerdict::Holds));
    CHECK(has(measure(), Remark::BoxCheckStale));
    store.set("box_check_days", "365");
    CHECK_FALSE(has(measure(), Remark::BoxCheckStale));
    store.addBoxCheck(rodCheck("2031-01-06T09:00:00", BoxVerdict::Fails));
    CHECK(has(measure(), Remark::BoxCheckFailed));
    CHECK(store.boxJudgementOn("bench box", kDay).state == BoxState::Failed);

    // A correction made meanwhile does not keep the remark for good.
    StoredMeasure corrected = measure();
    corrected.replaces = corrected.id;
    store.addMeasure(corrected);
    store.addBoxCheck(rodCheck("2031-01-06T10:00:00", BoxVerdict::Holds));
    CHECK_FALSE(has(measure(), Remark::BoxCheckFailed));
    CHECK(measure().measurement.remarks == sample::measurement().remarks);
}
