// SPDX-License-Identifier: GPL-3.0-or-later
#include "small_collection.h"

#include <QTemporaryDir>
#include <string>

#include "ringrule/records/store.h"
#include "ringrule/workflow/collection_review.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

const fs::path& scratch() {
    static const QTemporaryDir folder;
    static const fs::path path = folder.path().toStdString();
    return path;
}

fs::path measuredOnce() {
    using namespace std::chrono;
    const fs::path source = RINGRULE_SOURCE_DIR;
    const fs::path folder = scratch() / "measured";
    const fs::path photos = photosOfSmallCollection();
    Store store = Store::create(folder);
    const TankId tank = store.addTank({{}, "bay-3", "Bay 3"});
    for (int k = 1; k <= 3; ++k) {
        Animal animal;
        animal.code = "P" + std::to_string(k);
        animal.species = "Syngnathus typhle";
        animal.shape = "pipefish";
        animal.hatchedOn = Date(2030y / November / 15);
        animal.hatchedExactly = true;
        animal.card = k;
        store.addStay({store.addAnimal(animal), tank, Date(2031y / January / 1), {}});
    }
    keepBoxFile(store, source / "calibration" / "bench-box.json");
    Session session;
    session.on = Date(2031y / January / 6);
    session.keeper = "K1";
    const Box box = readBox(source / "calibration" / "bench-box.json");
    (void)addSessionFolder(store, photos, session, box, 2);
    return folder;
}

}  // namespace

fs::path photosOfSmallCollection() {
    const fs::path photos = scratch() / "photos";
    if (fs::exists(photos)) return photos;
    fs::create_directories(photos);
    for (const char* name : {"P1-a_rendered.jpg", "P2-b_rendered.jpg", "P3-a_rendered.jpg"})
        fs::copy_file(fs::path(RINGRULE_SOURCE_DIR) / "sample_images" / "2031-01-06" / name, photos / name);
    return photos;
}

fs::path smallCollection() {
    static const fs::path measured = measuredOnce();
    static int copies = 0;
    const fs::path copy = scratch() / ("copy-" + std::to_string(++copies));
    fs::copy(measured, copy, fs::copy_options::recursive);
    return copy;
}

}  // namespace ringrule
