// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <functional>

#include <sched.h>
#include <sys/mount.h>
#include <sys/wait.h>
#include <unistd.h>

#include "../scratch_folder.h"
#include "ringrule/records/archive.h"
#include "ringrule/records/backup.h"
#include "ringrule/records/package.h"
#include "ringrule/records/table_import.h"
#include "sample_records.h"

using namespace ringrule;

namespace {

constexpr int kNoMount = 77;

bool saysFull(const std::function<void()>& body) {
    try {
        body();
    } catch (const Error& error) {
        if (error.kind() == ErrorKind::NoSpace) return true;
        fprintf(stderr, "not told as a full disk: %s\n", error.what());
    }
    return false;
}

/// On a disk of 2 MB that a collection fills: what fails, as the child's exit status.
int onSmallDisk(const std::filesystem::path& disk) {
    if (::unshare(CLONE_NEWNS) != 0 && ::unshare(CLONE_NEWUSER | CLONE_NEWNS) != 0) return kNoMount;
    if (::mount("tmpfs", disk.c_str(), "tmpfs", 0, "size=2m") != 0) return kNoMount;
    Store store = Store::create(disk / "house");
    StoredPhoto photo;
    photo.session = store.addSession(sample::session());
    std::ofstream(disk / "a.jpg") << std::string(400 * 1024, 'p');
    store.addPhoto(photo, disk / "a.jpg");
    std::ofstream(disk / "filler") << std::string(700 * 1024, 'f');
    const auto left = [&] { return std::distance(std::filesystem::recursive_directory_iterator(disk), {}); };
    const auto before = left();
    if (!saysFull([&] { writeArchive(store, disk / "house.zip"); })) return 2;
    if (!saysFull([&] { exportPackage(store, disk / "package"); })) return 3;
    std::string table = "code,species,source\n";
    for (int i = 0; i < 400; ++i) table += "A" + std::to_string(i) + ",S," + std::string(1000, 's') + "\n";
    TableImportOptions options;
    options.write = true;
    std::ofstream(disk.parent_path() / "table.csv") << table;
    if (!saysFull([&] { static_cast<void>(importTable(store, disk.parent_path() / "table.csv", "animal", options)); }))
        return 4;
    std::ofstream more(disk / "filler-2", std::ios::binary);
    while (more.write("0123456789abcdef", 16).flush()) continue;
    if (!saysFull([&] { backUp(store); })) return 5;
    if (!store.animals().empty() || Store::open(disk / "house").sessions().size() != 1) return 6;
    std::filesystem::remove(disk / "filler");
    std::filesystem::remove(disk / "filler-2");
    store.addAnimal(sample::animal());
    return left() - before <= 1 ? 0 : 7;  // the folder backups/ may be there; nothing half made
}

/// A collection that nobody has open, on a disk that is full to the last byte.
int openedOnFullDisk(const std::filesystem::path& disk) {
    if (::unshare(CLONE_NEWNS) != 0 && ::unshare(CLONE_NEWUSER | CLONE_NEWNS) != 0) return kNoMount;
    if (::mount("tmpfs", disk.c_str(), "tmpfs", 0, "size=2m") != 0) return kNoMount;
    Store::create(disk / "house").addAnimal(sample::animal());
    std::ofstream filler(disk / "filler", std::ios::binary);
    while (filler.write("0123456789abcdef", 16).flush()) continue;
    if (!saysFull([&] { static_cast<void>(Store::open(disk / "house")); })) return 2;
    filler.close();
    std::filesystem::remove(disk / "filler");
    return Store::open(disk / "house").animals().size() == 1 ? 0 : 3;
}

/// The exit status of `body` in a process of its own, which may mount what it likes.
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
    REQUIRE(WIFEXITED(status));
    if (WEXITSTATUS(status) != kNoMount) return WEXITSTATUS(status);
    WARN("no right to mount a small disk here: the full disk was not tried");
    return 0;
}

}  // namespace

TEST_CASE("archive, export, import and backup on a full disk: a sentence, and nothing half made") {
    const ScratchFolder scratch;
    std::filesystem::create_directories(scratch / "disk");
    CHECK(inChild([&] { return onSmallDisk(scratch / "disk"); }) == 0);
}

TEST_CASE("a collection on a full disk is told as that when it is opened, and is whole with room again") {
    const ScratchFolder scratch;
    std::filesystem::create_directories(scratch / "disk");
    CHECK(inChild([&] { return openedOnFullDisk(scratch / "disk"); }) == 0);
}
