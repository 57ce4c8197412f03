// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "older_collection.h"
#include "records/statement.h"
#include "ringrule/error.h"
#include "ringrule/records/backup.h"
#include "sample_records.h"

using namespace ringrule;

namespace {

/// As if the collection had been made on another day.
void makeOlder(const std::filesystem::path& folder) {
    Database(folder / "collection.sqlite", Database::Mode::ReadWrite)
        .run("UPDATE meta SET value = '2030-12-01T10:00:00Z' WHERE key = 'created_at'");
}

}  // namespace

TEST_CASE("the first change of a day is made on top of a backup, the second makes no other") {
    const ScratchFolder scratch;
    Store::create(scratch / "house").addAnimal(sample::animal());
    CHECK(backupsOf(scratch / "house").empty());  // made today
    makeOlder(scratch / "house");
    Store store = Store::open(scratch / "house");
    CHECK(backupsOf(scratch / "house").empty());  // nothing changed yet
    store.addAnimal(sample::animal("P5", 15));
    store.addAnimal(sample::animal("P6", 16));
    const auto backups = backupsOf(scratch / "house");
    REQUIRE(backups.size() == 1);
    const Database database(backups.at(0), Database::Mode::ReadOnly);
    CHECK(database.textOf("SELECT group_concat(code) FROM animal") == "P4");
    CHECK(database.textOf("PRAGMA integrity_check") == "ok");
}

TEST_CASE("an older collection is backed up before it is brought up to date") {
    const ScratchFolder scratch;
    writeVersion1(scratch / "house");
    static_cast<void>(Store::open(scratch / "house"));
    const auto backups = backupsOf(scratch / "house");
    REQUIRE(backups.size() == 1);
    const Database database(backups.at(0), Database::Mode::ReadOnly);
    CHECK(database.textOf("PRAGMA user_version") == "1");
    CHECK(database.textOf("SELECT count(*) FROM measure") == "3");
}

TEST_CASE("the number of backups that are kept is settable, and 0 makes none") {
    const ScratchFolder scratch;
    Store store = Store::create(scratch / "house");
    for (const char* day : {"2021-01-01", "2021-01-02", "2021-01-03"})
        scratch.write(std::string("house/backups/collection-") + day + ".sqlite", "old");
    scratch.write("house/backups/replaced-2021-01-01.sqlite", "kept for good");
    store.set("backups_kept", "2");
    const auto made = backUp(store);
    const auto backups = backupsOf(scratch / "house");
    REQUIRE(backups.size() == 2);
    CHECK(std::find(backups.begin(), backups.end(), made) != backups.end());
    CHECK(std::filesystem::exists(scratch / "house/backups/replaced-2021-01-01.sqlite"));
    store.set("backups_kept", "0");
    makeOlder(scratch / "house");
    Store::open(scratch / "house").addAnimal(sample::animal());
    CHECK(backupsOf(scratch / "house").size() == 2);
}

TEST_CASE("a restored backup is the collection of that time; what it replaces is kept") {
    const ScratchFolder scratch;
    {
        Store store = Store::create(scratch / "house");
        StoredPhoto photo;
        photo.session = store.addSession(sample::session());
        store.addPhoto(photo, scratch.write("a.jpg", "x"));
        backUp(store);
        store.addAnimal(sample::animal());
        CHECK_THROWS_WITH(restoreBackup(scratch / "house"),
                          Catch::Contains("another program has this collection open"));
        CHECK(store.animals().size() == 1);
    }
    const Restored restored = restoreBackup(scratch / "house");
    CHECK(restored.missingPhotos.empty());
    CHECK(Store::open(scratch / "house").animals().empty());
    CHECK(Store::open(scratch / "house").sessions().size() == 1);
    CHECK(Database(restored.replaced, Database::Mode::ReadOnly).textOf("SELECT count(*) FROM animal") == "1");
    for (const auto& photo : std::filesystem::directory_iterator(scratch / "house/photos"))
        std::filesystem::remove(photo.path());
    CHECK(restoreBackup(scratch / "house").missingPhotos.size() == 1);
}

TEST_CASE("a damaged collection is restored, a damaged backup is not put in a good one's place") {
    const ScratchFolder scratch;
    {
        Store store = Store::create(scratch / "house");
        store.addAnimal(sample::animal());
        backUp(store);
    }
    scratch.write("house/backups/collection-9999-12-31.sqlite", "no database at all");
    CHECK_THROWS_AS(restoreBackup(scratch / "house"), Error);
    CHECK(Store::open(scratch / "house").animals().size() == 1);
    const std::string good = backupsOf(scratch / "house").front().filename().string();
    scratch.write("house/collection.sqlite", "spilt salt water");
    CHECK_THROWS_AS(Store::open(scratch / "house"), Error);
    static_cast<void>(restoreBackup(scratch / "house", good));
    CHECK(Store::open(scratch / "house").animals().size() == 1);
    CHECK_THROWS_AS(restoreBackup(scratch / "house", "never-made"), Error);
}
