// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "../scratch_folder.h"
#include "either_store.h"
#include "ringrule/error.h"
#include "sample_records.h"

using namespace ringrule;

TEST_CASE("an original is kept under its hash, read-only, and never rewritten", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    StoredPhoto row;
    row.session = store.addSession(sample::session());
    const auto original = scratch.write("IMG 1.JPEG", "content");
    store.addPhoto(row, original);
    const auto photo = store.photos(row.session).at(0);
    const auto kept = store.originalOf(photo);
    CHECK(kept.filename() == photo.contentHash + ".jpeg");
    CHECK(contentOf(kept) == "content");
    CHECK((std::filesystem::status(kept).permissions() & std::filesystem::perms::owner_write) ==
          std::filesystem::perms::none);
    scratch.write("IMG 1.JPEG", "changed later");
    CHECK(contentOf(kept) == "content");
    CHECK(filesIn(scratch / "house/photos") == 1);
}

TEST_CASE("the same photo under another name is recognised", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    StoredPhoto row;
    row.session = store.addSession(sample::session());
    const PhotoId first = store.addPhoto(row, scratch.write("a.jpg", "same"));
    row.session = store.addSession(sample::session());
    const PhotoId second = store.addPhoto(row, scratch.write("b.jpg", "same"));
    CHECK(first == second);
    CHECK(store.photos(row.session).empty());
    CHECK(filesIn(scratch / "house/photos") == 1);
    const auto found = store.photoWithHash(store.photos(store.sessions().at(0).id).at(0).contentHash);
    REQUIRE(found.has_value());
    CHECK(found->id == first);
    CHECK_FALSE(store.photoWithHash("00").has_value());
}

TEST_CASE("a photo that changed since it was measured is refused", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    StoredPhoto row;
    row.session = store.addSession(sample::session());
    row.contentHash = "ab";
    try {
        store.addPhoto(row, scratch.write("a.jpg", "other"));
        FAIL("was added");
    } catch (const Error& error) {
        CHECK(error.kind() == ErrorKind::BadPhoto);
    }
    CHECK(store.photos(row.session).empty());
    CHECK(filesIn(scratch / "house/photos") == 0);
}

TEST_CASE("a missing original is an error, not an empty photo", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    StoredPhoto row;
    row.session = store.addSession(sample::session());
    CHECK_THROWS_AS(store.addPhoto(row, scratch / "gone.jpg"), Error);
}

TEST_CASE("a photo damaged inside the collection is found when it is added again", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    StoredPhoto row;
    row.session = store.addSession(sample::session());
    const auto original = scratch.write("a.jpg", "content");
    store.addPhoto(row, original);
    const auto kept = store.originalOf(store.photos(row.session).at(0));
    std::filesystem::permissions(kept, std::filesystem::perms::owner_all);
    std::ofstream(kept, std::ios::binary) << "rotten";
    try {
        store.addPhoto(row, original);
        FAIL("was taken for whole");
    } catch (const Error& error) {
        CHECK(error.kind() == ErrorKind::BadStore);
    }
    // A photo that went missing is put back instead.
    std::filesystem::remove(kept);
    store.addPhoto(row, original);
    CHECK(contentOf(kept) == "content");
}
