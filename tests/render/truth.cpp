// SPDX-License-Identifier: GPL-3.0-or-later
#include "truth.h"

#include "coverage.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

namespace render {

namespace {

double lengthBetween(const Part& part, double fromMm, double toMm) {
    double length = 0.0;
    for (std::size_t i = 1; i < part.stations.size(); ++i) {
        const Station& a = part.stations[i - 1];
        const Station& b = part.stations[i];
        const double middle = 0.5 * (a.alongMm + b.alongMm);
        if (middle >= fromMm && middle <= toMm) {
            length += cv::norm(b.spineMm - a.spineMm);
        }
    }
    return length;
}

// Signed deepest deviation of a line of points from the chord of its ends, toward `inward`.
double deepestDeviation(const std::vector<cv::Point2d>& line, cv::Point2d inward) {
    const cv::Point2d chord = line.back() - line.front();
    cv::Point2d normal(-chord.y, chord.x);
    normal *= (normal.dot(inward) >= 0.0 ? 1.0 : -1.0) / cv::norm(chord);
    double deepest = 0.0;
    for (const cv::Point2d& point : line) {
        const double deviation = (point - line.front()).dot(normal);
        if (std::abs(deviation) > std::abs(deepest)) {
            deepest = deviation;
        }
    }
    return deepest;
}

void addBellyHollow(Truth& truth, const Body& body) {
    std::vector<cv::Point2d> belly;
    const Part& part = body.parts[body.mainPart];
    for (const Station& station : part.stations) {
        if (station.alongMm >= body.trunkStartMm && station.alongMm <= body.tailStartMm) {
            belly.push_back(station.spineMm - station.towardBack * station.bellyMm);
        }
    }
    const cv::Point2d inward = stationAt(part, 0.5 * (body.trunkStartMm + body.tailStartMm)).towardBack;
    const double scale = 100.0 / truth.trunkDepthMm;
    truth.bellyHollowPercent = scale * deepestDeviation(belly, inward);
    truth.bellyHollowStraightenedPercent = scale * deepestDeviation(body.straightBelly, {0.0, -1.0});
}

std::vector<cv::Point2d> evenly(const std::vector<cv::Point2d>& closed, int count) {
    double total = 0.0;
    for (std::size_t i = 0; i < closed.size(); ++i) {
        total += cv::norm(closed[(i + 1) % closed.size()] - closed[i]);
    }
    std::vector<cv::Point2d> picked;
    double walked = 0.0;
    for (std::size_t i = 0; i < closed.size() && picked.size() < static_cast<std::size_t>(count); ++i) {
        if (walked >= total * static_cast<double>(picked.size()) / count) {
            picked.push_back(closed[i]);
        }
        walked += cv::norm(closed[(i + 1) % closed.size()] - closed[i]);
    }
    return picked;
}

// Outer border of all parts together: traced on a fine raster, then every point is put onto
// the nearest point of the exact outlines.
std::vector<cv::Point2d> unionOutline(const Body& body) {
    std::vector<cv::Point2d> exact;
    for (const Part& part : body.parts) {
        const std::vector<cv::Point2d> outline = outlineOf(part);
        exact.insert(exact.end(), outline.begin(), outline.end());
    }
    const double length = body.headLengthMm + body.trunkLengthMm + body.tailLengthMm;
    const double perMm = 1600.0 / length;
    Coverage all;
    for (const Part& part : body.parts) {
        std::vector<cv::Point2d> outline = outlineOf(part);
        for (cv::Point2d& point : outline) {
            point *= perMm;
        }
        all = united(all, coverageOf(outline));
    }
    std::vector<std::vector<cv::Point>> contours;
    cv::findContours(all.share > 0.5F, contours, cv::RETR_EXTERNAL, cv::CHAIN_APPROX_NONE);
    const auto longest = std::max_element(contours.begin(), contours.end(),
                                          [](const auto& a, const auto& b) { return a.size() < b.size(); });
    std::vector<cv::Point2d> border;
    for (std::size_t i = 0; i < longest->size(); i += 3) {
        const cv::Point2d rough = cv::Point2d((*longest)[i] + all.bounds.tl()) / perMm;
        border.push_back(*std::min_element(exact.begin(), exact.end(), [&rough](const auto& a, const auto& b) {
            return (a - rough).dot(a - rough) < (b - rough).dot(b - rough);
        }));
    }
    return border;
}

}  // namespace

double ellipsePerimeter(double diameterA, double diameterB) {
    double a = 0.5 * std::max(diameterA, diameterB);
    double b = 0.5 * std::min(diameterA, diameterB);
    const double first = a;
    double sum = 0.5 * (a * a - b * b);
    double power = 0.5;
    for (int round = 0; round < 40 && a - b > 1e-15 * first; ++round) {
        const double half = 0.5 * (a - b);
        const double mean = 0.5 * (a + b);
        b = std::sqrt(a * b);
        a = mean;
        power *= 2.0;
        sum += power * half * half;
    }
    return 2.0 * kPi * (first * first - sum) / a;
}

Truth truthOf(const Scene& scene, const Body& body, int outlinePoints) {
    Truth truth;
    const Animal& animal = scene.animal;
    if (animal.shape == Shape::Pipefish) {
        const Part& part = body.parts[body.mainPart];
        truth.headLengthMm = lengthBetween(part, 0.0, body.trunkStartMm);
        truth.trunkLengthMm = lengthBetween(part, body.trunkStartMm, body.tailStartMm);
        truth.tailLengthMm = lengthBetween(part, body.tailStartMm, body.tailTipMm);
    } else {
        truth.headLengthMm = body.headLengthMm;
        truth.trunkLengthMm = body.trunkLengthMm;
        truth.tailLengthMm = body.tailLengthMm;
        truth.heightMm = bodyOf(animal, scene.posture, View::Side).heightMm;
    }
    truth.standardLengthMm = truth.headLengthMm + truth.trunkLengthMm + truth.tailLengthMm;
    truth.trunkDepthMm = animal.trunkDepthMm;
    truth.trunkWidthMm = animal.trunkWidthMm;
    truth.girthMm = ellipsePerimeter(animal.trunkDepthMm, animal.trunkWidthMm);
    truth.bodyLandmarks = body.landmarks;
    if (scene.view == View::Side) {
        addBellyHollow(truth, body);
    }
    truth.outlineBodyMm =
        evenly(body.parts.size() == 1 ? outlineOf(body.parts.front()) : unionOutline(body), outlinePoints);
    const Part& main = body.parts[body.mainPart];
    const std::size_t stride = std::max<std::size_t>(1, main.stations.size() / 80);
    for (std::size_t i = 0; i < main.stations.size(); i += stride) {
        if (main.stations[i].alongMm >= 0.0) {
            truth.midlineBodyMm.push_back(main.stations[i].spineMm);
        }
    }
    return truth;
}

}  // namespace render
