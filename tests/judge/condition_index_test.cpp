// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/condition_index.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "histories.h"
#include "ringrule/judge/body_condition.h"

using namespace ringrule;
using namespace histories;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("A healthy group has condition indices about 100, a thin animal's is lower by what it lost") {
    auto animals = group(7, 6);
    const std::vector<Estimate> healthy = conditionIndices(animals, session(5));
    REQUIRE(healthy.size() == 7);
    // Builds differ by up to 6 % in all, sessions by 1 %.
    for (const Estimate& index : healthy) CHECK_THAT(index.value, WithinAbs(100.0, 7.0));
    thin(animals[3], 5, 0.85);
    const std::vector<Estimate> later = conditionIndices(animals, session(5));
    // The thinned animal is no part of its own reference: 15 % off, and nothing else moves by more than the median may.
    CHECK_THAT(later[3].value / healthy[3].value, WithinAbs(0.85, 1e-6));
    CHECK(later[3].u95() > 0.5);
    CHECK_THAT(later[0].value, WithinAbs(healthy[0].value, 3.0));
    CHECK_THAT(conditionIndices(animals, session(4))[3].value, WithinAbs(100.0, 7.0));
}

TEST_CASE("Without tankmates there is no condition index") {
    CHECK_FALSE(conditionIndices(group(1, 6), session(5))[0].known());
    auto animals = group(3, 2);
    animals.push_back(animal("new", 9));
    CHECK_FALSE(conditionIndices(animals, session(1))[3].known());
}

TEST_CASE("Mass from length, Fulton's K and relative condition: worked values") {
    // H. kuda, M (g) = 7.14e-6 SL (mm)^2.76 (Choo & Liew 2006, J Fish Biol 69:426-445); values computed apart from this
    // code, printed to four or five digits.
    const LengthWeight kuda{7.14e-6, 2.76, "Choo & Liew 2006"};
    const auto mass = [&](double mm) { return massFromLength(kuda, {mm, 0.0, 0.0}).value; };
    CHECK_THAT(mass(9.33), WithinAbs(0.00339, 0.000005));
    CHECK_THAT(mass(25.0), WithinAbs(0.0515, 0.00005));
    CHECK_THAT(mass(50.0), WithinAbs(0.3490, 0.00005));
    CHECK_THAT(mass(100.0), WithinAbs(2.3643, 0.00005));
    CHECK_THAT(mass(119.35), WithinAbs(3.8524, 0.00005));
    CHECK_THAT(relativeCondition({3.0, 0.0, 0.0}, {100.0, 0.0, 0.0}, kuda).value, WithinAbs(1.2689, 0.00005));
    // S. abaster and S. acus, Lake Bafa (doi 10.1515/ohs-2018-0023).
    CHECK_THAT(massFromLength({1e-8, 3.71, ""}, {86.63, 0.0, 0.0}).value, WithinAbs(0.154, 0.0005));
    CHECK_THAT(massFromLength({7e-9, 3.86, ""}, {82.63, 0.0, 0.0}).value, WithinAbs(0.176, 0.0005));
    // H. capensis: 75.16 mm and 2.05 g (males), 69.09 mm and 1.65 g (females), on average.
    CHECK_THAT(fultonK({2.05, 0.0, 0.0}, {75.16, 0.0, 0.0}).value, WithinAbs(0.483, 0.0005));
    CHECK_THAT(fultonK({1.65, 0.0, 0.0}, {69.09, 0.0, 0.0}).value, WithinAbs(0.500, 0.0005));
    // K of a law is 100 a L^(b-3), L in cm and a for cm (Froese 2006): a (mm) times 10^b.
    CHECK_THAT(fultonK({mass(80.0), 0.0, 0.0}, {80.0, 0.0, 0.0}).value,
               WithinRel(100.0 * 7.14e-6 * std::pow(10.0, 2.76) * std::pow(8.0, 2.76 - 3.0), 1e-12));
}

TEST_CASE("Errors of weight and length are carried into condition") {
    const Estimate k = fultonK({2.0, 0.02, 0.0}, {70.0, 0.35, 0.14});
    CHECK_THAT(k.sdRandom / k.value, WithinRel(std::hypot(0.01, 3.0 * 0.005), 1e-12));
    CHECK_THAT(k.sdShared / k.value, WithinRel(3.0 * 0.002, 1e-12));
    CHECK_FALSE(fultonK({2.0, 0.0, 0.0}, {}).known());
    CHECK_FALSE(fultonK({0.0, 0.0, 0.0}, {70.0, 0.0, 0.0}).known());
}

TEST_CASE("A law of one's own animals is found again, one bad weight or not, and refused when they cannot tell it") {
    std::vector<Weighed> animals;
    for (int i = 0; i < 12; ++i) {
        const double mm = 50.0 + 6.0 * i;
        animals.push_back({mm, 7.14e-6 * std::pow(mm, 2.76) * (i % 2 == 0 ? 1.02 : 1.0 / 1.02)});
    }
    animals[5].weightG *= 3.0;  // a slip of the scale
    const auto law = fitLengthWeight(animals);
    REQUIRE(law.ok());
    CHECK_THAT(law.value().b, WithinAbs(2.76, 0.1));  // 2 % of scatter over a 2.3-fold length: sd of b about 0.03
    CHECK_THAT(massFromLength(law.value(), {80.0, 0.0, 0.0}).value, WithinRel(7.14e-6 * std::pow(80.0, 2.76), 0.03));
    CHECK(fitLengthWeight(std::span(animals).first(9)).refusal().reason == "too-few-points");
    CHECK(fitLengthWeight(std::vector<Weighed>(12, Weighed{50.0, 0.35})).refusal().reason == "too-few-points");
    animals[0].weightG = 0.0;
    CHECK(fitLengthWeight(animals).refusal().reason == "no-length");
}
