// SPDX-License-Identifier: GPL-3.0-or-later
// A stored photo that is opened in the app is measured with the photo of the empty box that its session had.
#include <QLabel>
#include <QTemporaryDir>
#include <QTest>
#include <catch2/catch.hpp>
#include <filesystem>
#include <opencv2/imgcodecs.hpp>

#include "../render/box_file.h"
#include "../render/photograph.h"
#include "app/photo_desk.h"
#include "app/session_page.h"
#include "ringrule/workflow/collection_review.h"
#include "ringrule/workflow/empty_box_photo.h"

using namespace ringrule;

namespace {

namespace fs = std::filesystem;

/// A pipefish before a plate with ruled lines, a stain behind its trunk and a smear as long as a fish: without the
/// photo of the empty box it is measured wrong or not at all (`tests/workflow/hard_plates_test.cpp`).
render::Scene soiledScene() {
    render::Scene scene;
    scene.box = render::benchBox();
    scene.animal.lengthMm = 110.0;
    scene.animal.trunkDepthMm = 4.0;
    scene.animal.trunkWidthMm = 3.6;
    scene.animal.coat.srgb = {90.0, 72.0, 45.0};
    scene.stains = {{{84.0, 22.0}, {86.0, 98.0}, 0.4, 0.1},
                    {{112.0, 22.0}, {140.0, 98.0}, 0.4, 0.1},
                    {{78.0, 61.0}, {96.0, 57.0}, 14.0, 0.8},
                    {{40.0, 88.0}, {120.0, 91.0}, 3.0, 0.25}};
    return scene;
}

void save(const render::Scene& scene, const fs::path& file) {
    fs::create_directories(file.parent_path());
    cv::imwrite(file.string(), render::photograph(scene), {cv::IMWRITE_JPEG_QUALITY, 85});
}

}  // namespace

TEST_CASE("a photo that is opened again is read with the photo of the empty box of its session") {
    const QTemporaryDir place;
    const fs::path root = place.path().toStdString();
    const render::Scene scene = soiledScene();
    render::Scene empty = scene;
    empty.withoutAnimal = true;
    empty.seed = 77;
    save(scene, root / "photos" / "fish_rendered.jpg");
    save(empty, root / "photos" / "empty" / "empty_rendered.jpg");
    render::writeBox(scene.box, root / "box.json");
    const fs::path folder = root / "house";
    {
        Store store = Store::create(folder);
        keepBoxFile(store, root / "box.json");
        Session session;
        session.on = *parseDate("2031-01-06");
        const SessionSummary summary = addSessionFolder(store, root / "photos", session, readBox(root / "box.json"), 1);
        REQUIRE(summary.measured == 1);
    }
    const auto readingOf = [&] {
        Collection collection;
        collection.open(folder);
        SessionPage page(collection);
        page.resize(1280, 800);
        page.show();
        REQUIRE(QTest::qWaitFor([&] { return !page.busy() && page.draft() != nullptr; }, 30000));
        return page.draft()->reading().animals;
    };
    const auto with = readingOf();
    REQUIRE(with.size() == 1);
    Store store = Store::open(folder);
    const StoredMeasure stored = store.measuresOfSession(store.sessions().front().id).front();
    // The same pixels by the same steps: to rounding.
    CHECK(with.front().measurement.standardLengthMm.value ==
          Approx(stored.measurement.standardLengthMm.value).epsilon(1e-6));

    // Without the photo it is read otherwise: else the plate is no test.
    fs::remove(*emptyBoxPhotoKept(folder, store.sessions().front().id));
    const auto without = readingOf();
    const bool same =
        without.size() == 1 && without.front().measurement.standardLengthMm.known() &&
        std::abs(without.front().measurement.standardLengthMm.value / stored.measurement.standardLengthMm.value - 1.0) <
            0.01;
    CHECK_FALSE(same);
}
