// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/overlay.h"

#include <QImage>
#include <QPainter>
#include <QPainterPath>
#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <iterator>

#include "../scratch_folder.h"
#include "ringrule/error.h"
#include "ringrule/sheets/animal_paths.h"
#include "ringrule/sheets/animal_sheet.h"
#include "ringrule/sheets/landmark_mark.h"

using namespace ringrule;

namespace {

/// A slender body along a gentle arc, in a photo of 1200 × 800.
OverlayAnimal slenderAnimal(double topPx) {
    OverlayAnimal animal;
    animal.label = "P4";
    Anatomy& anatomy = animal.anatomy;
    anatomy.shape = Shape::Pipefish;
    std::vector<PixelPoint> upper;
    std::vector<PixelPoint> lower;
    for (int k = 0; k <= 200; ++k) {
        const double t = k / 200.0;
        const PixelPoint at{200.0 + 800.0 * t, topPx + 60.0 * t * (1.0 - t)};
        const double half = 3.0 + 14.0 * std::sin(3.14159265 * std::pow(t, 0.6));
        anatomy.midline.spinePx.push_back(at);
        anatomy.midline.leftHalfWidthPx.push_back(half);
        anatomy.midline.rightHalfWidthPx.push_back(half);
        upper.push_back({at.x, at.y - half});
        lower.push_back({at.x, at.y + half});
    }
    animal.outline.boundaryPx = upper;
    animal.outline.boundaryPx.insert(animal.outline.boundaryPx.end(), lower.rbegin(), lower.rend());
    const auto& spine = anatomy.midline.spinePx;
    anatomy.landmarks.snoutTip = Landmark{spine[0], 1.0, false};
    anatomy.landmarks.headEnd = Landmark{spine[30], 2.0, true};
    anatomy.landmarks.trunkEnd = Landmark{spine[90], 3.0, false};
    anatomy.landmarks.tailEnd = Landmark{spine[200], 1.0, false};
    Measurement& m = animal.measurement;
    m.shape = Shape::Pipefish;
    m.standardLengthMm = {132.41, 0.2, 0.24};
    m.headLengthMm = {19.8, 0.2, 0.04};
    m.trunkDepthMm = {4.71, 0.03, 0.01};
    m.depthRatio = {0.0356, 0.0002, 0.0001};
    m.remarks = {Remark::NoLens, Remark::MovedByHand};
    return animal;
}

std::filesystem::path scratch(const std::string& name) {
    static const ScratchFolder folder;  // one a program: tests run side by side
    return folder / name;
}

std::filesystem::path photoOf(const std::vector<OverlayAnimal>& animals) {
    QImage photo(1200, 800, QImage::Format_RGB32);
    photo.fill(QColor(214, 218, 214));
    QPainter painter(&photo);
    painter.setBrush(QColor(70, 66, 50));
    painter.setPen(Qt::NoPen);
    for (const OverlayAnimal& animal : animals) painter.drawPath(outlinePath(animal.outline));
    painter.end();
    const auto path = scratch("photo.png");
    photo.save(QString::fromStdString(path.string()));
    return path;
}

}  // namespace

TEST_CASE("an overlay shows the animal, its landmarks and its numbers on one sheet") {
    const std::vector<OverlayAnimal> one{slenderAnimal(400)};
    const auto png = scratch("overlay.png");
    writeOverlayPng(photoOf(one), one, png);
    const QImage sheet(QString::fromStdString(png.string()));
    CHECK(sheet.width() == 1600);
    CHECK(sheet.height() > 600);
    const std::vector<OverlayAnimal> two{slenderAnimal(250), slenderAnimal(550)};
    writeOverlayPng(photoOf(two), two, scratch("overlay-two.png"));
    CHECK_FALSE(QImage(QString::fromStdString(scratch("overlay-two.png").string())).isNull());
    writeOverlayPng(photoOf(two), {}, scratch("overlay-none.png"));
    CHECK(QImage(QString::fromStdString(scratch("overlay-none.png").string())).width() == 1600);
}

TEST_CASE("an animal's sheet is one page of PDF") {
    AnimalSheet sheet;
    sheet.history.animal.code = "P4";
    sheet.history.animal.species = "Syngnathus typhle";
    sheet.asOf = Date(std::chrono::days(22400));
    for (int month = 0; month < 9; ++month) {
        Observation seen;
        seen.on = sheet.asOf - std::chrono::days(30 * (8 - month));
        seen.ageDays = 60.0 + 30 * month;
        seen.standardLengthMm = {70.0 + 8.0 * month, 0.2, 0.2};
        seen.depthRatio = {0.035 - 0.0003 * month, 0.0002, 0.0001};
        sheet.history.observations.push_back(seen);
    }
    sheet.lines = {{"P4", sheet.history.observations, true}};
    Finding finding;
    finding.sentence = "P4 is 12 % (8 to 16 %) thinner for its length than its 5 tankmates since 2031-03-03.";
    finding.nextStep = "Repeat the photo; watch whether it takes food.";
    finding.otherReasons = {"A photo at an angle.", "An empty gut on the day."};
    sheet.findings = {finding};
    sheet.drawn = slenderAnimal(400);
    sheet.photo = photoOf({*sheet.drawn});
    const auto pdf = scratch("sheet.pdf");
    writeAnimalSheetPdf(sheet, pdf);
    std::ifstream in(pdf, std::ios::binary);
    const std::string bytes((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
    CHECK(bytes.starts_with("%PDF-"));
    // "/Count 1": the page tree holds one page.
    CHECK(bytes.find("/Count 1") != std::string::npos);
    CHECK_THROWS_AS(writeAnimalSheetPdf(sheet, "/nonexistent/sheet.pdf"), Error);
}

TEST_CASE("half-width ticks reach from edge to edge, left on the left hand") {
    Midline midline;
    for (int k = 0; k < 50; ++k) {
        midline.spinePx.push_back({10.0 * k, 100.0});
        midline.leftHalfWidthPx.push_back(7.0);
        midline.rightHalfWidthPx.push_back(4.0);
    }
    // Walking to the right with y down, the left hand points up: smaller y.
    const QRectF box = halfWidthTicks(midline).boundingRect();
    CHECK_THAT(box.top(), Catch::WithinAbs(93.0, 1e-9));
    CHECK_THAT(box.bottom(), Catch::WithinAbs(104.0, 1e-9));
}

TEST_CASE("every landmark has its own shape") {
    for (const LandmarkName a : kLandmarkNames)
        for (const LandmarkName b : kLandmarkNames)
            if (a != b) CHECK_FALSE(landmarkMark(a, 10.0) == landmarkMark(b, 10.0));
}

TEST_CASE("an overlay of what is no photo is an error") {
    CHECK_THROWS_AS(writeOverlayPng("/nonexistent/photo.jpg", {}, scratch("never.png")), Error);
}
