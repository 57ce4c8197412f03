// SPDX-License-Identifier: GPL-3.0-or-later
// How long a large collection takes to open and to read. Makes one in FOLDER unless it is there already: 10,000
// animals, 1,000 sessions over ten years, 200,000 photo rows, 1,000,000 measures with four landmarks each and short
// outlines. With an ADDRESS the same rows are put into that empty PostgreSQL database, and read again there; not again
// when FOLDER-shared is there.
#include <algorithm>
#include <chrono>
#include <ctime>
#include <iostream>

#include "records/collection_place.h"
#include "records/database.h"
#include "records/schema.h"
#include "records/server_copy.h"
#include "ringrule/measure/repeats.h"
#include "ringrule/records/keeper_questions.h"
#include "ringrule/records/measure_columns.h"
#include "ringrule/records/measured_days.h"
#include "ringrule/records/store.h"

using namespace ringrule;

namespace {

std::string counting(const std::string& what, const std::string& columns, int upTo, const std::string& values) {
    return "WITH RECURSIVE c(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM c WHERE n < " + std::to_string(upTo) +
           ") INSERT INTO " + what + " (" + columns + ") SELECT " + values + " FROM c";
}

void make(const std::filesystem::path& folder) {
    std::cerr << "making a collection in " << folder << " …\n";
    static_cast<void>(Store::create(folder));
    Database database(folder / "collection.sqlite", Database::Mode::ReadWrite);
    database.run("PRAGMA synchronous = OFF");  // only while it is made
    database.begin();
    database.run(counting("tank", "code, name", 400, "'bay-' || n, 'Bay ' || n"));
    database.run(counting("animal", "code, name, species, shape, sex, hatched_on, hatched_exactly, hatched_sd_days",
                          10000,
                          "printf('A%05d', n), '', 'Syngnathus typhle', 'pipefish', 'unknown', date('2021-01-01', "
                          "(n % 3000) || ' days'), 1, 0"));
    database.run(counting("stay", "animal, tank, from_day", 10000,
                          "n, (n - 1) / 25 + 1, date('2021-01-01', (n % 3000) || ' days')"));
    database.run(counting("session", "on_day, keeper, box_name, folder", 1000,
                          "date('2021-01-01', CAST(n * 3.65 AS INTEGER) || ' days'), 'K1', 'bench box', 'day ' || n"));
    database.run(counting(
        "photo", "session, content_hash, stored_name, original_name, taken_at, width_px, height_px, view", 200000,
        "(n - 1) / 200 + 1, printf('%064d', n), printf('%064d.jpg', n), 'IMG' || n, '', 4000, 3000, "
        "'side'"));
    std::string names;
    std::string values;
    for (const MeasureColumn& measure : kMeasureColumns) {
        const std::string name(measure.column);
        names += ", " + name + ", " + name + "_sd_random, " + name + "_sd_shared";
        values += ", 50.0 + n % 997 / 7.0, 0.11, 0.12";
    }
    database.run(counting("measure",
                          "photo, animal, animal_index, box_name, software_version, keeper, accepted, shape, view, "
                          "protocol, remarks, ventral_on_left" +
                              names,
                          1000000,
                          "(n - 1) / 5 + 1, n * 7919 % 10000 + 1, n % 5, 'bench box', '0.1.0', 'K1', 1, 'pipefish', "
                          "'side', 'dawson-1985', '[\"width-from-shape\"]', 0" +
                              values));
    database.run(counting("measure_line", "measure, outline_px, spine_px", 1000000,
                          "n, '[[1.25,2.5],[3,4.75],[-0.5,6.12]]', '[[7.25,8.5],[9.5,10.25]]'"));
    for (const char* name : {"head_end", "snout_tip", "tail_end", "trunk_end"})
        database.run(counting("landmark", "measure, name, x_px, y_px, sd_along_px, moved_by_hand", 1000000,
                              "n, '" + std::string(name) + "', 100.5, 200.5, 0.5, 0"));
    database.commit();
    database.run("PRAGMA wal_checkpoint(TRUNCATE)");
}

/// The median of five runs in milliseconds, by the clock and by the processor: on a busy machine only the second tells.
template <class Body>
void time(const char* what, double target, Body&& body) {
    std::vector<double> ms;
    std::vector<double> processor;
    for (int run = 0; run < 5; ++run) {
        const auto from = std::chrono::steady_clock::now();
        const std::clock_t started = std::clock();
        body();
        ms.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count());
        processor.push_back(1000.0 * static_cast<double>(std::clock() - started) / CLOCKS_PER_SEC);
    }
    std::sort(ms.begin(), ms.end());
    std::sort(processor.begin(), processor.end());
    std::cout << what << ": " << ms[2] << " ms, processor " << processor[2] << " ms (asked for under " << target << ")"
              << std::endl;
}

/// Each animal's days of a year, photos combined.
std::size_t yearsReview(const Store& store) {
    using namespace std::chrono_literals;
    std::size_t days = 0;
    eachMeasuredDay(store, Date{2029y / 1 / 1}, Date{2029y / 12 / 31},
                    [&](AnimalId, Date, std::span<const Measurement> photos) {
                        days += combineRepeats(photos).sidePhotos > 0 ? 1 : 0;
                    });
    return days;
}

/// `slower`: how many times as long as on SQLite it may take.
void measure(const std::filesystem::path& folder, double slower) {
    time("opening", slower * 500, [&] { static_cast<void>(Store::open(folder)); });
    const Store store = Store::open(folder);
    time("one animal's history", slower * 20, [&] { return store.measuresOfAnimal(AnimalId{4711}).size(); });
    const auto sessions = store.sessions();
    const SessionId session = sessions.at(sessions.size() / 2).id;
    time("a session's photos", slower * 50, [&] { return store.photos(session).size(); });
    time("a session's photos and their measures", slower * 50, [&] { return store.measuresOfSession(session).size(); });
    time("a year's measures, combined", slower * 1000, [&] { return yearsReview(store); });
    time("all animals", slower * 50, [&] { return store.animals().size(); });
    time("who is due", slower * 1000, [&] { return whoIsDue(store, *parseDate("2030-12-31")).size(); });
    time("who has no measure in six weeks", slower * 1000,
         [&] { return whoIsUnmeasured(store, *parseDate("2030-12-31")).size(); });
}

/// Puts the rows of a collection into an empty database on a server; its folder is `folder`.
void share(const std::filesystem::path& from, const ServerAddress& address, const std::filesystem::path& folder) {
    std::cerr << "putting it into a server's database …\n";
    std::filesystem::create_directories(folder);
    Database server(address);
    fillServer(server, address, folder, [&] {
        migrate(server);
        copyFromFile(from / "collection.sqlite", server);
    });
    server.run("VACUUM ANALYZE");  // as the server does by itself in time
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 2 && argc != 3) {
        std::cerr << "use: bench_store FOLDER [ADDRESS]\n";
        return 2;
    }
    const std::filesystem::path folder = argv[1];
    if (!std::filesystem::exists(folder / "collection.sqlite")) make(folder);
    std::cout << "collection.sqlite: " << std::filesystem::file_size(folder / "collection.sqlite") / 1000000 << " MB\n";
    measure(folder, 1);
    if (argc == 2) return 0;
    const ServerAddress address = readServerAddress(argv[2]);
    const std::filesystem::path shared = folder.string() + "-shared";
    if (!std::filesystem::exists(shared)) share(folder, address, shared);
    std::cout << "the same on PostgreSQL\n";
    measure(shared, 3);
    return 0;
}
