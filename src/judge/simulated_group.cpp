// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <random>
#include <string>

#include "ringrule/judge/time_to_notice.h"

namespace ringrule {

namespace {

constexpr Date kFirstSession = std::chrono::sys_days{std::chrono::year{2031} / 1 / 6};

/// The wander of depth carries half of itself over to the next session.
constexpr double kCarriedOver = 0.5;

/// One animal that grows and is photographed; each trait is drawn when it is made.
class SimulatedAnimal {
public:
    SimulatedAnimal(const GroupTrial& trial, bool fails, std::mt19937_64& engine)
        : trial_(trial), fails_(fails), engine_(engine) {
        size_ = std::exp(trial.sizeSpread * normal());
        growth_ = std::max(0.0, 1.0 + trial.growthSpread * normal());
        build_ = std::exp(trial.buildSpread * normal());
        wander_ = trial.depthWander * normal();
        length_ = trial.firstLengthMm;
        newInterval();
    }

    /// A day later.
    void growOn(double day) {
        const double toGo = trial_.asymptoteMm > 0.0
                                ? (trial_.asymptoteMm - length_) / (trial_.asymptoteMm - trial_.firstLengthMm)
                                : 1.0;
        const double slowed = failsOn(day) && trial_.failing == Failing::SlowerGrowth ? trial_.growthPart : 1.0;
        length_ += trial_.mmPerDay * std::max(0.0, toGo) * growth_ * monthly_ * slowed;
        if (failsOn(day) && trial_.failing == Failing::LosingDepth) {
            logLoss_ += std::log1p(-trial_.depthLossPerWeek) / 7.0;
        }
    }

    /// `scale`: the session's own error, common to all.
    Observation photographed(int day, double scale) {
        const double mm = length_ * size_;
        const double depth = 3.0 * std::pow(mm / 90.0, trial_.depthSlope) * build_ * std::exp(wander_ + logLoss_);
        Observation seen;
        seen.on = kFirstSession + std::chrono::days(day);
        seen.sidePhotos = trial_.sidePhotos;
        seen.standardLengthMm = measured(mm * scale, trial_.lengthError);
        seen.trunkDepthMm = measured(depth * scale, trial_.depthError);
        newInterval();
        wander_ = kCarriedOver * wander_ + std::sqrt(1.0 - kCarriedOver * kCarriedOver) * trial_.depthWander * normal();
        return seen;
    }

private:
    double normal() { return normal_(engine_); }
    void newInterval() { monthly_ = std::max(0.0, 1.0 + trial_.monthlySpread * normal()); }

    [[nodiscard]] bool failsOn(double day) const {
        return fails_ && day >= trial_.daysBetween * (trial_.sessionsBefore - 1) + trial_.onsetDays;
    }

    Estimate measured(double truth, double error) {
        return {truth * std::exp(error * normal()), error * truth, trial_.sharedError * truth};
    }

    const GroupTrial& trial_;
    bool fails_;
    std::mt19937_64& engine_;
    std::normal_distribution<double> normal_;
    double size_ = 1.0;
    double growth_ = 1.0;
    double monthly_ = 1.0;
    double build_ = 1.0;
    double wander_ = 0.0;
    double length_ = 0.0;
    double logLoss_ = 0.0;
};

}  // namespace

std::vector<AnimalHistory> simulatedGroup(const GroupTrial& trial, int group) {
    std::seed_seq mixed{static_cast<std::uint32_t>(trial.seed), static_cast<std::uint32_t>(trial.seed >> 32U),
                        static_cast<std::uint32_t>(group)};
    std::mt19937_64 engine(mixed);
    std::normal_distribution<double> normal;
    const int sessions = trial.sessionsBefore + trial.sessionsAfter;
    std::vector<double> scales;
    for (int s = 0; s < sessions; ++s) {
        scales.push_back(std::exp(trial.sharedError * normal(engine)));
    }
    std::vector<AnimalHistory> animals;
    for (int i = 0; i < trial.animals; ++i) {
        AnimalHistory history;
        history.animal.id = {i + 1};
        history.animal.code = "S" + std::to_string(i + 1);
        history.animal.species = "simulated";
        history.animal.hatchedOn = kFirstSession - std::chrono::days(60);
        history.stays.push_back({{i + 1}, {1}, *history.animal.hatchedOn, std::nullopt});
        SimulatedAnimal animal(trial, i == 0 && trial.failing != Failing::Nothing, engine);
        for (int s = 0; s < sessions; ++s) {
            for (int day = trial.daysBetween * (s - 1); s > 0 && day < trial.daysBetween * s; ++day) {
                animal.growOn(day);
            }
            history.observations.push_back(
                animal.photographed(trial.daysBetween * s, scales[static_cast<std::size_t>(s)]));
        }
        animals.push_back(std::move(history));
    }
    return animals;
}

}  // namespace ringrule
