// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <thread>

#include "../scratch_folder.h"
#include "ringrule/workflow/empty_box_photo.h"
#include "ringrule/workflow/measure_session.h"

using namespace ringrule;

namespace {

Box anyBox() {
    return readBox(std::filesystem::path(RINGRULE_SOURCE_DIR) / "calibration/bench-box.json");
}

std::vector<PhotoTask> badPhotos(const ScratchFolder& scratch, int count) {
    std::vector<PhotoTask> tasks;
    for (int i = 0; i < count; ++i) {
        tasks.push_back({scratch.write("photo-" + std::to_string(i) + ".jpg", "not a photo"), View::Side});
    }
    return tasks;
}

}  // namespace

TEST_CASE("photos of a folder come in order of name, each with the view that its folder tells") {
    const ScratchFolder scratch;
    for (const char* name : {"b.jpg", "a.JPG", "c.png", "above/a.jpeg", "front/z.jpg", "mirror/m.jpg", "notes.txt",
                             ".hidden.jpg", "side/s.jpg"}) {
        scratch.write(name, "x");
    }
    const auto tasks = photosOfFolder(scratch.path());
    std::vector<std::string> names;
    std::vector<View> views;
    for (const PhotoTask& task : tasks) {
        names.push_back(task.path.lexically_relative(scratch.path()).string());
        views.push_back(task.view);
    }
    CHECK(names == std::vector<std::string>{"a.JPG", "above/a.jpeg", "b.jpg", "c.png", "front/z.jpg", "mirror/m.jpg",
                                            "side/s.jpg"});
    CHECK(views ==
          std::vector<View>{View::Side, View::Above, View::Side, View::Side, View::Front, View::Mirror, View::Side});
}

TEST_CASE("a folder without photos, or none at all, is bad use") {
    const ScratchFolder scratch;
    scratch.write("notes.txt", "x");
    for (const auto& folder : {scratch.path(), scratch / "nowhere"}) {
        try {
            static_cast<void>(photosOfFolder(folder));
            FAIL("found photos");
        } catch (const Error& error) {
            CHECK(error.kind() == ErrorKind::BadUse);
            CHECK(error.path() == folder.string());
        }
    }
}

TEST_CASE("a bad photo is a result with a message, and results keep their order on any number of threads") {
    const ScratchFolder scratch;
    const auto tasks = badPhotos(scratch, 12);
    const int jobs = GENERATE(1, 2, 5, 40);
    std::vector<std::string> inOrder;
    const auto caller = std::this_thread::get_id();
    const auto results = measurePhotos(tasks, anyBox(), {}, jobs, {}, [&](const PhotoResult& result) {
        CHECK(std::this_thread::get_id() == caller);
        inOrder.push_back(result.task.path.string());
    });
    REQUIRE(results.size() == tasks.size());
    REQUIRE(inOrder.size() == tasks.size());
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        CHECK(results[i].task.path == tasks[i].path);
        CHECK(inOrder[i] == tasks[i].path.string());
        CHECK_FALSE(results[i].reading.has_value());
        CHECK(results[i].errorMessage.find(tasks[i].path.string()) != std::string::npos);
    }
}

TEST_CASE("no photos give no results") {
    CHECK(measurePhotos({}, anyBox(), {}, 2).empty());
}

TEST_CASE("progress runs from 0 to 1 and never back") {
    const ScratchFolder scratch;
    std::vector<double> fractions;
    static_cast<void>(measurePhotos(badPhotos(scratch, 6), anyBox(), {}, 2, [&](double fraction, std::string_view) {
        fractions.push_back(fraction);
        return true;
    }));
    REQUIRE(fractions.size() >= 2);
    CHECK(fractions.front() == 0.0);
    CHECK(fractions.back() == 1.0);
    CHECK(std::is_sorted(fractions.begin(), fractions.end()));
}

TEST_CASE("saying no to progress stops the run") {
    const std::filesystem::path folder = std::filesystem::path(RINGRULE_SOURCE_DIR) / "sample_images/2031-01-06";
    const std::vector<PhotoTask> tasks = photosOfFolder(folder);
    REQUIRE(tasks.size() > 20);
    const double stopAt = GENERATE(0.0, 0.1);
    int handedOn = 0;
    try {
        static_cast<void>(measurePhotos(
            tasks, anyBox(), {}, 1, [&](double fraction, std::string_view) { return fraction < stopAt; },
            [&](const PhotoResult&) { ++handedOn; }));
        FAIL("ran on");
    } catch (const Error& error) {
        CHECK(error.kind() == ErrorKind::Stopped);
    }
    // A tenth of the photos is four; the calling thread may be late by a few while others use the machine.
    CHECK(handedOn <= static_cast<int>(tasks.size()) / 2);
    if (stopAt == 0.0) CHECK(handedOn == 0);
}

TEST_CASE("an exception of the caller's own function comes back to the caller, threads joined") {
    const ScratchFolder scratch;
    CHECK_THROWS_AS(measurePhotos(badPhotos(scratch, 20), anyBox(), {}, 3, {},
                                  [](const PhotoResult&) { throw std::runtime_error("mine"); }),
                    std::runtime_error);
}

TEST_CASE("the photo of the empty box is told by its folder, measured as no animal, and found again by its session") {
    const ScratchFolder scratch;
    scratch.write("session/a.jpg", "x");
    CHECK_FALSE(emptyBoxPhotoIn(scratch.path() / "session"));
    const auto empty = scratch.write("session/empty/e.jpg", "x");
    CHECK(emptyBoxPhotoIn(scratch.path() / "session") == empty);
    CHECK(photosOfFolder(scratch.path() / "session").size() == 1);
    scratch.write("session/empty/f.jpg", "x");
    CHECK_THROWS_WITH(emptyBoxPhotoIn(scratch.path() / "session"), Catch::Contains("several photos of the empty box"));

    const Store store = Store::create(scratch.path() / "house");
    CHECK_FALSE(emptyBoxPhotoKept(store.folder(), SessionId{7}));
    keepEmptyBoxPhoto(store, SessionId{7}, empty);
    CHECK(emptyBoxPhotoKept(store.folder(), SessionId{7})->filename() == "empty-box-session-7.jpg");
    CHECK_FALSE(emptyBoxPhotoKept(store.folder(), SessionId{70}));
}
