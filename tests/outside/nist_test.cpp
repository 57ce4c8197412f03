// SPDX-License-Identifier: GPL-3.0-or-later
// Certified values of NIST StRD nonlinear regression, read from the certified files themselves (data/nist).
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>

#include "nist_dataset.h"
#include "ringrule/statistics/autodiff.h"
#include "ringrule/statistics/least_squares.h"

using namespace ringrule;

namespace {

NistDataset dataset(const std::string& name) {
    return readNist(
        (std::filesystem::path(RINGRULE_SOURCE_DIR) / "tests/outside/data/nist" / (name + ".dat")).string());
}

/// The residual model of y = curve(parameters, x).
template <int N, class Curve>
ResidualModel residualsOf(const NistDataset& set, Curve curve) {
    return differentiated<N>([set, curve](const auto& p) {
        std::vector<std::decay_t<decltype(p[0])>> residuals;
        for (std::size_t i = 0; i < set.x.size(); ++i) {
            residuals.push_back(curve(p, set.x[i]) - set.y[i]);
        }
        return residuals;
    });
}

void checkCertified(const NistDataset& set, const ResidualModel& model, double sdTolerance = 1e-5) {
    const auto useSecond = GENERATE(false, true);
    const std::vector<double>& first = useSecond ? set.start2 : set.start1;
    const Eigen::VectorXd start =
        Eigen::Map<const Eigen::VectorXd>(first.data(), static_cast<Eigen::Index>(first.size()));
    const auto fit = solveLeastSquares(model, {start});
    REQUIRE(fit.ok());
    for (std::size_t i = 0; i < set.certified.size(); ++i) {
        const auto k = static_cast<Eigen::Index>(i);
        INFO("start " << (useSecond ? 2 : 1) << ", parameter b" << i + 1);
        CHECK_THAT(fit.value().parameters[k], Catch::Matchers::WithinRel(set.certified[i], 1e-7));   // seven digits
        CHECK_THAT(fit.value().sd(k), Catch::Matchers::WithinRel(set.certifiedSd[i], sdTolerance));  // five digits
    }
    CHECK_THAT(fit.value().residualSumOfSquares, Catch::Matchers::WithinRel(set.residualSumOfSquares, 1e-8));
    CHECK_THAT(fit.value().residualSd, Catch::Matchers::WithinRel(set.residualSd, 1e-8));
}

}  // namespace

TEST_CASE("NIST Misra1a from both starts") {
    const auto set = dataset("Misra1a");
    REQUIRE(set.x.size() == 14);
    checkCertified(set, residualsOf<2>(set, [](const auto& b, double x) {
                       using std::exp;
                       return b[0] * (1.0 - exp(-b[1] * x));
                   }));
}

TEST_CASE("NIST BoxBOD from both starts") {
    const auto set = dataset("BoxBOD");
    REQUIRE(set.x.size() == 6);
    checkCertified(set, residualsOf<2>(set, [](const auto& b, double x) {
                       using std::exp;
                       return b[0] * (1.0 - exp(-b[1] * x));
                   }));
}

TEST_CASE("NIST Rat42 from both starts") {
    const auto set = dataset("Rat42");
    REQUIRE(set.x.size() == 9);
    checkCertified(set, residualsOf<3>(set, [](const auto& b, double x) {
                       using std::exp;
                       return b[0] / (1.0 + exp(b[1] - b[2] * x));
                   }));
}

TEST_CASE("NIST Rat43 from both starts") {
    const auto set = dataset("Rat43");
    REQUIRE(set.x.size() == 15);
    checkCertified(set, residualsOf<4>(set, [](const auto& b, double x) {
                       using std::exp;
                       using std::pow;
                       return b[0] / pow(1.0 + exp(b[1] - b[2] * x), 1.0 / b[3]);
                   }));
}

TEST_CASE("NIST Lanczos3, sums of exponentials, from both starts") {
    const auto set = dataset("Lanczos3");
    REQUIRE(set.x.size() == 24);
    checkCertified(set, residualsOf<6>(set, [](const auto& b, double x) {
                       using std::exp;
                       return b[0] * exp(-b[1] * x) + b[2] * exp(-b[3] * x) + b[4] * exp(-b[5] * x);
                   }));
}

TEST_CASE("The certified file is what is compared, not a wrong copy that is about") {
    // One copy gives Misra1a SE(b2) = 1.2889360290E-05 and one gives Rat43 SEs of b2-b4 ten times too small.
    CHECK_THAT(dataset("Misra1a").certifiedSd.at(1), Catch::Matchers::WithinRel(7.2668688436E-06, 1e-12));
    CHECK_THAT(dataset("Rat43").certifiedSd.at(3), Catch::Matchers::WithinRel(6.8761936385E-01, 1e-12));
}
