// SPDX-License-Identifier: GPL-3.0-or-later
// A seahorse after the build of Hippocampus reidi: bent neck, long snout, deep trunk, tail
// that hangs open, half curled or closed on itself. Side view and front view.
#include "body.h"
#include "optics.h"

#include <algorithm>
#include <cmath>

namespace render {

namespace {

constexpr double kNeck = 0.24;  // of the head length: trunk drawn on under the head

struct Lengths {
    double head, trunk, tail;
};

double smoothStep(double low, double high, double place) {
    const double t = std::clamp((place - low) / (high - low), 0.0, 1.0);
    return t * t * (3.0 - 2.0 * t);
}

// Turn of the tail per mm; x runs 0 … 1 along it.
double tailCurvature(double x, double tailMm, Tail state, const Posture& posture) {
    const double bend = posture.tailBendDeg * kPi / 180.0 / tailMm;
    if (state == Tail::Open) {
        return bend * 2.0 * x + posture.tailWaveDeg * kPi / 180.0 / tailMm * kPi * std::sin(2 * kPi * x);
    }
    const double curlFrom = state == Tail::HalfCurled ? 0.36 : 0.40;
    const double outer = (state == Tail::HalfCurled ? 0.150 : 0.085) * tailMm;
    const double inner = (state == Tail::HalfCurled ? 0.065 : 0.026) * tailMm;
    const double into = std::clamp((x - curlFrom) / (1.0 - curlFrom), 0.0, 1.0);
    const double curl = 1.0 / (outer + (inner - outer) * into);
    const double blend = smoothStep(curlFrom - 0.12, curlFrom + 0.12, x);
    return (1.0 - blend) * bend + blend * curl;
}

std::vector<Station> spineOf(const Lengths& mm, const Posture& posture, View view) {
    const double tailShown = view == View::Side ? mm.tail : 0.62 * mm.tail;
    const double trunkTurn = view == View::Side ? (posture.trunkBendDeg - 14.0) * kPi / 180.0 / mm.trunk : 0.0;
    const auto curvature = [&](double along) {
        if (along < mm.trunk) {
            return trunkTurn * smoothStep(0.0, 0.3 * mm.trunk, along);
        }
        if (view != View::Side) {
            return 0.0;
        }
        const double x = (along - mm.trunk) / mm.tail;
        return tailCurvature(x, mm.tail, posture.tail, posture);
    };
    const double neck = kNeck * mm.head;
    return sweep({0.0, -neck}, 0.5 * kPi, -neck, mm.trunk + tailShown, 3600, curvature);
}

// Half widths as shares of the trunk's depth or width: 0 … 1 along the trunk, 1 … 2 the tail.
struct HalfWidths {
    Profile back{{{-0.2, 0.30},
                  {0.0, 0.36},
                  {0.3, 0.42},
                  {0.6, 0.42},
                  {0.85, 0.36},
                  {1.0, 0.30},
                  {1.12, 0.235},
                  {1.3, 0.18},
                  {1.6, 0.105},
                  {1.85, 0.05},
                  {2.0, 0.025}}};
    Profile belly{{{-0.2, 0.24},
                   {0.0, 0.36},
                   {0.25, 0.47},
                   {0.55, 0.50},
                   {0.85, 0.42},
                   {1.0, 0.30},
                   {1.12, 0.235},
                   {1.3, 0.18},
                   {1.6, 0.105},
                   {1.85, 0.05},
                   {2.0, 0.025}}};
    Profile front{{{-0.2, 0.30},
                   {0.0, 0.40},
                   {0.3, 0.48},
                   {0.6, 0.50},
                   {0.85, 0.42},
                   {1.0, 0.33},
                   {1.12, 0.25},
                   {1.3, 0.17},
                   {1.62, 0.07},
                   {2.0, 0.04}}};
};

// Makes the trunk's greatest depth the wanted one; the change fades out along the tail.
void scaleTrunk(Part& part, const Lengths& mm, double wantedMm) {
    const double scale = wantedMm / greatestDepth(part, 0.0, mm.trunk);
    for (Station& station : part.stations) {
        const double weight = smoothStep(1.6 * mm.trunk, 1.05 * mm.trunk, station.alongMm);
        station.backMm *= 1.0 + (scale - 1.0) * weight;
        station.bellyMm *= 1.0 + (scale - 1.0) * weight;
    }
}

void giveWidths(Part& part, const Lengths& mm, const Animal& animal, View view) {
    static const HalfWidths shares;
    const bool side = view == View::Side;
    const double unit =
        side ? std::pow(animal.trunkDepthMm, 0.9) * std::pow(animal.lengthMm * 0.105, 0.1) : animal.trunkWidthMm;
    const double ring = mm.trunk / 11.0;
    for (Station& station : part.stations) {
        const double place =
            station.alongMm < mm.trunk ? station.alongMm / mm.trunk : 1.0 + (station.alongMm - mm.trunk) / mm.tail;
        const double inTrunk = std::sin(kPi * std::clamp(place, 0.0, 1.0));
        const double ripple =
            1.0 + 0.012 * std::cos(2.0 * kPi * station.alongMm / ring) * smoothStep(-0.05, 0.1, place);
        station.backMm = unit * ripple * (side ? shares.back : shares.front)(place);
        station.bellyMm = unit * ripple * (side ? shares.belly : shares.front)(place);
        if (side) {
            station.bellyMm -= animal.bellyHollow * animal.trunkDepthMm * std::pow(inTrunk, 1.3);
        }
    }
    scaleTrunk(part, mm, side ? animal.trunkDepthMm : animal.trunkWidthMm);
    const Station& rear = part.stations.back();
    roundEnds(part, kNeck * mm.head, 0.5 * (rear.backMm + rear.bellyMm));
}

struct Head {
    Part part;
    cv::Point2d tip, toNape;
    double length;
};

Head headOf(const Lengths& mm, const Animal& animal) {
    static const Profile back{{{0.0, 0.075},
                               {0.05, 0.062},
                               {0.18, 0.048},
                               {0.36, 0.056},
                               {0.45, 0.095},
                               {0.56, 0.165},
                               {0.68, 0.195},
                               {0.84, 0.225},
                               {0.94, 0.22},
                               {1.0, 0.19}}};
    static const Profile belly{{{0.0, 0.075},
                                {0.05, 0.066},
                                {0.18, 0.055},
                                {0.36, 0.062},
                                {0.47, 0.110},
                                {0.58, 0.165},
                                {0.72, 0.215},
                                {0.86, 0.235},
                                {1.0, 0.20}}};
    const double angle = animal.headAngleDeg * kPi / 180.0;
    const cv::Point2d snoutward(-std::sin(angle), std::cos(angle));
    const cv::Point2d nape(0.10 * mm.head, -0.20 * mm.head);
    // Length of the head's axis for which the snout tip lies one head length from the ring.
    const double along = nape.dot(snoutward);
    const double length = -along + std::sqrt(along * along - nape.dot(nape) + mm.head * mm.head);
    Head head;
    head.length = length;
    head.tip = nape + snoutward * length;
    head.toNape = -snoutward;
    const double axis = std::atan2(head.toNape.y, head.toNape.x);
    head.part.region = Region::Head;
    head.part.stations = sweep(head.tip, axis, 0.0, length, 900, [](double) { return 0.0; });
    for (Station& station : head.part.stations) {
        station.backMm = mm.head * back(station.alongMm / length);
        station.bellyMm = mm.head * belly(station.alongMm / length);
    }
    roundEnds(head.part, 0.05 * mm.head, 0.20 * mm.head);
    return head;
}

// A small crown on a stalk behind the eyes; its tip is a landmark.
Part coronetOf(const Lengths& mm, const Head& head, cv::Point2d& tip) {
    const Station& root = stationAt(head.part, 0.84 * head.length);
    const double lean = 0.25;
    const cv::Point2d up = root.towardBack * std::cos(lean) + head.toNape * std::sin(lean);
    const double length = 0.36 * mm.head;
    Part part;
    part.region = Region::Coronet;
    part.stations = sweep(root.spineMm, std::atan2(up.y, up.x), 0.0, length, 200, [](double) { return 0.0; });
    static const Profile width{{{0.0, 0.13}, {0.55, 0.10}, {0.72, 0.062}, {0.86, 0.070}, {0.93, 0.060}, {1.0, 0.012}}};
    for (Station& station : part.stations) {
        const double x = station.alongMm / length;
        station.backMm = mm.head * width(x);
        station.bellyMm = mm.head * width(x);
    }
    tip = part.stations.back().spineMm;
    return part;
}

// The male's pouch below the tail's root.
Part pouchOf(const Part& trunk, const Lengths& mm, const Animal& animal) {
    const double from = mm.trunk * 0.95;
    const double to = mm.trunk + 0.30 * mm.tail;
    Part pouch;
    pouch.region = Region::Pouch;
    for (const Station& station : trunk.stations) {
        if (station.alongMm >= from && station.alongMm <= to) {
            const double x = (station.alongMm - from) / (to - from);
            Station below = station;
            below.backMm = 0.0;
            below.bellyMm = station.bellyMm * 0.9 +
                            animal.pouch * animal.trunkDepthMm * std::pow(std::sin(kPi * std::pow(x, 0.8)), 0.7);
            pouch.stations.push_back(below);
        }
    }
    return pouch;
}

Fin dorsalFin(const Part& trunk, const Lengths& mm) {
    const double from = 0.78 * mm.trunk;
    const double length = 0.30 * mm.trunk;
    Fin fin;
    fin.opacity = 0.26;
    std::vector<cv::Point2d> roots;
    for (int i = 0; i <= 36; ++i) {
        const double t = i / 36.0;
        const Station& station = stationAt(trunk, from + t * length);
        const cv::Point2d rearward(-station.towardBack.y, station.towardBack.x);
        const double rise = 0.20 * mm.trunk * std::pow(std::sin(kPi * (0.08 + 0.88 * t)), 0.6);
        const cv::Point2d root = station.spineMm + station.towardBack * (station.backMm * 0.96);
        const cv::Point2d tip = root + station.towardBack * rise + rearward * (0.35 * rise * (2.0 * t - 0.6));
        fin.outlineMm.push_back(tip);
        roots.push_back(root);
        if (i % 2 == 1) {
            fin.raysMm.push_back({root, tip});
        }
    }
    fin.outlineMm.insert(fin.outlineMm.end(), roots.rbegin(), roots.rend());
    return fin;
}

void fillLengths(Body& body, const Lengths& mm) {
    body.trunkStartMm = 0.0;
    body.tailStartMm = mm.trunk;
    body.tailTipMm = mm.trunk + mm.tail;
    body.headLengthMm = mm.head;
    body.trunkLengthMm = mm.trunk;
    body.tailLengthMm = mm.tail;
    const Part& trunk = body.parts[body.mainPart];
    body.straightBelly = bellyLine(trunk, 0.0, mm.trunk);
    body.headStartMm = trunk.stations.front().alongMm;
    body.landmarks.headEnd = stationAt(trunk, 0.0).spineMm;
    body.landmarks.trunkEnd = stationAt(trunk, mm.trunk).spineMm;
    body.landmarks.tailEnd = trunk.stations.back().spineMm;
}

Body sideBody(const Animal& animal, const Posture& posture, const Lengths& mm) {
    Part trunk;
    trunk.stations = spineOf(mm, posture, View::Side);
    giveWidths(trunk, mm, animal, View::Side);
    const Head head = headOf(mm, animal);
    Body body;
    body.fins.push_back(dorsalFin(trunk, mm));
    cv::Point2d crown;
    body.parts.push_back(coronetOf(mm, head, crown));
    if (animal.pouch > 0.0) {
        body.parts.push_back(pouchOf(trunk, mm, animal));
    }
    body.mainPart = body.parts.size();
    body.parts.push_back(trunk);
    body.parts.push_back(head.part);
    const Station& eye = stationAt(head.part, 0.60 * head.length);
    body.eyes.push_back({eye.spineMm + eye.towardBack * (0.28 * eye.backMm), 0.072 * mm.head, false});
    fillLengths(body, mm);
    body.landmarks.snoutTip = head.part.stations.front().spineMm;
    body.landmarks.coronet = crown;
    // Straight up from the ring to the coronet's tip, then trunk and tail uncurled.
    body.heightMm = -crown.y + mm.trunk + mm.tail;
    return body;
}

Body frontBody(const Animal& animal, const Posture& posture, const Lengths& mm) {
    Part trunk;
    trunk.stations = spineOf(mm, posture, View::Front);
    giveWidths(trunk, mm, animal, View::Front);
    static const Profile width{
        {{0.0, 0.05}, {0.16, 0.065}, {0.26, 0.10}, {0.45, 0.155}, {0.65, 0.150}, {0.9, 0.155}, {1.0, 0.14}}};
    Part head;
    head.region = Region::Head;
    const double height = 0.78 * mm.head;
    head.stations = sweep({0.0, -0.62 * mm.head}, 0.5 * kPi, 0.0, height, 400, [](double) { return 0.0; });
    for (Station& station : head.stations) {
        station.backMm = station.bellyMm = mm.head * width(station.alongMm / height);
    }
    roundEnds(head, 0.05 * mm.head, 0.16 * mm.head);
    Body body;
    body.parts.push_back(trunk);
    body.parts.push_back(head);
    for (const double side : {1.0, -1.0}) {
        body.eyes.push_back({{side * 0.150 * mm.head, -0.24 * mm.head}, 0.052 * mm.head, false});
    }
    // The snout points at the camera: a round end with its mouth.
    body.eyes.push_back({{0.0, -0.14 * mm.head}, 0.045 * mm.head, true});
    fillLengths(body, mm);
    body.landmarks.tailEnd = std::nullopt;
    return body;
}

}  // namespace

Body seahorseBody(const Animal& animal, const Posture& posture, View view) {
    const Lengths mm{animal.lengthMm * animal.headFraction, animal.lengthMm * animal.trunkFraction,
                     animal.lengthMm * (1.0 - animal.headFraction - animal.trunkFraction)};
    return view == View::Front ? frontBody(animal, posture, mm) : sideBody(animal, posture, mm);
}

}  // namespace render
