// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <QImage>
#include <QPainter>

#include "../scratch_folder.h"
#include "ringrule/error.h"
#include "ringrule/sheets/colours.h"
#include "ringrule/sheets/drawing_application.h"
#include "ringrule/sheets/lens_chart.h"

using namespace ringrule;

namespace {

// Two photos of a few corners over a frame of 8 × 6 cells, the lower half of which saw none.
LensReport report(LensPhotoState second) {
    LensReport made;
    for (const LensPhotoState state : {LensPhotoState::Used, second}) {
        LensPhoto photo;
        photo.path = state == LensPhotoState::Used ? "one.jpg" : "two.jpg";
        photo.state = state;
        photo.rmsPx = state == LensPhotoState::Used ? 0.2 : 0.9;
        for (int i = 0; i < 40; ++i) {
            photo.seenPx.push_back({20.0 + 15.0 * i, 100.0});
            photo.missesPx.push_back({0.1, 0.2});
        }
        made.photos.push_back(photo);
    }
    made.cellColumns = 8;
    made.cellRows = 6;
    made.cornersInCell.assign(48, 0);
    std::fill_n(made.cornersInCell.begin(), 24, 5);
    made.coverage = 0.5;
    made.fitted = FittedLens{};
    made.fitted->lens.imageWidthPx = 640;
    made.fitted->lens.imageHeightPx = 480;
    return made;
}

// Pixels of a colour in a part of the chart, in parts of its width.
int countOf(const QImage& image, unsigned colour, double from, double to) {
    int count = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = static_cast<int>(from * image.width()); x < static_cast<int>(to * image.width()); ++x)
            if ((image.pixel(x, y) & 0xFFFFFFU) == colour) ++count;
    return count;
}

QImage painted(const LensReport& made) {
    ensureDrawingApplication();
    QImage image(1000, 500, QImage::Format_RGB32);
    QPainter painter(&image);
    paintLensChart(painter, QRectF(0, 0, 1000, 500), made, 13.0);
    return image;
}

}  // namespace

TEST_CASE("the lens chart marks cells without corners and photos to retake") {
    const QImage good = painted(report(LensPhotoState::Used));
    const QImage bad = painted(report(LensPhotoState::Outlier));
    CHECK(countOf(good, colour::kBlue, 0.6, 1.0) > 200);  // bars of both photos
    CHECK(countOf(good, colour::kVermilion, 0.6, 1.0) == 0);
    CHECK(countOf(bad, colour::kVermilion, 0.6, 1.0) > 200);
    CHECK(countOf(good, 0xE9F4F0, 0.0, 0.55) > 20'000);  // cells that hold corners
}

TEST_CASE("a lens chart without photos or fit is drawn and written all the same") {
    LensReport empty;
    CHECK(countOf(painted(empty), 0xFFFFFF, 0.0, 1.0) > 400'000);
    const ScratchFolder folder;
    writeLensChartPng(empty, folder / "lens.png");
    CHECK(contentOf(folder / "lens.png").starts_with("\x89PNG"));
    CHECK_THROWS_AS(writeLensChartPng(empty, folder / "missing/lens.png"), Error);
}
