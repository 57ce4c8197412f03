// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <stdexcept>

#include <sched.h>
#include <sys/mount.h>
#include <sys/wait.h>
#include <unistd.h>

#include "../scratch_folder.h"
#include "records/database.h"
#include "records/statement.h"
#include "ringrule/error.h"
#include "sample_records.h"

using namespace ringrule;

namespace {

/// Runs `body` in a child process and gives its exit status; -1 when it did not exit by itself.
template <class Body>
int inChild(Body&& body) {
    const pid_t child = ::fork();
    if (child == 0) {
        int status = 99;
        try {
            status = body();
        } catch (const std::exception& problem) {
            fprintf(stderr, "child: %s\n", problem.what());
        }
        ::_exit(status);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

struct House {
    ScratchFolder scratch;
    Store store = Store::create(scratch / "house");
    AnimalId animal = store.addAnimal(sample::animal());
    SessionId session = store.addSession(sample::session());
    PhotoId photo = addPhoto("a.jpg", "first photo");

    PhotoId addPhoto(const std::string& name, const std::string& content) {
        StoredPhoto row;
        row.session = session;
        return store.addPhoto(row, scratch.write(name, content));
    }
    [[nodiscard]] std::size_t photoFiles() const { return filesIn(scratch / "house/photos"); }
};

}  // namespace

TEST_CASE("a failed row leaves none of its photo's measures") {
    House house;
    StoredMeasure bad = sample::stored(house.photo, AnimalId{12345});
    CHECK_THROWS_AS(house.store.addMeasures({sample::stored(house.photo, house.animal), bad}), Error);
    CHECK(house.store.measuresOfPhoto(house.photo).empty());
    CHECK(house.store.addMeasures({sample::stored(house.photo, house.animal)}).size() == 1);
}

TEST_CASE("together: an exception takes rows and copied photos away again") {
    House house;
    const std::size_t filesBefore = house.photoFiles();
    CHECK_THROWS_AS(house.store.together([&] {
        house.store.addSession(sample::session());
        house.addPhoto("b.jpg", "second photo");
        throw std::runtime_error("no");
    }),
                    std::runtime_error);
    CHECK(house.store.sessions().size() == 1);
    CHECK(house.photoFiles() == filesBefore);
}

TEST_CASE("together: an inner failure that is caught leaves the outer part whole") {
    House house;
    house.store.together([&] {
        house.store.addTank({{}, "B3", "Bay 3"});
        house.addPhoto("c.jpg", "third photo");
        CHECK_THROWS_AS(house.store.addAnimal(sample::animal()), Error);
    });
    CHECK(house.store.tanks().size() == 1);
    CHECK(house.store.photos(house.session).size() == 2);
    CHECK(house.photoFiles() == 2);
}

TEST_CASE("a process killed inside a transaction leaves nothing half done") {
    House house;
    const auto folder = house.scratch / "house";
    const int status = inChild([&] {
        Store store = Store::open(folder);
        store.together([&] {
            const SessionId session = store.addSession(sample::session());
            StoredPhoto row;
            row.session = session;
            const PhotoId photo = store.addPhoto(row, house.scratch.write("k.jpg", "photo of the killed run"));
            store.addMeasure(sample::stored(photo, house.animal));
            ::_exit(42);  // no destructor, no rollback: as kill -9
        });
        return 0;
    });
    REQUIRE(status == 42);
    Store store = Store::open(folder);
    CHECK(store.sessions().size() == 1);
    CHECK(store.measuresOfAnimal(house.animal).empty());
    // The killed run's copy may lie in photos/; adding the same photo again takes it over.
    StoredPhoto row;
    row.session = house.session;
    const PhotoId photo = store.addPhoto(row, house.scratch / "k.jpg");
    CHECK(contentOf(store.originalOf(store.photos(house.session).at(1))) == "photo of the killed run");
    CHECK(store.addMeasure(sample::stored(photo, house.animal)).value > 0);
}

TEST_CASE("a process killed while it creates a collection leaves none") {
    const ScratchFolder scratch;
    std::filesystem::create_directories(scratch / "house/photos");
    scratch.write("house/collection.sqlite.new", "half a database");  // what such a process leaves
    CHECK_THROWS_AS(Store::open(scratch / "house"), Error);
    CHECK_NOTHROW(Store::create(scratch / "house"));
    CHECK_NOTHROW(Store::open(scratch / "house"));
}

TEST_CASE("a database that may not grow says that the disk is full and stays whole") {
    const ScratchFolder scratch;
    Database database(scratch / "full.sqlite", Database::Mode::ReadWrite);
    database.run("CREATE TABLE line (text TEXT)");
    database.run("PRAGMA max_page_count = 8");
    bool full = false;
    database.begin();
    try {
        for (int i = 0; i < 100; ++i) {
            Statement(database, "INSERT INTO line VALUES (?)").bind(std::string(1000, 'x')).run();
        }
    } catch (const Error& error) {
        full = error.kind() == ErrorKind::NoSpace;
    }
    database.rollback();
    CHECK(full);
    CHECK(database.textOf("SELECT count(*) FROM line") == "0");
    CHECK(database.textOf("PRAGMA integrity_check") == "ok");
}

TEST_CASE("a full disk: a sentence, and the collection as it was before") {
    const ScratchFolder scratch;
    std::filesystem::create_directories(scratch / "disk");
    const auto photo = scratch.write("big.jpg", std::string(1200 * 1024, 'p'));
    constexpr int kNoMount = 77;
    const int status = inChild([&] {
        if (::unshare(CLONE_NEWNS) != 0 && ::unshare(CLONE_NEWUSER | CLONE_NEWNS) != 0) return kNoMount;
        const auto disk = scratch / "disk";
        if (::mount("tmpfs", disk.c_str(), "tmpfs", 0, "size=1m") != 0) return kNoMount;
        Store store = Store::create(disk / "house");
        const AnimalId animal = store.addAnimal(sample::animal());
        StoredPhoto row;
        row.session = store.addSession(sample::session());
        const PhotoId small = store.addPhoto(row, scratch.write("small.jpg", "s"));
        bool photoRefused = false;
        try {
            store.addPhoto(row, photo);
        } catch (const Error& error) {
            photoRefused = error.kind() == ErrorKind::NoSpace;
        }
        if (!photoRefused || filesIn(disk / "house/photos") != 1) return 1;
        std::size_t kept = 0;
        bool rowsRefused = false;
        StoredMeasure measure = sample::stored(small, animal);
        measure.outlinePx.assign(4000, {1234.56, 789.12});
        try {
            for (; kept < 100; ++kept) store.addMeasure(measure);
        } catch (const Error& error) {
            rowsRefused = error.kind() == ErrorKind::NoSpace;
        }
        if (!rowsRefused || kept == 0) return 2;
        if (store.measuresOfAnimal(animal).size() != kept) return 3;
        return Store::open(disk / "house").measuresOfAnimal(animal).size() == kept ? 0 : 4;
    });
    if (status == kNoMount) {
        WARN("no right to mount a small disk here: the full disk was not tried");
        return;
    }
    CHECK(status == 0);
}
