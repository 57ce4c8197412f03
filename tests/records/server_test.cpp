// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "../scratch_folder.h"
#include "either_store.h"
#include "records/schema.h"
#include "ringrule/error.h"
#include "ringrule/records/archive.h"
#include "ringrule/records/backup.h"
#include "ringrule/records/verify.h"
#include "sample_records.h"

// What only a collection on a server does; script/with-postgresql runs these.

using namespace ringrule;
using Catch::Contains;

namespace {

/// A shared collection with one record of nearly every kind.
struct Shared {
    ScratchFolder scratch;
    std::string address = emptyDatabase("house");
    Store store = Store::createShared(address, scratch / "house");

    Shared() {
        store.setKeeper("K1");
        const AnimalId animal = store.addAnimal(sample::animal());
        const TankId tank = store.addTank({{}, "B3", "Bay 3 \\ 'north'"});
        Brood brood;
        brood.code = "R2";
        brood.mother = animal;
        Animal young = sample::animal("Y1", std::nullopt);
        young.brood = store.addBrood(brood);  // each refers to the other's table
        store.addAnimal(young);
        store.addStay({animal, tank, Date{}, std::nullopt});
        store.addNote({animal, Date{}, "größer — \"as\nsaid\""});
        StoredPhoto photo;
        photo.session = store.addSession(sample::session());
        const PhotoId id = store.addPhoto(photo, scratch.write("a.jpg", "pixels"));
        StoredMeasure measure = sample::stored(id, animal, 1.0 / 3.0);
        measure.replaces = store.addMeasure(measure);
        store.addMeasure(measure);
        scratch.write("house/calibration/bench-box.json", "{}");
        scratch.write("house/species.json", "{\"species\": []}");
    }

    void sql(const std::string& statement) const { Database(readServerAddress(address)).run(statement); }
};

/// Every record of every kind, as text.
std::string contentOfStore(const Store& store) {
    std::string all;
    for (const RecordKind& kind : recordKinds()) {
        for (const Record& record : store.records(kind.name)) {
            all += kind.name + " " + std::to_string(record.id) + " " + std::to_string(record.version);
            for (const auto& [name, value] : record.values) all += "|" + name + "=" + value;
            all += "\n";
        }
    }
    return all;
}

std::string messageOf(const std::function<void()>& act) {
    try {
        act();
    } catch (const Error& error) {
        return error.what();
    }
    return "nothing was thrown";
}

}  // namespace

TEST_CASE("a shared collection opens by its folder and by its address", "[.server]") {
    const Shared shared;
    CHECK_FALSE(std::filesystem::exists(shared.scratch / "house/collection.sqlite"));
    const Store byFolder = Store::open(shared.scratch / "house");
    const Store byAddress = Store::open(shared.address);
    CHECK(contentOfStore(byFolder) == contentOfStore(shared.store));
    CHECK(contentOfStore(byAddress) == contentOfStore(shared.store));
    CHECK(byAddress.folder() == shared.scratch / "house");
    CHECK(verifyCollection(shared.address).whole());
    CHECK_THROWS_WITH(Store::createShared(shared.address, shared.scratch / "other"),
                      Contains("a collection is already in this database"));
    CHECK_FALSE(std::filesystem::exists(shared.scratch / "other/collection.address"));
}

TEST_CASE("a server that cannot be used is told in one line with what to do", "[.server]") {
    const Shared shared;
    const std::string noPort = "postgresql://ringrule@127.0.0.1:1/house";
    const auto opening = [&](const std::string& address) { return messageOf([&] { (void)Store::open(address); }); };
    CHECK_THAT(opening(noPort), Contains("cannot be reached; see that the server runs"));
    CHECK_THAT(opening(testServer() + "/nowhere"), Contains("there is no database \"nowhere\" on this server"));
    CHECK_THAT(opening(testServer() + "/postgres"), Contains("this database holds no collection; create one"));
    const std::string server = testServer().substr(testServer().find('@'));
    CHECK_THAT(opening("postgresql://stranger" + server + "/house"), Contains("password is wrong or missing"));
    const auto wrong = shared.scratch.write("wrong", "*:*:*:ringrule:guess\n");
    std::filesystem::permissions(wrong, std::filesystem::perms::owner_read);
    CHECK_THAT(opening(shared.address + "?passfile=" + wrong.string()), Contains("password is wrong or missing"));
    Database(readServerAddress(testServer() + "/postgres")).run("CREATE ROLE guest LOGIN PASSWORD 'guess'");
    Database(readServerAddress(testServer() + "/postgres")).run("REVOKE CONNECT ON DATABASE house FROM PUBLIC");
    const auto guests = shared.scratch.write("guests", "*:*:*:guest:guess\n");
    std::filesystem::permissions(guests, std::filesystem::perms::owner_read);
    CHECK_THAT(opening("postgresql://guest" + shared.address.substr(shared.address.find('@')) +
                       "?passfile=" + guests.string()),
               Contains("this user may not open the database"));
    CHECK_THAT(opening("postgresql://ringrule:secret" + server + "/house"), Contains("leave the password out"));
    CHECK_THAT(opening(testServer()), Contains("names no database"));
    CHECK_THAT(opening(shared.address + "?speed=high"),
               Contains("\"speed\" of this address is not") || Contains("\"speed\" is not a part of an address"));
    for (const std::string& address : {noPort, testServer() + "/nowhere", shared.address + "?speed=high"})
        CHECK(opening(address).find('\n') == std::string::npos);
    // A folder whose file holds nonsense, and one that another machine calls by another name.
    shared.scratch.write("odd/collection.address", "# nothing\n");
    CHECK_THAT(opening(shared.scratch / "odd"), Contains("should hold the address"));
    std::filesystem::rename(shared.scratch / "house", shared.scratch / "moved");
    CHECK_THAT(opening(shared.address), Contains("name the shared folder itself"));
    CHECK(Store::open(shared.scratch / "moved").animals().size() == 2);
}

TEST_CASE("a connection that is lost in the midst of a change loses the change alone", "[.server]") {
    Shared shared;
    const std::string before = contentOfStore(shared.store);
    const std::size_t photos = filesIn(shared.scratch / "house/photos");
    const auto breakOff = [&] {
        shared.sql(
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = 'house' AND pid <> "
            "pg_backend_pid()");
    };
    const std::string message = messageOf([&] {
        shared.store.together([&] {
            shared.store.addTank({{}, "B4", "Bay 4"});
            breakOff();
            shared.store.addTank({{}, "B5", "Bay 5"});
        });
    });
    CHECK_THAT(message, Contains("connection to the database was lost: nothing was changed"));
    CHECK(message.find('\n') == std::string::npos);
    // The next call connects again by itself.
    CHECK(contentOfStore(shared.store) == before);
    CHECK_THAT(messageOf([&] {
                   shared.store.together([&] {
                       StoredPhoto photo;
                       photo.session = SessionId{1};
                       shared.store.addPhoto(photo, shared.scratch.write("b.jpg", "others"));
                       breakOff();
                   });
               }),
               Contains("lost while a change was being confirmed: look whether it is there"));
    // Nobody can tell then whether the server confirmed: the original stays, and verify tells it as not listed.
    CHECK(filesIn(shared.scratch / "house/photos") == photos + 1);
    CHECK(contentOfStore(shared.store) == before);
    CHECK(verifyCollection(shared.scratch / "house").notes.size() == 1);
    shared.store.addTank({{}, "B4", "Bay 4"});
    CHECK(Store::open(shared.scratch / "house").tanks().size() == 2);
}

TEST_CASE("a server's collection of a newer Ringrule is refused unharmed, also by a program that has it open",
          "[.server]") {
    Shared shared;
    shared.sql("UPDATE ringrule.schema_version SET version = 99");
    CHECK_THROWS_WITH(Store::open(shared.address), Contains("a newer Ringrule wrote this collection (version 99"));
    CHECK_THROWS_WITH(shared.store.addTank({{}, "B4", "Bay 4"}), Contains("a newer Ringrule wrote this collection"));
    shared.sql("UPDATE ringrule.schema_version SET version = " + std::to_string(currentSchemaVersion()));
    CHECK(shared.store.tanks().size() == 1);
}

TEST_CASE("a server's collection of an older version is backed up, brought up to date and keeps every row",
          "[.server]") {
    const ScratchFolder scratch;
    const std::string address = emptyDatabase("house");
    {
        Database server(readServerAddress(address));
        migrate(server, schemaMigrations().first(1));
        // The rows of the fixture, in an order in which links hold.
        std::string text = contentOf(std::filesystem::path(RINGRULE_SOURCE_DIR) / "tests/records/data/version-1.sql");
        for (std::size_t end = 0; (end = text.find(";\n")) != std::string::npos; text.erase(0, end + 2))
            if (text.starts_with("INSERT INTO")) server.run(text.substr(0, end));
        server.run("INSERT INTO meta VALUES ('shared_folder', '" + (scratch / "house").string() + "')");
        CHECK(schemaVersionOf(server) == 1);
    }
    scratch.write("house/collection.address", address);
    const Store store = Store::open(address);
    CHECK(schemaVersionOf(Database(readServerAddress(address))) == currentSchemaVersion());
    CHECK(store.animals().at(1).hatchedSdDays == 20.0);
    const auto measures = store.measuresOfAnimal(store.animals().at(0).id);
    REQUIRE(measures.size() == 2);
    CHECK(measures[0].measurement.standardLengthMm.value == 65.696427689979287833);
    CHECK(measures[0].outlinePx.size() == 3);
    CHECK(measures[1].replaces == MeasureId{2});
    const auto backups = backupsOf(scratch / "house");
    REQUIRE(backups.size() == 1);
    CHECK(schemaVersionOf(Database(backups[0], Database::Mode::ReadOnly)) == 1);
    CHECK(Database(backups[0], Database::Mode::ReadOnly).textOf("SELECT count(*) FROM measure") == "3");
}

TEST_CASE("an archive of a server's collection opens as a folder on any machine, and the other way round",
          "[.server]") {
    const Shared shared;
    const std::string content = contentOfStore(shared.store);
    writeArchive(shared.store, shared.scratch / "house.zip");
    openArchive(shared.scratch / "house.zip", shared.scratch / "alone");
    const Store alone = Store::open(shared.scratch / "alone");
    CHECK(contentOfStore(alone) == content);
    CHECK_FALSE(alone.setting("shared_folder").has_value());
    CHECK(verifyCollection(shared.scratch / "alone").whole());
    CHECK(contentOf(shared.scratch / "alone/species.json") == "{\"species\": []}");

    writeArchive(alone, shared.scratch / "alone.zip");
    const std::string address = emptyDatabase("again");
    openArchiveShared(shared.scratch / "alone.zip", address, shared.scratch / "again");
    CHECK(contentOfStore(Store::open(address)) == content);
    CHECK(contentOfStore(Store::open(shared.scratch / "again")) == content);
    CHECK_FALSE(std::filesystem::exists(shared.scratch / "again/collection.sqlite"));
    CHECK(verifyCollection(address).whole());
    // A taken database is refused and nothing is left behind.
    CHECK_THROWS_AS(openArchiveShared(shared.scratch / "alone.zip", address, shared.scratch / "third"), Error);
    CHECK_FALSE(std::filesystem::exists(shared.scratch / "third"));
}

TEST_CASE("a backup of a server's collection is restored when nobody else has it open", "[.server]") {
    const ScratchFolder scratch;
    const std::string address = emptyDatabase("house");
    std::string content;
    {
        Store store = Store::createShared(address, scratch / "house");
        store.addAnimal(sample::animal());
        content = contentOfStore(store);
        backUp(store);
        store.addAnimal(sample::animal("P5", 15));
        CHECK_THROWS_WITH(restoreBackup(address), Contains("another program has this collection open"));
        CHECK(store.animals().size() == 2);
    }
    const Restored restored = restoreBackup(scratch / "house");
    CHECK(contentOfStore(Store::open(address)) == content);
    CHECK(Database(restored.replaced, Database::Mode::ReadOnly).textOf("SELECT count(*) FROM animal") == "2");
    Store::open(address).addAnimal(sample::animal("P6", 16));  // numbers go on
    // A database that was lost and made anew, empty, gets the collection back from the folder.
    static_cast<void>(emptyDatabase("house"));
    static_cast<void>(restoreBackup(scratch / "house"));
    CHECK(contentOfStore(Store::open(address)) == content);
}
