// SPDX-License-Identifier: GPL-3.0-or-later
// A straight-bodied pipefish after the build of Syngnathus typhle: deep long snout, trunk,
// tapering tail, tiny caudal fin. Widths are given as shares of the trunk's half depth.
#include "body.h"
#include "optics.h"

#include <algorithm>
#include <cmath>

namespace render {

namespace {

constexpr int kSteps = 3200;

struct Lengths {
    double head, trunk, tail, total;
};

double smoothStep(double low, double high, double place) {
    const double t = std::clamp((place - low) / (high - low), 0.0, 1.0);
    return t * t * (3.0 - 2.0 * t);
}

std::vector<Station> spineOf(const Lengths& mm, const Posture& posture) {
    const double trunkTurn = posture.trunkBendDeg * kPi / 180.0 / mm.trunk;
    const double tailTurn = posture.tailBendDeg * kPi / 180.0 / mm.tail;
    const double tailWave = posture.tailWaveDeg * kPi / 180.0 / mm.tail;
    const double tailStart = mm.head + mm.trunk;
    const auto curvature = [&](double along) {
        const double inTrunk = smoothStep(0.9 * mm.head, 1.1 * mm.head, along) *
                               (1.0 - smoothStep(tailStart - 0.1 * mm.trunk, tailStart, along));
        const double inTail = smoothStep(tailStart, tailStart + 0.15 * mm.tail, along);
        const double x = (along - tailStart) / mm.tail;
        return inTrunk * trunkTurn + inTail * (tailTurn * 1.15 + tailWave * kPi * std::sin(2.0 * kPi * x));
    };
    return sweep({0.0, 0.0}, 0.0, 0.0, mm.total, kSteps, curvature);
}

// Where along head, trunk or tail a place lies: 0 … 1 in the head, 1 … 2 trunk, 2 … 3 tail.
double stretched(const Lengths& mm, double along) {
    if (along < mm.head) {
        return along / mm.head;
    }
    if (along < mm.head + mm.trunk) {
        return 1.0 + (along - mm.head) / mm.trunk;
    }
    return 2.0 + (along - mm.head - mm.trunk) / mm.tail;
}

struct SideProfile {
    Profile back{{{0.0, 0.46},
                  {0.12, 0.43},
                  {0.35, 0.42},
                  {0.52, 0.46},
                  {0.62, 0.63},
                  {0.72, 0.74},
                  {0.86, 0.80},
                  {0.97, 0.80},
                  {1.04, 0.76},
                  {1.2, 0.80},
                  {1.5, 0.84},
                  {1.85, 0.80},
                  {2.0, 0.72},
                  {2.2, 0.60},
                  {2.5, 0.42},
                  {2.8, 0.25},
                  {2.95, 0.17},
                  {3.0, 0.16}}};
    Profile belly{{{0.0, 0.50},
                   {0.12, 0.48},
                   {0.35, 0.48},
                   {0.52, 0.52},
                   {0.62, 0.60},
                   {0.75, 0.72},
                   {0.88, 0.86},
                   {0.96, 0.84},
                   {1.0, 0.74},
                   {2.0, 0.84},
                   {2.035, 0.62},
                   {2.2, 0.55},
                   {2.5, 0.40},
                   {2.8, 0.25},
                   {2.95, 0.17},
                   {3.0, 0.16}}};
};

// Adds an arch to the back of the trunk until its greatest depth is the wanted one.
void archTrunk(Part& part, const Lengths& mm, double depth) {
    const auto archAt = [&mm](double along) {
        const double x = std::clamp((along - mm.head) / mm.trunk, 0.0, 1.0);
        return std::pow(std::sin(kPi * x), 0.8);
    };
    double low = -0.5 * depth;
    double high = depth;
    for (int round = 0; round < 60; ++round) {
        const double middle = 0.5 * (low + high);
        double greatest = 0.0;
        for (const Station& station : part.stations) {
            if (station.alongMm >= mm.head && station.alongMm <= mm.head + mm.trunk) {
                greatest = std::max(greatest, station.backMm + station.bellyMm + middle * archAt(station.alongMm));
            }
        }
        (greatest < depth ? low : high) = middle;
    }
    for (Station& station : part.stations) {
        if (station.alongMm > mm.head && station.alongMm < mm.head + mm.trunk) {
            station.backMm += low * archAt(station.alongMm);
        }
    }
}

void giveSideWidths(Part& part, const Lengths& mm, const Animal& animal) {
    const SideProfile profile;
    // Bony head and tail follow the animal's size more than its feeding.
    const double frame = mm.total / 28.0;
    const double half =
        0.5 * std::pow(animal.trunkDepthMm, 0.8) * std::pow(std::min(frame, 1.1 * animal.trunkDepthMm), 0.2);
    for (Station& station : part.stations) {
        const double place = stretched(mm, station.alongMm);
        station.backMm = half * profile.back(place);
        station.bellyMm = half * profile.belly(place);
        if (place > 1.0 && place < 2.0) {
            station.bellyMm -= animal.bellyHollow * animal.trunkDepthMm * std::pow(std::sin(kPi * (place - 1.0)), 1.3);
        }
    }
    archTrunk(part, mm, animal.trunkDepthMm);
}

void giveWidthsFromAbove(Part& part, const Lengths& mm, const Animal& animal) {
    static const Profile profile{{{0.0, 0.24},
                                  {0.1, 0.22},
                                  {0.4, 0.22},
                                  {0.52, 0.30},
                                  {0.64, 0.52},
                                  {0.78, 0.66},
                                  {0.92, 0.80},
                                  {1.0, 0.72},
                                  {1.25, 0.92},
                                  {1.5, 1.0},
                                  {1.8, 0.90},
                                  {2.0, 0.76},
                                  {2.1, 0.66},
                                  {2.5, 0.42},
                                  {2.8, 0.24},
                                  {3.0, 0.15}}};
    for (Station& station : part.stations) {
        const double half = 0.5 * animal.trunkWidthMm * profile(stretched(mm, station.alongMm));
        station.backMm = half;
        station.bellyMm = half;
    }
}

// The bony rings show as a faint ripple of the outline behind the head.
void addRings(Part& part, const Lengths& mm, double depth) {
    const double ring = mm.trunk / 18.0;
    for (Station& station : part.stations) {
        if (station.alongMm > mm.head) {
            const double fade = smoothStep(mm.head, mm.head + 0.5 * ring, station.alongMm);
            const double ripple = 1.0 + 0.004 * fade * std::cos(2.0 * kPi * (station.alongMm - mm.head) / ring);
            station.backMm *= ripple;
            station.bellyMm *= ripple;
        }
    }
    smoothWidths(part, 8);
    const double scale = depth / greatestDepth(part, mm.head, mm.head + mm.trunk);
    for (Station& station : part.stations) {
        station.backMm *= scale;
        station.bellyMm *= scale;
    }
}

Fin caudalFin(const Part& part, const Lengths& mm) {
    const Station& base = part.stations[part.stations.size() - 40];
    const cv::Point2d rearward(-base.towardBack.y, base.towardBack.x);
    const double length = 0.026 * mm.total;
    const double root = (base.backMm + base.bellyMm);
    Fin fin;
    fin.opacity = 0.32;
    fin.outlineMm.push_back(base.spineMm + base.towardBack * (0.45 * root));
    for (int i = 0; i <= 24; ++i) {
        const double angle = (0.34 - 0.68 * i / 24.0);
        const double reach = length * (1.0 + 0.12 * std::cos(angle * 4.5));
        fin.outlineMm.push_back(base.spineMm + rearward * (reach * std::cos(angle)) +
                                base.towardBack * (reach * std::sin(angle) + root * 0.3 * (1.0 - i / 12.0)));
    }
    fin.outlineMm.push_back(base.spineMm - base.towardBack * (0.45 * root));
    for (std::size_t i = 2; i + 2 < fin.outlineMm.size(); i += 4) {
        fin.raysMm.push_back({base.spineMm, fin.outlineMm[i]});
    }
    return fin;
}

Fin dorsalFin(const Part& part, const Lengths& mm) {
    const double start = mm.head + 0.86 * mm.trunk;
    const double length = 0.125 * mm.total;
    const double height = 0.42 * (mm.total / 28.0);
    Fin fin;
    fin.opacity = 0.20;
    std::vector<cv::Point2d> roots;
    for (int i = 0; i <= 40; ++i) {
        const double t = i / 40.0;
        const Station& station = stationAt(part, start + t * length);
        const cv::Point2d rearward(-station.towardBack.y, station.towardBack.x);
        const double rise = height * std::min(1.0, 5.0 * t) * std::sqrt(std::max(0.0, 1.0 - std::pow(t, 6.0)));
        const cv::Point2d root = station.spineMm + station.towardBack * (station.backMm * 0.97);
        const cv::Point2d tip = root + station.towardBack * rise + rearward * (0.5 * rise);
        fin.outlineMm.push_back(tip);
        roots.push_back(root);
        if (i % 2 == 1) {
            fin.raysMm.push_back({root, tip});
        }
    }
    fin.outlineMm.insert(fin.outlineMm.end(), roots.rbegin(), roots.rend());
    return fin;
}

Fin pectoralFin(const Part& part, const Lengths& mm, double side) {
    const Station& station = stationAt(part, 1.01 * mm.head);
    const cv::Point2d rearward(-station.towardBack.y, station.towardBack.x);
    const cv::Point2d root = station.spineMm + station.towardBack * (side * 0.95 * station.backMm);
    const double length = 0.018 * mm.total;
    Fin fin;
    fin.opacity = 0.18;
    fin.outlineMm.push_back(root);
    for (int i = 0; i <= 12; ++i) {
        const double angle = 0.25 + 0.8 * i / 12.0;
        fin.outlineMm.push_back(root + rearward * (length * std::cos(angle)) +
                                station.towardBack * (side * length * std::sin(angle)));
    }
    return fin;
}

void addEyes(Body& body, const Lengths& mm, View view) {
    const Part& part = body.parts.front();
    const Station& station = stationAt(part, 0.66 * mm.head);
    const double radius = 0.052 * mm.head;
    if (view == View::Side) {
        body.eyes.push_back({station.spineMm + station.towardBack * (0.22 * station.backMm), radius, false});
        return;
    }
    for (const double side : {1.0, -1.0}) {
        body.eyes.push_back(
            {station.spineMm + station.towardBack * (side * 1.0 * station.backMm), 0.60 * radius, false});
    }
}

// Moves every station to the middle between back and belly, so that the spine is the midline.
void centre(Part& part) {
    for (Station& station : part.stations) {
        const double shift = 0.5 * (station.backMm - station.bellyMm);
        station.spineMm += station.towardBack * shift;
        station.backMm = station.bellyMm = 0.5 * (station.backMm + station.bellyMm);
    }
}

}  // namespace

Body pipefishBody(const Animal& animal, const Posture& posture, View view) {
    const double total = animal.lengthMm;
    const Lengths mm{total * animal.headFraction, total * animal.trunkFraction,
                     total * (1.0 - animal.headFraction - animal.trunkFraction), total};
    Part part;
    part.stations = spineOf(mm, posture);
    if (view == View::Side) {
        giveSideWidths(part, mm, animal);
        addRings(part, mm, animal.trunkDepthMm);
    } else {
        giveWidthsFromAbove(part, mm, animal);
        addRings(part, mm, animal.trunkWidthMm);
    }
    const Station& tip = part.stations.front();
    const Station& rear = part.stations.back();
    roundEnds(part, 0.55 * (tip.backMm + tip.bellyMm), 0.5 * (rear.backMm + rear.bellyMm));
    Body body;
    if (view == View::Side) {
        body.fins.push_back(dorsalFin(part, mm));
    } else {
        body.fins.push_back(pectoralFin(part, mm, 1.0));
        body.fins.push_back(pectoralFin(part, mm, -1.0));
    }
    body.fins.push_back(caudalFin(part, mm));
    body.straightBelly = bellyLine(part, mm.head, mm.head + mm.trunk);
    centre(part);
    body.parts.push_back(part);
    body.trunkStartMm = mm.head;
    body.tailStartMm = mm.head + mm.trunk;
    body.tailTipMm = mm.total;
    body.headLengthMm = mm.head;
    body.trunkLengthMm = mm.trunk;
    body.tailLengthMm = mm.tail;
    body.gillMm = mm.head;
    const Part& swept = body.parts.front();
    body.landmarks = {swept.stations.front().spineMm, std::nullopt, stationAt(swept, mm.head).spineMm,
                      stationAt(swept, mm.head + mm.trunk).spineMm, swept.stations.back().spineMm};
    addEyes(body, mm, view);
    return body;
}

}  // namespace render
