// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <array>

#include "../scratch_folder.h"
#include "records/database.h"
#include "records/schema.h"
#include "records/statement.h"
#include "ringrule/error.h"
#include "ringrule/records/measure_columns.h"
#include "sample_records.h"

using namespace ringrule;

namespace {

/// The message of the `BadStore` error that opening gives; empty when it opens.
std::string refusalOf(const std::filesystem::path& folder) {
    try {
        static_cast<void>(Store::open(folder));
    } catch (const Error& error) {
        CHECK(error.kind() == ErrorKind::BadStore);
        return error.what();
    }
    return {};
}

bool says(const std::string& message, const std::string& part) {
    return message.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a folder that is not a collection is refused and left as it is") {
    const ScratchFolder scratch;
    std::filesystem::create_directories(scratch / "plain");
    CHECK(says(refusalOf(scratch / "plain"), "not a collection"));
    CHECK(says(refusalOf(scratch / "nowhere"), "no such folder"));
    CHECK(filesIn(scratch / "plain") == 0);
    CHECK_FALSE(std::filesystem::exists(scratch / "nowhere"));
    scratch.write("file", "x");
    CHECK(says(refusalOf(scratch / "file"), "no such folder"));
}

TEST_CASE("a second collection is not made over the first") {
    const ScratchFolder scratch;
    Store::create(scratch / "house").addAnimal(sample::animal());
    CHECK_THROWS_AS(Store::create(scratch / "house"), Error);
    CHECK(Store::open(scratch / "house").animals().size() == 1);
}

TEST_CASE("a file that is no database, or an empty one, is refused") {
    const ScratchFolder scratch;
    scratch.write("text/collection.sqlite", "these are my fish: one, two, three, many");
    CHECK(says(refusalOf(scratch / "text"), "damaged"));
    scratch.write("empty/collection.sqlite", "");
    CHECK(says(refusalOf(scratch / "empty"), "damaged"));
}

TEST_CASE("another program's database is refused unharmed") {
    const ScratchFolder scratch;
    std::filesystem::create_directories(scratch / "other");
    Database(scratch / "other/collection.sqlite", Database::Mode::ReadWrite).run("CREATE TABLE recipe (text TEXT)");
    const std::string before = contentOf(scratch / "other/collection.sqlite");
    CHECK(says(refusalOf(scratch / "other"), "another program"));
    CHECK(contentOf(scratch / "other/collection.sqlite") == before);
}

TEST_CASE("a damaged page is found at opening") {
    const ScratchFolder scratch;
    {
        Store store = Store::create(scratch / "house");
        StoredPhoto photo;
        photo.session = store.addSession(sample::session());
        const PhotoId id = store.addPhoto(photo, scratch.write("a.jpg", "x"));
        for (int i = 0; i < 20; ++i) store.addMeasure(sample::stored(id, std::nullopt));
    }
    const auto file = scratch / "house/collection.sqlite";
    std::string bytes = contentOf(file);
    REQUIRE(bytes.size() > 3 * 4096);
    std::fill(bytes.begin() + 4096, bytes.begin() + 3 * 4096, '\x5a');
    std::ofstream(file, std::ios::binary) << bytes;
    CHECK(says(refusalOf(scratch / "house"), "damaged"));
}

TEST_CASE("a cut database is found at opening") {
    const ScratchFolder scratch;
    Store::create(scratch / "house").addAnimal(sample::animal());
    const auto file = scratch / "house/collection.sqlite";
    std::filesystem::resize_file(file, std::filesystem::file_size(file) / 2);
    CHECK(says(refusalOf(scratch / "house"), "damaged"));
}

TEST_CASE("a newer collection is refused and not a byte of it changed") {
    const ScratchFolder scratch;
    Store::create(scratch / "house").addAnimal(sample::animal());
    const auto file = scratch / "house/collection.sqlite";
    Database(file, Database::Mode::ReadWrite)
        .run("PRAGMA user_version = " + std::to_string(currentSchemaVersion() + 1));
    const std::string before = contentOf(file);
    CHECK(says(refusalOf(scratch / "house"), "newer Ringrule"));
    CHECK(contentOf(file) == before);
}

TEST_CASE("the measure table has the columns that measures are written to") {
    const ScratchFolder scratch;
    Database database(scratch / "new.sqlite", Database::Mode::ReadWrite);
    migrate(database);
    for (const MeasureColumn& measure : kMeasureColumns) {
        for (const char* part : {"", "_sd_random", "_sd_shared"}) {
            const std::string column = std::string(measure.column) + part;
            INFO(column);
            CHECK(database.textOf("SELECT count(*) FROM pragma_table_info('measure') WHERE name = '" + column + "'") ==
                  "1");
        }
    }
    CHECK(schemaVersionOf(database) == currentSchemaVersion());
}

TEST_CASE("migration steps run in order, once each, and a failing step leaves the version before it") {
    const ScratchFolder scratch;
    Database database(scratch / "steps.sqlite", Database::Mode::ReadWrite);
    static constexpr std::array<std::string_view, 1> kFirst{"CREATE TABLE t (a INTEGER)"};
    static constexpr std::array<std::string_view, 2> kSecond{"ALTER TABLE t ADD COLUMN b TEXT",
                                                             "UPDATE t SET b = 'kept'"};
    static constexpr std::array<std::string_view, 2> kBroken{"ALTER TABLE t ADD COLUMN c TEXT", "NOT SQL"};
    const std::array<Migration, 1> first{Migration{1, kFirst}};
    const std::array<Migration, 2> both{Migration{1, kFirst}, Migration{2, kSecond}};
    const std::array<Migration, 3> broken{Migration{1, kFirst}, Migration{2, kSecond}, Migration{3, kBroken}};
    migrate(database, first);
    database.run("INSERT INTO t VALUES (7)");
    migrate(database, both);
    migrate(database, both);
    CHECK(schemaVersionOf(database) == 2);
    CHECK(database.textOf("SELECT a || b FROM t") == "7kept");
    CHECK_THROWS_AS(migrate(database, broken), Error);
    CHECK(schemaVersionOf(database) == 2);
    CHECK(database.textOf("SELECT count(*) FROM pragma_table_info('t')") == "2");
    CHECK(database.depth() == 0);
}
