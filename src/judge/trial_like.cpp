// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "judge/case_file.h"
#include "ringrule/growth/rate.h"
#include "ringrule/judge/tankmates.h"
#include "ringrule/judge/time_to_notice.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

/// What the animals of a tank show, one value an animal.
struct Shown {
    std::vector<double> lengthMm;
    std::vector<double> mmPerDay;
    std::vector<double> relativeGain;
    std::vector<double> logShape;
    std::vector<double> lengthError;
    std::vector<double> depthError;
    std::vector<double> sharedError;
    std::vector<double> days;
    std::size_t sessions = 0;
    double photos = 0.0;
};

void look(Shown& shown, const CaseFile& file, const JudgeOptions& options) {
    std::vector<const Observation*> seen;
    for (const Observation* one : file.sound) {
        if (one->standardLengthMm.known()) {
            seen.push_back(one);
        }
    }
    if (seen.size() < 2) {
        return;
    }
    const Observation& last = *seen.back();
    const auto rate = growthRate(*seen[seen.size() - 2], last);
    if (!rate) {
        return;
    }
    shown.lengthMm.push_back(last.standardLengthMm.value);
    shown.mmPerDay.push_back(std::max(0.0, rate.value().mmPerDay.value));
    shown.relativeGain.push_back(std::log(last.standardLengthMm.value / seen.front()->standardLengthMm.value) /
                                 static_cast<double>((last.on - seen.front()->on).count()));
    shown.lengthError.push_back(logLengthSd(last, options.doubt));
    shown.sharedError.push_back(last.standardLengthMm.sdShared / last.standardLengthMm.value);
    if (last.trunkDepthMm.known()) {
        shown.depthError.push_back(last.trunkDepthMm.sdRandom / last.trunkDepthMm.value);
        shown.logShape.push_back(std::log(last.trunkDepthMm.value / last.standardLengthMm.value));
    }
    for (std::size_t i = 1; i < seen.size(); ++i) {
        shown.days.push_back(static_cast<double>((seen[i]->on - seen[i - 1]->on).count()));
    }
    shown.sessions = std::max(shown.sessions, seen.size());
    shown.photos = std::max(shown.photos, static_cast<double>(last.sidePhotos));
}

/// The spread that five or more animals show, or what is usual where it is more or they are fewer.
double spreadOr(const std::vector<double>& values, double usual, int robustFrom) {
    return values.size() < static_cast<std::size_t>(robustFrom) ? usual
                                                                : std::max(usual, medianAbsoluteDeviation(values));
}

}  // namespace

Outcome<GroupTrial> trialLike(std::span<const AnimalHistory> animals, TankId tank, Date on,
                              const JudgeOptions& options) {
    const Casebook book(animals, on, options);
    Shown shown;
    for (std::size_t i = 0; i < animals.size(); ++i) {
        if (tankOn(animals[i], on) == tank) {
            look(shown, book.file(i), options);
        }
    }
    if (shown.lengthMm.size() < 2) {
        return Refusal{"too-few-animals", "Fewer than two animals of this tank were measured twice."};
    }
    GroupTrial trial;
    const int enough = options.group.robustFrom;
    trial.animals = static_cast<int>(shown.lengthMm.size());
    trial.firstLengthMm = median(shown.lengthMm);
    trial.mmPerDay = median(shown.mmPerDay);
    trial.daysBetween = std::max(1, static_cast<int>(std::lround(median(shown.days))));
    trial.sessionsBefore = static_cast<int>(std::clamp<std::size_t>(shown.sessions, 2, 8));
    std::vector<double> logLength;
    for (double length : shown.lengthMm) {
        logLength.push_back(std::log(length));
    }
    trial.sizeSpread = spreadOr(logLength, trial.sizeSpread, enough);
    trial.buildSpread = spreadOr(shown.logShape, trial.buildSpread, enough);
    std::vector<double> gains;
    const double usualGain = median(shown.relativeGain);
    for (double gain : shown.relativeGain) {
        gains.push_back(usualGain > 0.0 ? gain / usualGain : 1.0);
    }
    trial.growthSpread = std::min(0.9, spreadOr(gains, trial.growthSpread, enough));
    trial.lengthError = median(shown.lengthError);
    trial.sharedError = median(shown.sharedError);
    trial.depthError = shown.depthError.empty() ? trial.depthError : median(shown.depthError);
    trial.sidePhotos = static_cast<int>(shown.photos);
    return trial;
}

}  // namespace ringrule
