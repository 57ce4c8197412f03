// SPDX-License-Identifier: GPL-3.0-or-later
// What is particular about pale animals before a dark plate: eyes are gaps, fins and shaded bellies equally dim.
#include <catch2/catch.hpp>

#include <opencv2/imgproc.hpp>

#include "outline/eye_gap.h"
#include "outline/furrow.h"
#include "outline/shaded_fin.h"

using namespace ringrule;

namespace {

cv::Mat1b empty() {
    return cv::Mat1b(160, 400, static_cast<unsigned char>(0));
}

/// A body with its head to the left: half-width 24 px, tapering to a tail.
cv::Mat1b fish() {
    cv::Mat1b body = empty();
    cv::fillConvexPoly(
        body,
        std::vector<cv::Point>{{40, 60}, {100, 56}, {200, 60}, {370, 78}, {370, 82}, {200, 100}, {100, 104}, {40, 100}},
        cv::Scalar(255));
    return body;
}

/// A tail that is rolled up to a ring at the end of a thin line, with the plate seen through the ring.
cv::Mat1b coil() {
    cv::Mat1b body = empty();
    cv::ellipse(body, {90, 80}, {60, 24}, 0.0, 0.0, 360.0, cv::Scalar(255), cv::FILLED);
    cv::line(body, {140, 80}, {300, 80}, cv::Scalar(255), 8);
    cv::circle(body, {310, 80}, 18, cv::Scalar(255), 8);
    return body;
}

cv::Mat1b filled(const cv::Mat1b& mask, double halfWidthPx = 24.0) {
    cv::Mat1b body = mask.clone();
    return fillEyes(body, empty(), halfWidthPx, 2.0);
}

}  // namespace

TEST_CASE("an eye inside the head is filled, with its rim broken as well") {
    cv::Mat1b body = fish();
    cv::circle(body, {70, 78}, 9, cv::Scalar(0), cv::FILLED);
    const int eyePx = cv::countNonZero(fish()) - cv::countNonZero(body);
    // Closing rounds the rim of the gap by a few pixels in some hundred.
    CHECK(cv::countNonZero(filled(body)) == Approx(eyePx).margin(0.05 * eyePx));

    cv::line(body, {70, 78}, {70, 50}, cv::Scalar(0), 6);
    cv::Mat1b both;
    cv::bitwise_and(filled(body), fish(), both);
    CHECK(cv::countNonZero(both) > 0.9 * eyePx);
}

TEST_CASE("the gap of a rolled-up tail is no eye, nor is one beside another animal") {
    CHECK(cv::countNonZero(filled(coil())) == 0);
    cv::Mat1b body = fish();
    cv::circle(body, {70, 72}, 9, cv::Scalar(0), cv::FILLED);
    cv::Mat1b other = empty();
    cv::circle(other, {70, 50}, 4, cv::Scalar(255), cv::FILLED);
    CHECK(cv::countNonZero(fillEyes(body, other, 24.0, 2.0)) == 0);
}

TEST_CASE("the notches of eyes that the rim runs through are seen, the bay of a bent tail is not") {
    cv::Mat1b body = fish();
    cv::circle(body, {70, 60}, 11, cv::Scalar(0), cv::FILLED);    // three quarters of it within the head …
    cv::circle(body, {130, 103}, 10, cv::Scalar(0), cv::FILLED);  // … and half of this one
    const int eyesPx = cv::countNonZero(fish()) - cv::countNonZero(body);
    cv::Mat1b both;
    cv::bitwise_and(eyeNotches(body, empty(), 24.0), fish(), both);
    // The straight way over their mouths cuts off a slice where the rim is bent.
    CHECK(cv::countNonZero(both) == Approx(eyesPx).margin(0.08 * eyesPx));

    cv::Mat1b bent = fish();
    cv::ellipse(bent, {368, 60}, {20, 20}, 0.0, -100.0, 90.0, cv::Scalar(255), 5);
    CHECK(cv::countNonZero(eyeNotches(bent, empty(), 24.0)) == 0);
}

TEST_CASE("a dim furrow behind the head is filled; one as dark as the plate, and the gap in a coil, are not") {
    // 0.1 in the body, 0.7 on the plate, and so much in the gap under test.
    const auto filledAt = [](const cv::Mat1b& whole, const cv::Mat1b& gap, float gapLight) {
        cv::Mat1f light(whole.size(), 0.7F);
        light.setTo(0.1F, whole);
        light.setTo(gapLight, gap);
        cv::Mat1b body = whole.clone();
        body.setTo(0, gap);
        return furrowsIn({light, 0.1, 0.7}, body, 24.0);
    };
    cv::Mat1b furrow = empty();
    cv::line(furrow, {100, 110}, {106, 86}, cv::Scalar(255), 3);
    cv::bitwise_and(furrow, fish(), furrow);
    const cv::Mat1b seen = filledAt(fish(), furrow, 0.55F);
    CHECK(cv::countNonZero(seen) > 0.9 * cv::countNonZero(furrow));
    CHECK(cv::countNonZero(filledAt(fish(), furrow, 0.7F)) == 0);

    cv::Mat1b rolled = fish();
    cv::circle(rolled, {372, 74}, 10, cv::Scalar(255), cv::FILLED);
    cv::Mat1b gap = empty();
    cv::ellipse(gap, {372, 74}, {5, 5}, 0.0, -150.0, 120.0, cv::Scalar(255), 2);
    CHECK(cv::countNonZero(filledAt(rolled, gap, 0.55F)) == 0);
}

TEST_CASE("a snout that an eye parts from the head is bridged to it, an animal alongside is not") {
    cv::Mat1b body = fish();
    cv::rectangle(body, {100, 40}, {118, 120}, cv::Scalar(0), cv::FILLED);  // the eye, as wide as the head
    const cv::Mat1b bridges = snoutBridges(body, 24.0);
    cv::Mat1b joined;
    cv::bitwise_or(body, bridges, joined);
    cv::Mat1i labels;
    CHECK(cv::connectedComponents(joined, labels, 8, CV_32S) == 2);  // the ground and one body

    cv::Mat1b pair = fish();
    cv::rectangle(pair, {120, 130}, {230, 145}, cv::Scalar(255), cv::FILLED);
    CHECK(cv::countNonZero(snoutBridges(pair, 24.0)) == 0);
}

TEST_CASE("a fin of which the mask holds its rim only is taken off, a dark fold across the body is kept") {
    cv::Mat1f light(160, 400, 0.7F);
    cv::Mat1b trunk = fish();
    light.setTo(0.1F, trunk);
    cv::Mat1b fin = empty();
    cv::ellipse(fin, {210, 58}, {26, 34}, 0.0, 180.0, 360.0, cv::Scalar(255), cv::FILLED);
    fin.setTo(0, trunk);
    light.setTo(0.45F, fin);
    cv::Mat1b fold = empty();
    cv::rectangle(fold, {118, 84}, {126, 104}, cv::Scalar(255), cv::FILLED);
    cv::bitwise_and(fold, trunk, fold);
    light.setTo(0.45F, fold);
    cv::GaussianBlur(light, light, {}, 1.0);
    cv::Mat1b rim;
    cv::erode(fin, rim, cv::Mat1b::ones(9, 9));
    cv::subtract(fin, rim, rim);  // the outer 4 px
    cv::Mat1b loose;
    cv::bitwise_or(trunk, fin, loose);
    cv::Mat1b body;
    cv::bitwise_or(trunk, rim, body);
    dropFins({light, empty(), loose, 24.0}, body);

    cv::Mat1b left;
    cv::bitwise_and(body, fin, left);
    // The blurred edge beside the body, some two pixels, counts as body.
    CHECK(cv::countNonZero(left) < 0.15 * cv::countNonZero(fin));
    cv::bitwise_and(body, trunk, left);
    CHECK(cv::countNonZero(left) > 0.99 * cv::countNonZero(trunk));
}

TEST_CASE("a fin is taken off where light steps down to it, a belly as dim is kept") {
    // Light by equal steps for equal ratios: body 0.1, plate 0.7; the fin and the lower belly are both at 0.5.
    cv::Mat1f light(160, 400, 0.7F);
    cv::Mat1b body = empty();
    for (int y = 50; y < 110; ++y) {
        for (int x = 40; x < 360; ++x) {
            light(y, x) = y < 80 ? 0.1F : 0.1F + 0.4F * static_cast<float>(y - 80) / 30.0F;
            body(y, x) = 255;
        }
    }
    cv::Mat1b fin = empty();
    cv::rectangle(fin, {180, 25}, {230, 49}, cv::Scalar(255), cv::FILLED);
    light.setTo(0.5F, fin);
    const cv::Mat1b trunk = body.clone();
    body |= fin;
    cv::GaussianBlur(light, light, {}, 1.0);
    dropFins({light, empty(), body.clone(), 30.0}, body);

    cv::Mat1b left;
    cv::bitwise_and(body, fin, left);
    // The blurred edge beside the body, some two pixels, counts as body.
    CHECK(cv::countNonZero(left) < 0.12 * cv::countNonZero(fin));
    cv::bitwise_and(body, trunk, left);
    CHECK(cv::countNonZero(left) > 0.99 * cv::countNonZero(trunk));
}
