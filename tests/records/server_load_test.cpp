// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <chrono>
#include <iostream>
#include <set>

#include <sys/wait.h>
#include <unistd.h>

#include "../scratch_folder.h"
#include "either_store.h"
#include "ringrule/records/verify.h"
#include "sample_records.h"

using namespace ringrule;

namespace {

using Clock = std::chrono::steady_clock;

/// What one keeper's program did.
struct Done {
    int counted = 0;    ///< raised the one count that all raise
    int retold = 0;     ///< was told that somebody else had changed it meanwhile
    int corrected = 0;  ///< corrected a measure
    int fed = 0;        ///< added a feeding note
    int photos = 0;     ///< sessions added
};

/// Raises a count that every other program raises too, by reading it, adding one and writing it back.
void raise(Store& store, std::int64_t event, Done& done) {
    for (;;) {
        const Record now = *store.record("brood-event", event);
        try {
            store.changeRecord("brood-event", event, now.version,
                               {{"count", std::to_string(std::stoi(now.text("count")) + 1)}});
            ++done.counted;
            return;
        } catch (const ChangedMeanwhile&) {
            ++done.retold;
        }
    }
}

/// Corrects the current measure of the photo that all correct.
void correct(Store& store, PhotoId photo, Done& done) {
    StoredMeasure measure = store.measuresOfPhoto(photo).at(0);
    measure.replaces = measure.id;
    measure.measurement.standardLengthMm.value += 1.0;
    try {
        store.addMeasure(measure);
        ++done.corrected;
    } catch (const ChangedMeanwhile&) {
        ++done.retold;
    }
}

Done workUntil(Clock::time_point end, const std::string& house, const ScratchFolder& scratch, int who) {
    Store store = Store::open(house);
    store.setKeeper("K" + std::to_string(who));
    const std::int64_t event = store.records("brood-event").at(0).id;
    const PhotoId photo = store.photos(store.sessions().at(0).id).at(0).id;
    Done done;
    for (int round = 0; Clock::now() < end; ++round) {
        raise(store, event, done);
        correct(store, photo, done);
        store.addFeedingNote({AnimalId{1}, {}, Date{}, "mysids", "taken", "K1", ""});
        ++done.fed;
        if (round % 8 != 0) continue;
        store.together([&] {
            // Every program brings the same photo, and one of its own.
            StoredPhoto row;
            row.session = store.addSession(sample::session());
            const std::string own = std::to_string(who) + "-" + std::to_string(round);
            store.addPhoto(row, scratch.write("all.jpg" + std::to_string(who), std::to_string(round)));
            store.addMeasures({sample::stored(store.addPhoto(row, scratch.write(own, own)), AnimalId{1})});
        });
        ++done.photos;
    }
    return done;
}

/// Lets four programs work on one collection at the same time; returns what they did, each by itself.
std::vector<Done> fourAtOnce(const std::string& house, const ScratchFolder& scratch, std::chrono::seconds time) {
    std::vector<Done> all(4);
    std::vector<std::pair<pid_t, int>> children;
    const auto end = Clock::now() + time;
    for (int who = 1; who <= 4; ++who) {
        int pipe[2];
        REQUIRE(::pipe(pipe) == 0);
        const pid_t child = ::fork();
        if (child == 0) {
            Done done;
            try {
                done = workUntil(end, house, scratch, who);
            } catch (const std::exception& problem) {
                std::cerr << "keeper " << who << ": " << problem.what() << std::endl;
                ::_exit(1);
            }
            ::_exit(::write(pipe[1], &done, sizeof done) == sizeof done ? 0 : 1);
        }
        ::close(pipe[1]);
        children.emplace_back(child, pipe[0]);
    }
    for (std::size_t i = 0; i < children.size(); ++i) {
        CHECK(::read(children[i].second, &all[i], sizeof(Done)) == sizeof(Done));
        ::close(children[i].second);
        int status = 0;
        ::waitpid(children[i].first, &status, 0);
        CHECK((WIFEXITED(status) && WEXITSTATUS(status) == 0));
    }
    return all;
}

void loseNothing(std::chrono::seconds time) {
    const ScratchFolder scratch;
    const std::string address = emptyDatabase("busy");
    std::int64_t event = 0;
    PhotoId photo;
    {
        Store store = Store::createShared(address, scratch / "house");
        const AnimalId animal = store.addAnimal(sample::animal());
        Brood brood;
        brood.code = "R2";
        store.addBroodEvent({store.addBrood(brood), Date{}, "count", 0, ""});
        StoredPhoto row;
        row.session = store.addSession(sample::session());
        photo = store.addPhoto(row, scratch.write("a.jpg", "x"));
        store.addMeasure(sample::stored(photo, animal, 100.0));
        event = store.records("brood-event").at(0).id;
    }
    const auto all = fourAtOnce(scratch / "house", scratch, time);
    Done sum;
    for (const Done& done : all) {
        CHECK(done.counted > 0);  // nobody was kept out
        sum.counted += done.counted;
        sum.retold += done.retold;
        sum.corrected += done.corrected;
        sum.fed += done.fed;
        sum.photos += done.photos;
    }
    const Store store = Store::open(address);
    const Record counted = *store.record("brood-event", event);
    CHECK(counted.text("count") == std::to_string(sum.counted));
    CHECK(counted.version == sum.counted + 1);
    CHECK(store.measuresOfPhoto(photo).at(0).measurement.standardLengthMm.value == 100.0 + sum.corrected);
    CHECK(store.feedingNotes().size() == static_cast<std::size_t>(sum.fed));
    CHECK(store.sessions().size() == static_cast<std::size_t>(sum.photos) + 1);
    CHECK(sum.retold > 0);  // they did meet
    std::set<std::int64_t> logged;
    for (const Change& change : store.changes()) logged.insert(change.id);
    CHECK(logged.size() == store.changes().size());
    CHECK(verifyCollection(address).whole());
    Database server(readServerAddress(address));
    CHECK(server.textOf("SELECT count(*) FROM pg_locks WHERE NOT granted") == "0");
    CHECK(server.textOf("SELECT deadlocks FROM pg_stat_database WHERE datname = 'busy'") == "0");
    std::cout << "four programs for " << time.count() << " s: " << sum.counted << " counts, " << sum.corrected
              << " corrections, " << sum.fed << " notes, " << sum.photos << " sessions; " << sum.retold
              << " times told of the other's change\n";
}

}  // namespace

TEST_CASE("four programs that write to one server at once lose nothing", "[.server]") {
    loseNothing(std::chrono::seconds(5));
}

TEST_CASE("four programs that write to one server for a minute lose nothing", "[.server-deep]") {
    loseNothing(std::chrono::seconds(60));
}
