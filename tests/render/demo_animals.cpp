// SPDX-License-Identifier: GPL-3.0-or-later
#include "demo_animals.h"

#include "random.h"

#include <algorithm>
#include <cmath>

namespace render {

namespace {

constexpr double kBirthMm = 25.0;
constexpr double kAsymptoteMm = 182.0;
constexpr double kPerDay = 0.0056;

struct Build {
    double size, depth;  // against the usual
    double head, trunk;  // shares of the length
    std::array<double, 3> srgb;
    double mottling, paleBelly;
};

constexpr std::array<Build, 7> kPipefish{{{1.012, 1.020, 0.213, 0.280, {134, 108, 66}, 0.34, 0.40},
                                          {0.985, 0.975, 0.216, 0.276, {98, 106, 60}, 0.30, 0.45},
                                          {1.034, 0.990, 0.211, 0.284, {112, 88, 56}, 0.40, 0.35},
                                          {1.004, 1.010, 0.214, 0.279, {150, 124, 70}, 0.28, 0.40},
                                          {0.978, 1.004, 0.218, 0.275, {86, 70, 50}, 0.36, 0.30},
                                          {0.944, 0.982, 0.215, 0.281, {110, 112, 72}, 0.32, 0.50},
                                          {1.021, 1.028, 0.212, 0.277, {140, 132, 100}, 0.26, 0.30}}};

constexpr std::array<Build, 5> kSeahorses{{{148.0, 0.108, 0.214, 0.272, {178, 142, 52}, 0.22, 0.35},
                                           {155.0, 0.104, 0.210, 0.268, {116, 84, 52}, 0.30, 0.30},
                                           {142.0, 0.110, 0.216, 0.275, {152, 84, 44}, 0.24, 0.30},
                                           {151.0, 0.106, 0.212, 0.270, {88, 80, 58}, 0.34, 0.35},
                                           {145.0, 0.109, 0.215, 0.273, {196, 176, 128}, 0.20, 0.25}}};

std::size_t numberOf(const Animal& animal) {
    return static_cast<std::size_t>(animal.code[1] - '1');
}

// Straight lines between (x, y) knots.
double between(std::initializer_list<cv::Point2d> knots, double x) {
    const cv::Point2d* before = knots.begin();
    for (const cv::Point2d& knot : knots) {
        if (x < knot.x) {
            return &knot == knots.begin() ? knot.y
                                          : before->y + (knot.y - before->y) * (x - before->x) / (knot.x - before->x);
        }
        before = &knot;
    }
    return before->y;
}

// P4's appetite for growth: brine shrimp alone stop to be enough after the winter; the change
// of diet on 2031-06-16 (day 213) works after a week or two.
double appetite(double ageDays) {
    return between({{92, 1.0}, {120, 0.35}, {213, 0.30}, {222, 0.55}, {240, 1.15}}, ageDays);
}

// Length by von Bertalanffy's rate equation, day by day.
double pipefishLength(const Build& build, bool picky, int ageDays) {
    double length = kBirthMm;
    for (int day = 0; day < ageDays; ++day) {
        length += kPerDay * (kAsymptoteMm - length) * (picky ? appetite(day) : 1.0);
    }
    return length * build.size;
}

Animal pipefishAt(Animal animal, std::size_t session) {
    const Build& build = kPipefish[numberOf(animal)];
    const int age = demoSessions()[session].ageDays;
    const bool picky = animal.code == "P4";
    Random random(seedOf(7000 + numberOf(animal), session));
    animal.lengthMm = pipefishLength(build, picky, age);
    animal.headFraction = build.head;
    animal.trunkFraction = build.trunk;
    const double fed = picky ? between({{85, 1.0},
                                        {108, 0.955},
                                        {143, 0.885},
                                        {171, 0.825},
                                        {199, 0.785},
                                        {213, 0.78},
                                        {234, 0.85},
                                        {262, 0.935},
                                        {290, 0.975}},
                                       age)
                             : 1.0;
    const double hollow = picky ? between({{85, 0.0},
                                           {108, 0.035},
                                           {143, 0.075},
                                           {171, 0.11},
                                           {199, 0.135},
                                           {213, 0.135},
                                           {234, 0.09},
                                           {262, 0.045},
                                           {290, 0.015}},
                                          age)
                                : 0.0;
    animal.trunkDepthMm = animal.lengthMm / 28.0 * build.depth * fed * random.normal(1.0, 0.01);
    animal.trunkWidthMm = animal.trunkDepthMm * (0.90 - 0.25 * hollow) * random.normal(1.0, 0.008);
    animal.bellyHollow = -0.060 + hollow + random.normal(0.0, 0.008);
    animal.coat.banding = 0.11;
    return animal;
}

Animal seahorseAt(Animal animal, std::size_t session) {
    const Build& build = kSeahorses[numberOf(animal)];
    Random random(seedOf(8000 + numberOf(animal), session));
    animal.lengthMm = build.size + 0.22 * static_cast<double>(session);
    animal.headFraction = build.head;
    animal.trunkFraction = build.trunk;
    animal.trunkDepthMm = animal.lengthMm * build.depth * random.normal(1.0, 0.01);
    animal.trunkWidthMm = animal.trunkDepthMm * 0.70 * random.normal(1.0, 0.01);
    animal.bellyHollow = random.normal(-0.005, 0.006);
    animal.headAngleDeg = random.between(68.0, 92.0);
    const bool brooding = animal.code == "H4" && demoSessions()[session].on == "2031-05-05";
    animal.pouch = animal.sex == "male" ? (brooding ? 0.52 : 0.15) : 0.0;
    return animal;
}

}  // namespace

const std::vector<DemoSession>& demoSessions() {
    static const std::vector<DemoSession> sessions{
        {"2031-01-06", 52, true},   {"2031-02-03", 80, false},  {"2031-03-03", 108, true},
        {"2031-04-07", 143, false}, {"2031-05-05", 171, true},  {"2031-06-02", 199, false},
        {"2031-07-07", 234, true},  {"2031-08-04", 262, false}, {"2031-09-01", 290, true}};
    return sessions;
}

std::vector<Animal> demoAnimals() {
    std::vector<Animal> animals;
    const auto add = [&animals](Shape shape, int number, const char* sex, const Build& build) {
        Animal animal;
        const bool pipefish = shape == Shape::Pipefish;
        animal.code = (pipefish ? "P" : "H") + std::to_string(number);
        animal.species = pipefish ? "Syngnathus typhle" : "Hippocampus reidi";
        animal.sex = sex;
        animal.shape = shape;
        animal.card = number + (pipefish ? 0 : 10);
        animal.coat = {{build.srgb[0], build.srgb[1], build.srgb[2]}, build.mottling, 0.10, build.paleBelly};
        animals.push_back(animal);
    };
    const std::array<const char*, 7> pipefishSexes{"female", "male", "female", "female", "male", "male", "female"};
    for (std::size_t i = 0; i < kPipefish.size(); ++i) {
        add(Shape::Pipefish, static_cast<int>(i) + 1, pipefishSexes[i], kPipefish[i]);
    }
    const std::array<const char*, 5> seahorseSexes{"female", "male", "female", "male", "female"};
    for (std::size_t i = 0; i < kSeahorses.size(); ++i) {
        add(Shape::Seahorse, static_cast<int>(i) + 1, seahorseSexes[i], kSeahorses[i]);
    }
    return animals;
}

Animal animalAt(const Animal& animal, std::size_t session) {
    return animal.shape == Shape::Pipefish ? pipefishAt(animal, session) : seahorseAt(animal, session);
}

Tail tailAt(const Animal& animal, std::size_t session) {
    if (animal.shape == Shape::Pipefish) {
        return Tail::Open;
    }
    const std::string key = animal.code + "@" + std::to_string(session);
    for (const char* closed : {"H3@2", "H5@6", "H2@0"}) {
        if (key == closed) {
            return Tail::Closed;
        }
    }
    for (const char* curled : {"H1@2", "H1@8", "H2@4", "H3@6", "H4@0", "H5@4", "H4@6"}) {
        if (key == curled) {
            return Tail::HalfCurled;
        }
    }
    return Tail::Open;
}

}  // namespace render
