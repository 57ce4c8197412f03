// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <random>
#include <string>

#include <nlohmann/json.hpp>
#include <opencv2/imgproc.hpp>

#include "ringrule/measure/measure.h"
#include "ringrule/midline/landmarks.h"
#include "ringrule/midline/midline.h"
#include "ringrule/optics/scale.h"
#include "ringrule/outline/find_outline.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

const std::string kRoot = RINGRULE_SOURCE_DIR;

struct Reading {
    std::vector<Outline> outlines;
    std::vector<Outcome<Anatomy>> anatomies;
    std::vector<Measurement> measurements;
    std::string refusal;
    std::optional<Scale> scale;
};

Photo photoOf(const std::string& name) {
    return loadPhoto(kRoot + "/sample_images/" + name + "_rendered.jpg");
}

nlohmann::json truthOf(const std::string& session, const std::string& name) {
    std::ifstream file(kRoot + "/sample_images/truth/" + session + "/" + name + "_rendered.json");
    return nlohmann::json::parse(file);
}

Reading measured(const Photo& photo, Shape shape, View view = View::Side) {
    Reading reading;
    const Box box = readBox(kRoot + "/calibration/bench-box.json");
    const auto plate = findPlate(photo, box);
    REQUIRE(plate.ok());
    const auto scale = Scale::fromPlate(box, plate.value(), photo.grey.cols, photo.grey.rows);
    REQUIRE(scale.ok());
    reading.scale = scale.value();
    const auto outlines = findOutlines(photo, box, plate.value(), scale.value());
    if (!outlines.ok()) {
        reading.refusal = outlines.refusal().reason;
        return reading;
    }
    reading.outlines = outlines.value();
    for (const Outline& outline : reading.outlines) {
        const auto midline = findMidline(photo, outline);
        const auto anatomy = midline.ok() ? findLandmarks(photo, outline, midline.value(), {shape, view})
                                          : Outcome<Anatomy>(midline.refusal());
        reading.anatomies.push_back(anatomy);
        if (anatomy.ok())
            reading.measurements.push_back(measureAnimal(outline, anatomy.value(), *reading.scale, {view}));
    }
    return reading;
}

bool has(const std::vector<Remark>& remarks, Remark remark) {
    return std::find(remarks.begin(), remarks.end(), remark) != remarks.end();
}

/// Paints the plate over everything that is no print between two columns.
void wipe(cv::Mat& grey, int fromX, int toX) {
    for (int y = 380; y < 1000; ++y) {
        for (int x = fromX; x < toX; ++x) grey.at<unsigned char>(y, x) = 205;
    }
}

}  // namespace

TEST_CASE("Young pipefish are measured within a per cent, their depth within four") {
    for (const char* name : {"P1-a", "P3-b", "P6-a"}) {
        const nlohmann::json truth = truthOf("2031-01-06", name);
        const Reading reading = measured(photoOf(std::string("2031-01-06/") + name), Shape::Pipefish);
        REQUIRE(reading.measurements.size() == 1);
        const Measurement& m = reading.measurements.front();
        REQUIRE(m.measured());
        CHECK_THAT(m.standardLengthMm.value, WithinRel(truth["standard_length_mm"].get<double>(), 0.010));
        CHECK_THAT(m.trunkDepthMm.value, WithinRel(truth["trunk_depth_mm"].get<double>(), 0.04));
        // Three intervals out would be one photo in 370: three photos may not show it.
        const double off = std::abs(m.standardLengthMm.value - truth["standard_length_mm"].get<double>());
        CHECK(off < 3.0 * m.standardLengthMm.sd());
        // A pitch of 4° shortens by 0.94 % at its 95 % quantile; place and edge add the rest.
        CHECK(m.standardLengthMm.u95() < 0.011 * m.standardLengthMm.value);
        CHECK(has(m.remarks, Remark::SmallInFrame));
        CHECK(m.protocol == "dawson-1985");
    }
}

TEST_CASE("Width from above, without the eyes and the pectoral fins") {
    const nlohmann::json truth = truthOf("2031-05-05", "P3-c");
    const Reading reading = measured(photoOf("2031-05-05/above/P3-c"), Shape::Pipefish, View::Above);
    REQUIRE(reading.measurements.size() == 1);
    const Measurement& m = reading.measurements.front();
    CHECK(m.measured());
    CHECK_THAT(m.trunkWidthMm.value, WithinRel(truth["trunk_width_mm"].get<double>(), 0.03));
    CHECK_FALSE(m.trunkDepthMm.known());
    CHECK_FALSE(m.girthMm.known());
}

TEST_CASE("A seahorse with an open tail has its three pieces") {
    const nlohmann::json truth = truthOf("2031-01-06", "H1-a");
    const Reading reading = measured(photoOf("2031-01-06/H1-a"), Shape::Unknown);
    REQUIRE(reading.measurements.size() == 1);
    const Measurement& m = reading.measurements.front();
    CHECK(m.shape == Shape::Seahorse);
    CHECK(m.protocol == "lourie-1999");
    CHECK_THAT(m.standardLengthMm.value, WithinRel(truth["standard_length_mm"].get<double>(), 0.015));
    CHECK_THAT(m.heightMm.value, WithinRel(truth["height_mm"].get<double>(), 0.02));
    CHECK_THAT(m.trunkDepthMm.value, WithinRel(truth["trunk_depth_mm"].get<double>(), 0.02));
    CHECK_THAT(m.headLengthMm.value + m.trunkLengthMm.value + m.tailLengthMm.value,
               WithinRel(m.standardLengthMm.value, 1e-9));
}

TEST_CASE("A closed tail gives no length, but the trunk's depth") {
    const nlohmann::json truth = truthOf("2031-01-06", "H2-a");
    REQUIRE(truth["tail_state"] == "closed");
    const Reading reading = measured(photoOf("2031-01-06/H2-a"), Shape::Seahorse);
    REQUIRE(reading.measurements.size() == 1);
    const Measurement& m = reading.measurements.front();
    CHECK_FALSE(m.measured());
    REQUIRE(m.refusal.has_value());
    CHECK(m.refusal->reason == "tail-closed");
    CHECK(has(m.remarks, Remark::TailClosed));
    CHECK_FALSE(m.tailLengthMm.known());
    CHECK_FALSE(m.girthRatio.known());
    CHECK_THAT(m.trunkDepthMm.value, WithinRel(truth["trunk_depth_mm"].get<double>(), 0.02));
}

TEST_CASE("Turning the photo upside down changes nothing") {
    Photo photo = photoOf("2031-05-05/P1-a");
    const double upright = measured(photo, Shape::Pipefish).measurements.at(0).standardLengthMm.value;
    cv::rotate(photo.grey, photo.grey, cv::ROTATE_180);
    const Reading turned = measured(photo, Shape::Pipefish);
    REQUIRE(turned.measurements.size() == 1);
    // The lens's centre is not the photo's: it moves by four pixels of 1920, and distortion with it.
    CHECK_THAT(turned.measurements.front().standardLengthMm.value, WithinRel(upright, 0.0015));
}

TEST_CASE("An empty plate is refused") {
    Photo photo = photoOf("2031-05-05/P1-a");
    wipe(photo.grey, 150, 1780);
    photo.encoded.clear();  // the file still shows the animal in colour
    const Reading reading = measured(photo, Shape::Pipefish);
    CHECK(reading.refusal == "no-animal");
}

TEST_CASE("A coil whose gap lies in its own shade is a closed tail as well") {
    Photo photo = photoOf("2031-01-06/H2-a");
    const Reading clear = measured(photo, Shape::Seahorse);
    REQUIRE(clear.outlines.at(0).holesPx.size() == 1);
    const double depthMm = clear.measurements.at(0).trunkDepthMm.value;
    // Body about 75, plate about 200 (sRGB): 0.6 of the way between their light is 165. No shade makes it darker than
    // half-way, or there were no gap to see.
    std::vector<cv::Point> gap;
    for (const PixelPoint at : clear.outlines.at(0).holesPx.front()) gap.emplace_back(cvRound(at.x), cvRound(at.y));
    cv::Mat1b inside(photo.grey.size(), static_cast<unsigned char>(0));
    cv::fillPoly(inside, std::vector<std::vector<cv::Point>>{gap}, cv::Scalar(255));
    cv::dilate(inside, inside, cv::Mat1b::ones(9, 9));
    cv::Mat dimmed;
    cv::min(photo.grey, 165, dimmed);
    dimmed.copyTo(photo.grey, inside);
    photo.encoded.clear();
    const Reading shaded = measured(photo, Shape::Seahorse);
    CHECK(shaded.outlines.at(0).holesPx.size() == 1);
    CHECK(shaded.measurements.at(0).refusal->reason == "tail-closed");
    CHECK_THAT(shaded.measurements.at(0).trunkDepthMm.value, WithinRel(depthMm, 0.01));
}

TEST_CASE("A dorsal fin about as dark as half-way is no part of the trunk") {
    Photo photo = photoOf("2031-01-06/H2-a");
    const Reading clear = measured(photo, Shape::Seahorse);
    // Body about 75, plate about 200 (sRGB): 149 is 0.45 of the way between their light. Over the photo's own, paler
    // fin.
    cv::Mat fin = photo.grey.clone();
    cv::ellipse(fin, cv::Point(905, 555), cv::Size(62, 50), 0.0, 180.0, 360.0, cv::Scalar(138), cv::FILLED);
    cv::GaussianBlur(fin, fin, {}, 1.0);
    cv::min(photo.grey, fin, photo.grey);
    photo.encoded.clear();
    const Reading dark = measured(photo, Shape::Seahorse);
    REQUIRE(dark.measurements.size() == 1);
    CHECK_FALSE(has(dark.measurements.at(0).remarks, Remark::OutlineDoubtful));
    // The fin's base, which it hides, is some 0.1 px beside the back.
    CHECK_THAT(dark.measurements.at(0).trunkDepthMm.value,
               WithinRel(clear.measurements.at(0).trunkDepthMm.value, 0.003));
    CHECK_THAT(dark.outlines.at(0).areaPx2, WithinRel(clear.outlines.at(0).areaPx2, 0.01));
}

TEST_CASE("An animal cut by the plate's edge is not measured") {
    Photo photo = photoOf("2031-05-05/P1-a");
    // A bar as dark as the animal from its middle past the plate's left edge.
    cv::rectangle(photo.grey, cv::Point(0, 690), cv::Point(700, 730), cv::Scalar(70), cv::FILLED);
    const Reading reading = measured(photo, Shape::Pipefish);
    REQUIRE(!reading.outlines.empty());
    for (const Measurement& m : reading.measurements) {
        CHECK_FALSE(m.measured());
        CHECK(m.refusal->reason == "cut-off");
    }
    CHECK(has(reading.outlines.front().remarks, Remark::CutOff));
}

TEST_CASE("Two animals that cross are refused") {
    Photo photo = photoOf("2031-05-05/P1-a");
    const cv::Rect middle(700, 480, 480, 480);
    cv::Mat part = photo.grey(middle);
    cv::Mat turned;
    cv::transpose(part.clone(), turned);
    cv::min(part, turned, part);
    const Reading reading = measured(photo, Shape::Pipefish);
    REQUIRE(reading.anatomies.size() == 1);
    REQUIRE_FALSE(reading.anatomies.front().ok());
    CHECK(reading.anatomies.front().refusal().reason == "not-one-body");
    CHECK(reading.measurements.empty());
}

TEST_CASE("Several animals in one photo are measured one by one, left to right") {
    Photo photo = photoOf("2031-01-06/P1-a");
    const double alone = measured(photo, Shape::Pipefish).measurements.at(0).standardLengthMm.value;
    const cv::Rect animal(560, 600, 800, 260);
    const cv::Mat copy = photo.grey(animal).clone();
    for (const cv::Point at : {cv::Point(360, 400), cv::Point(700, 790)}) {
        cv::Mat there = photo.grey(cv::Rect(at, animal.size()));
        cv::min(there, copy, there);
    }
    const Reading reading = measured(photo, Shape::Pipefish);
    REQUIRE(reading.measurements.size() == 3);
    double lastX = 0.0;
    for (std::size_t i = 0; i < 3; ++i) {
        // The same picture elsewhere: the lens's scale differs by up to two per mille over that way.
        CHECK_THAT(reading.measurements[i].standardLengthMm.value, WithinRel(alone, 0.004));
        double left = 1e9;
        for (const PixelPoint p : reading.outlines[i].boundaryPx) left = std::min(left, p.x);
        CHECK(left > lastX);
        lastX = left;
    }
}

TEST_CASE("under a doubtful outline every interval is wide enough for a fin or a fold, and no value moves") {
    const Reading reading = measured(photoOf("2031-01-06/P1-a"), Shape::Pipefish);
    Outline doubtful = reading.outlines.at(0);
    doubtful.remarks.push_back(Remark::OutlineDoubtful);
    const Measurement& sure = reading.measurements.at(0);
    const Measurement m = measureAnimal(doubtful, reading.anatomies.at(0).value(), *reading.scale);
    CHECK(m.standardLengthMm.value == sure.standardLengthMm.value);
    CHECK(m.trunkDepthMm.value == sure.trunkDepthMm.value);
    // A fin taken for body made depth up to 26 % too great.
    CHECK(m.trunkDepthMm.u95() > 0.2 * m.trunkDepthMm.value);
    CHECK(m.standardLengthMm.u95() > 0.15 * m.standardLengthMm.value);
    CHECK(sure.trunkDepthMm.u95() < 0.05 * sure.trunkDepthMm.value);
}

TEST_CASE("while the head's end is guessed all between the tips is in doubt, and a straight fish's length is not") {
    const Reading reading = measured(photoOf("2031-01-06/P1-a"), Shape::Pipefish);
    const Measurement& sure = reading.measurements.at(0);
    Anatomy guessed = reading.anatomies.at(0).value();
    guessed.remarks.push_back(Remark::HeadEndGuessed);
    const Measurement m = measureAnimal(reading.outlines.at(0), guessed, *reading.scale);
    CHECK(m.standardLengthMm.u95() == sure.standardLengthMm.u95());
    CHECK(m.trunkDepthMm.value == sure.trunkDepthMm.value);
    // As wide as under a doubtful outline: 1.96 times 12 % and 10 %.
    CHECK(m.trunkDepthMm.u95() > 0.2 * m.trunkDepthMm.value);
    CHECK(m.headLengthMm.u95() > 0.15 * m.headLengthMm.value);
    CHECK(m.girthRatio.u95() > 0.2 * m.girthRatio.value);
    const Reading horse = measured(photoOf("2031-01-06/H1-a"), Shape::Seahorse);
    Anatomy other = horse.anatomies.at(0).value();
    other.remarks.push_back(Remark::HeadEndGuessed);
    const Measurement h = measureAnimal(horse.outlines.at(0), other, *horse.scale);
    CHECK(h.standardLengthMm.u95() > 0.15 * h.standardLengthMm.value);
}

TEST_CASE("A seahorse's outline as rough as colour gives it shows head, trunk and tail all the same") {
    const Photo photo = photoOf("2031-01-06/H1-a");
    const Reading whole = measured(photo, Shape::Seahorse);
    std::mt19937 random(1);
    for (int trial = 0; trial < 40; ++trial) {
        Outline rough = whole.outlines.at(0);
        for (PixelPoint& at : rough.boundaryPx) {
            const auto off = [&random] { return 3.0 * (static_cast<double>(random()) / 4294967295.0 - 0.5); };
            at = at + PixelPoint{off(), off()};
        }
        const auto midline = findMidline(photo, rough);
        REQUIRE(midline.ok());
        const auto anatomy = findLandmarks(photo, rough, midline.value(), {Shape::Seahorse, View::Side});
        REQUIRE(anatomy.ok());
        // A corner point is up to 2.1 px off, and one beside it, 1.2 to 2.4 px along, may be taken for the corner.
        const PixelPoint smooth = whole.anatomies.at(0).value().landmarks.headEnd->atPx;
        CHECK(distance(anatomy.value().landmarks.headEnd->atPx, smooth) < 5.0);
    }
}

TEST_CASE("Head-on a seahorse gives its trunk's width and no length, for nothing along it is seen") {
    const nlohmann::json truth = truthOf("2031-01-06", "H1-b");
    const Reading reading = measured(photoOf("2031-01-06/front/H1-b"), Shape::Seahorse, View::Front);
    REQUIRE(reading.measurements.size() == 1);
    const Measurement& m = reading.measurements.front();
    CHECK(m.measured());
    CHECK_THAT(m.trunkWidthMm.value, WithinRel(truth["trunk_width_mm"].get<double>(), 0.03));  // as from above
    for (Estimate Measurement::*length : {&Measurement::standardLengthMm, &Measurement::headLengthMm,
                                          &Measurement::trunkLengthMm, &Measurement::tailLengthMm})
        CHECK_FALSE((m.*length).known());
}

TEST_CASE("A landmark moved by hand moves what hangs on it and nothing else") {
    const Photo photo = photoOf("2031-05-05/P1-a");
    const Reading reading = measured(photo, Shape::Pipefish);
    const Anatomy& anatomy = reading.anatomies.at(0).value();
    const Measurement before = reading.measurements.at(0);
    const PixelPoint headEnd = anatomy.landmarks.headEnd->atPx;
    const PixelPoint snout = anatomy.landmarks.snoutTip->atPx;
    const PixelPoint nearer = headEnd + (snout - headEnd) * 0.1;
    const Anatomy moved = withLandmark(anatomy, LandmarkName::HeadEnd, nearer + PixelPoint{0.0, 4.0});
    const Measurement after = measureAnimal(reading.outlines.at(0), moved, *reading.scale);
    CHECK_THAT(after.headLengthMm.value, WithinRel(0.9 * before.headLengthMm.value, 0.005));
    CHECK_THAT(after.standardLengthMm.value, WithinRel(before.standardLengthMm.value, 1e-12));
    CHECK_THAT(after.tailLengthMm.value, WithinRel(before.tailLengthMm.value, 1e-12));
    CHECK(moved.landmarks.headEnd->movedByHand);
    CHECK(has(after.remarks, Remark::MovedByHand));
    // Pure: the anatomy given is as it was.
    CHECK(anatomy.landmarks.headEnd->atPx == headEnd);

    // A tip beyond the body lengthens the line.
    const PixelPoint beyond = snout + (snout - headEnd) * (5.0 / distance(snout, headEnd));
    const Anatomy longer = withLandmark(anatomy, LandmarkName::SnoutTip, beyond);
    const Measurement longerBy = measureAnimal(reading.outlines.at(0), longer, *reading.scale);
    const double mm = 5.0 * reading.scale->mmPerPx(snout);
    CHECK_THAT(longerBy.standardLengthMm.value - before.standardLengthMm.value, WithinAbs(mm, 0.05));
}
