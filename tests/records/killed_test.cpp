// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <csignal>
#include <iostream>
#include <random>
#include <set>

#include <sys/wait.h>
#include <unistd.h>

#include "older_collection.h"
#include "records/opening.h"
#include "ringrule/records/backup.h"
#include "ringrule/records/table_import.h"
#include "ringrule/records/verify.h"
#include "sample_records.h"

using namespace ringrule;

namespace {

/// A child process that works until it is killed, and says through a pipe what is confirmed.
class Victim {
public:
    template <class Work>
    explicit Victim(Work&& work) {
        if (::pipe(pipe_) != 0) throw std::runtime_error("no pipe");
        child_ = ::fork();
        if (child_ != 0) {
            ::close(pipe_[1]);
            return;
        }
        ::close(pipe_[0]);
        try {
            work([this](char confirmed) {
                if (::write(pipe_[1], &confirmed, 1) != 1) ::_exit(1);
            });
        } catch (const std::exception& problem) {
            fprintf(stderr, "victim: %s\n", problem.what());
            ::_exit(2);
        }
        ::_exit(0);
    }
    Victim(const Victim&) = delete;
    Victim& operator=(const Victim&) = delete;
    ~Victim() { ::close(pipe_[0]); }

    /// Kills it after a time; returns what it had confirmed. Fails the test when it ended by a fault of its own.
    std::string killAfter(std::chrono::microseconds time) {
        ::usleep(static_cast<useconds_t>(time.count()));
        ::kill(child_, SIGKILL);
        int status = 0;
        ::waitpid(child_, &status, 0);
        CHECK((WIFSIGNALED(status) || WEXITSTATUS(status) == 0));
        std::string confirmed;
        for (char c = 0; ::read(pipe_[0], &c, 1) == 1;) confirmed += c;
        return confirmed;
    }

private:
    int pipe_[2]{};
    pid_t child_ = 0;
};

/// One session with two photos and their measures, as an import makes it; confirmed once it is stored.
void addSession(Store& store, const std::filesystem::path& photos, int number) {
    store.together([&] {
        StoredPhoto row;
        row.session = store.addSession(sample::session());
        for (const char* which : {"a", "b"}) {
            const auto file = photos / (std::to_string(number) + which + ".jpg");
            std::ofstream(file) << number << which << std::string(20000, 'p');
            store.addMeasures({sample::stored(store.addPhoto(row, file), std::nullopt)});
        }
    });
}

void work(const std::filesystem::path& house, const std::filesystem::path& photos, int from,
          const std::function<void(char)>& confirm) {
    Store store = Store::open(house);
    for (int number = from; number < from + 200; ++number) {
        addSession(store, photos, number);
        confirm('s');
        const auto last = store.measuresOfSession(store.sessions().back().id);
        StoredMeasure corrected = last.at(0);
        corrected.replaces = corrected.id;
        store.addMeasure(corrected);
        confirm('c');
        store.setAccepted(last.at(1).id, false);
        confirm('a');
    }
}

struct Counts {
    std::size_t sessions = 0;
    std::size_t corrected = 0;
    std::size_t accepted = 0;
};

Counts countsOf(const Store& store) {
    Counts counts{store.sessions().size(), 0, 0};
    for (const Change& change : store.changes()) {
        counts.corrected += change.what == "corrected" ? 1U : 0U;
        counts.accepted += change.what == "accepted" ? 1U : 0U;
    }
    return counts;
}

/// Kills a working program over and over; after each time the collection is whole and has all that was confirmed.
void killWorking(int times, unsigned seed) {
    const ScratchFolder scratch;
    static_cast<void>(Store::create(scratch / "house"));
    std::filesystem::create_directories(scratch / "in");
    std::mt19937 random(seed);
    std::uniform_int_distribution<int> moment(5000, 250000);
    Counts before;
    for (int time = 0; time < times; ++time) {
        Victim victim([&](const auto& confirm) { work(scratch / "house", scratch / "in", time * 1000, confirm); });
        const std::string confirmed = victim.killAfter(std::chrono::microseconds(moment(random)));
        INFO("kill " << time << ", confirmed " << confirmed);
        const Store store = Store::open(scratch / "house");
        const Counts after = countsOf(store);
        const auto told = [&](char what) {
            return static_cast<std::size_t>(std::count(confirmed.begin(), confirmed.end(), what));
        };
        // What was confirmed is there, and at most the one thing being confirmed beyond it.
        CHECK(after.sessions >= before.sessions + told('s'));
        CHECK(after.sessions <= before.sessions + told('s') + 1);
        CHECK(after.corrected >= before.corrected + told('c'));
        CHECK(after.corrected <= before.corrected + told('c') + 1);
        CHECK(after.accepted >= before.accepted + told('a'));
        CHECK(after.accepted <= before.accepted + told('a') + 1);
        for (const Session& session : store.sessions()) {
            REQUIRE(store.photos(session.id).size() == 2);
            REQUIRE(store.measuresOfSession(session.id).size() == 2);
        }
        before = after;
    }
    CHECK(verifyCollection(scratch / "house").whole());
    CHECK(before.sessions > 0);
}

/// Kills a program while it imports a table of 150 animals: all are there, or none.
void killImporting(int times, unsigned seed) {
    constexpr std::size_t kRows = 150;
    const ScratchFolder scratch;
    static_cast<void>(Store::create(scratch / "house"));
    std::mt19937 random(seed);
    std::uniform_int_distribution<int> moment(5000, 120000);
    for (int time = 0; time < times; ++time) {
        std::string table = "code,species\n";
        for (std::size_t row = 0; row < kRows; ++row)
            table += "A" + std::to_string(time) + "-" + std::to_string(row) + ",Syngnathus typhle\n";
        const auto file = scratch.write("table.csv", table);
        const std::size_t before = Store::open(scratch / "house").animals().size();
        Victim victim([&](const auto& confirm) {
            Store store = Store::open(scratch / "house");
            TableImportOptions options;
            options.write = true;
            if (importTable(store, file, "animal", options).written) confirm('i');
        });
        const bool confirmed = !victim.killAfter(std::chrono::microseconds(moment(random))).empty();
        const Store store = Store::open(scratch / "house");
        const std::size_t after = store.animals().size();
        INFO("kill " << time << ", confirmed " << confirmed);
        REQUIRE((after == before + kRows || (after == before && !confirmed)));
        REQUIRE(store.changes().size() == after);
    }
    CHECK(verifyCollection(scratch / "house").whole());
}

/// Kills a program while it brings an older collection up to date.
void killMigrating(int times, unsigned seed) {
    const ScratchFolder scratch;
    std::mt19937 random(seed);
    std::uniform_int_distribution<int> moment(2000, 80000);
    for (int time = 0; time < times; ++time) {
        const auto house = scratch / ("house-" + std::to_string(time));
        writeVersion1(house);
        Victim victim([&](const auto& confirm) {
            static_cast<void>(Store::open(house));
            confirm('m');
        });
        static_cast<void>(victim.killAfter(std::chrono::microseconds(moment(random))));
        const Store store = Store::open(house);
        REQUIRE(store.animals().size() == 2);
        REQUIRE(store.records("measure").size() == 3);
        REQUIRE(store.measuresOfAnimal(store.animals().at(0).id).at(0).outlinePx.size() == 3);
        checkDatabaseFile(databaseOf(house), Thoroughness::Whole);
        std::filesystem::remove_all(house);
    }
}

/// Kills a program while it restores a backup: the collection is the one or the other.
void killRestoring(int times, unsigned seed) {
    const ScratchFolder scratch;
    {
        Store store = Store::create(scratch / "house");
        store.addAnimal(sample::animal());
        backUp(store);
        store.addAnimal(sample::animal("P5", 15));
    }
    std::mt19937 random(seed);
    std::uniform_int_distribution<int> moment(2000, 60000);
    for (int time = 0; time < times; ++time) {
        Victim victim([&](const auto&) { static_cast<void>(restoreBackup(scratch / "house")); });
        static_cast<void>(victim.killAfter(std::chrono::microseconds(moment(random))));
        Store store = Store::open(scratch / "house");
        REQUIRE((store.animals().size() == 1 || store.animals().size() == 2));
        if (store.animals().size() == 1) store.addAnimal(sample::animal("P5", 15));
    }
}

}  // namespace

TEST_CASE("a program killed at any moment leaves a whole collection with all that was confirmed") {
    killWorking(6, 1);
    killImporting(3, 4);
    killMigrating(4, 2);
    killRestoring(3, 3);
}

TEST_CASE("killed at 500 random moments", "[.deep]") {
    killWorking(200, 11);
    killImporting(130, 14);
    killMigrating(130, 12);
    killRestoring(40, 13);
}
