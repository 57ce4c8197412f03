// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/box_setup.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <initializer_list>

#include "optics/calendar_day.h"
#include "ringrule/optics/water.h"

namespace ringrule {
namespace {

constexpr std::array<std::string_view, 6> kStepIds{"print", "rule", "lens", "water", "animal-plane", "rod"};
constexpr std::array<const char*, 6> kTitles{"Print the plate",  "Steel rule",     "Lens photos",
                                             "Water and window", "Animal's plane", "Rod check"};
constexpr std::array<std::string_view, 4> kStateIds{"cannot-tell", "to-do", "wrong", "done"};

// Panes of clear plastic or glass; a film of water is 1.33.
constexpr double kLeastPaneIndex = 1.4, kMostPaneIndex = 1.7;
// The focal length's standard error above which a lens is not worth its name.
constexpr double kMostFocalSd = 0.005;
constexpr std::size_t kEasyMarkers = 4;

std::string fixed(double value, int digits) {
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "%.*f", digits, value);
    return text.data();
}

SetupStep step(SetupStepKind kind, SetupState state, std::string found, std::string advice = {}) {
    return {kind, state, kTitles[static_cast<std::size_t>(kind)], std::move(found), std::move(advice)};
}

// What the newest check of this very box file found wrong of that kind; nothing when a later one did not.
const BoxFinding* wrong(const PastBoxCheck* newest, std::initializer_list<BoxFault> faults) {
    if (newest == nullptr) return nullptr;
    const auto found = std::find_if(newest->findings.begin(), newest->findings.end(), [&](const BoxFinding& finding) {
        return finding.fails && std::find(faults.begin(), faults.end(), finding.fault) != faults.end();
    });
    return found == newest->findings.end() ? nullptr : &*found;
}

// The newest check on or before today of the file as it is.
const PastBoxCheck* newestCheck(const Box& box, const std::vector<PastBoxCheck>& history, std::string_view today) {
    const std::string fingerprint = boxFingerprint(box);
    const auto now = calendarDay(today);
    const PastBoxCheck* newest = nullptr;
    int newestDay = 0;
    for (const PastBoxCheck& check : history) {
        const auto day = calendarDay(check.checkedOn);
        if (!day || !now || *day > *now || check.boxFingerprint != fingerprint) continue;
        if (newest == nullptr || *day >= newestDay) {
            newest = &check;
            newestDay = *day;
        }
    }
    return newest;
}

SetupStep printStep(const Box& box, const PastBoxCheck* newest) {
    const std::string found = box.name + ": " + fixed(box.plate.widthMm, 1) + " x " + fixed(box.plate.heightMm, 1) +
                              " mm with " + std::to_string(box.plate.markers.size()) + " markers.";
    if (const auto* finding = wrong(newest, {BoxFault::MarkerOff, BoxFault::PlateUneven}))
        return step(SetupStepKind::Print, SetupState::Wrong, found, finding->sentence);
    if (box.plate.markers.size() < kEasyMarkers)
        return step(SetupStepKind::Print, SetupState::Done, found,
                    "So few markers leave no scale when one is hidden: print a plate with four or more.");
    return step(SetupStepKind::Print, SetupState::Done, found);
}

SetupStep ruleStep(const Box& box, std::string_view today, const SetupOptions& options) {
    if (!box.ruleCheck)
        return step(SetupStepKind::Rule, SetupState::ToDo, "The box file does not say that the print was measured.",
                    "Measure the bars beside the plate with a steel rule and type what you read: ringrule box rescale. "
                    "No photo can show a plate that was printed at 97 %.");
    const PrintScale& scale = box.ruleCheck->scale;
    std::string found = "Printed at " + fixed(100.0 * scale.across, 2) + " % across and " +
                        fixed(100.0 * scale.down, 2) + " % down; the box file is corrected for it.";
    const auto on = calendarDay(box.ruleCheck->checkedOn), now = calendarDay(today);
    if (!on || !now) return step(SetupStepKind::Rule, SetupState::Done, found);
    found += " Measured on " + box.ruleCheck->checkedOn.substr(0, 10) + ".";
    if (*now - *on > options.mostRuleAgeDays)
        return step(SetupStepKind::Rule, SetupState::ToDo, found,
                    "That was " + std::to_string(*now - *on) +
                        " days ago. Heat and damp stretch paper: measure the plate again.");
    return step(SetupStepKind::Rule, SetupState::Done, found);
}

double relativeFocalSd(const Box& box) {
    const auto& covariance = *box.lensCovariance;
    return std::sqrt(std::max(covariance[0][0], covariance[1][1])) / box.lens->focalXPx;
}

SetupStep lensStep(const Box& box, const PastBoxCheck* newest) {
    constexpr SetupStepKind kind = SetupStepKind::Lens;
    constexpr const char* kHow =
        "Photograph the plate or a chessboard in air ten to fifteen times, tilted another way in each and brought into "
        "every corner, with the focus and zoom of the sessions: ringrule lens.";
    if (!box.lens)
        return step(kind, SetupState::ToDo, "The box file has no lens: every interval is wider than need be.", kHow);
    const LensOrigin& origin = box.lensOrigin;
    std::string found = "Lens";
    if (!origin.cameraModel.empty()) found += " of " + origin.cameraModel;
    if (!origin.calibratedOn.empty()) found += ", calibrated on " + origin.calibratedOn;
    if (origin.rmsPx) found += ", corners within " + fixed(*origin.rmsPx, 2) + " px";
    if (box.lensCovariance) found += ", focal length to " + fixed(100.0 * relativeFocalSd(box), 2) + " %";
    found += ".";
    if (const auto* finding = wrong(newest, {BoxFault::NotThisCamera}))
        return step(kind, SetupState::Wrong, found, finding->sentence);
    if (box.lensCovariance && relativeFocalSd(box) > kMostFocalSd)
        return step(kind, SetupState::Wrong, found,
                    "The focal length is not told well enough: tilt the board by 20 to 40 degrees and retake.");
    if (!box.lensCovariance)
        return step(kind, SetupState::Done, found,
                    "How surely it is known the box file does not say: a new calibration would add that.");
    return step(kind, SetupState::Done, found);
}

SetupStep waterStep(const Box& box, const PastBoxCheck* newest) {
    constexpr SetupStepKind kind = SetupStepKind::Water;
    if (!box.media)
        return step(kind, SetupState::ToDo, "The box file says nothing of window and water.",
                    "Measure camera to window, the window's thickness and window to plate, and give them with salinity "
                    "and temperature: ringrule box water.");
    const Media& media = *box.media;
    std::string found = "Camera " + fixed(media.cameraToWindowMm, 0) + " mm before ";
    found += media.windowThicknessMm > 0.0 ? "a window of " + fixed(media.windowThicknessMm, 1) + " mm (index " +
                                                 fixed(media.windowIndex, 3) + "), then "
                                           : "the water's surface, then ";
    found += fixed(media.waterToPlateMm, 0) + " mm of water of index " +
             fixed(waterIndex(media.salinityPpt, media.temperatureC), 4) + ".";
    if (media.windowThicknessMm > 0.0 && (media.windowIndex < kLeastPaneIndex || media.windowIndex > kMostPaneIndex))
        return step(kind, SetupState::Wrong, found,
                    "No pane has such an index: acrylic has about 1.49, glass about 1.52.");
    if (const auto* finding = wrong(newest, {BoxFault::DistanceOff}))
        return step(kind, SetupState::Wrong, found, finding->sentence);
    if (newest == nullptr || !box.lens) found += " No photo has confirmed the distance yet.";
    return step(kind, SetupState::Done, found);
}

SetupStep planeStep(const Box& box) {
    constexpr SetupStepKind kind = SetupStepKind::AnimalPlane;
    const AnimalPlane& plane = box.animalPlane;
    std::string found = "The animal's middle is " + fixed(plane.distanceFromPlateMm, 1) + " +- " +
                        fixed(plane.toleranceMm, 1) + " mm before the plate.";
    if (plane.distanceFromPlateMm == 0.0)
        return step(kind, SetupState::Wrong, found,
                    "No animal lies in the plate: measure from the plate's face to the middle of its body.");
    if (plane.toleranceMm == 0.0)
        return step(kind, SetupState::Wrong, found,
                    "No animal keeps its place exactly: state how much room it has, half of it each way.");
    if (plane.toleranceMm >= plane.distanceFromPlateMm)
        return step(kind, SetupState::ToDo, found,
                    "That is as wide as a guess: measure from the plate's face to the middle of the animal's body, "
                    "and the room it has: ringrule box plane.");
    if (box.media) {
        const FlatLayers layers = layersOf(*box.media, plane.distanceFromPlateMm);
        const double share = plane.toleranceMm / (layers.waterIndex * layers.reducedDepthMm(0.0));
        found += " That leaves every length open by " + fixed(100.0 * share, 2) + " %.";
    }
    return step(kind, SetupState::Done, found);
}

SetupStep rodStep(const Box& box, const std::vector<PastBoxCheck>& history, std::string_view today,
                  const BoxJudgementOptions& options) {
    constexpr SetupStepKind kind = SetupStepKind::Rod;
    constexpr const char* kHow =
        "Hang a dark straight rod of known length where the animals hang, and photograph it: ringrule check --rod-mm.";
    const BoxJudgement judgement = judgeBox(box, history, today, {}, options);
    switch (judgement.state) {
        case BoxState::NeverChecked:
            return step(kind, SetupState::ToDo, "The box was never checked.", kHow);
        case BoxState::Failed:
            return step(kind, SetupState::Wrong, "The last check failed.", judgement.sentence);
        case BoxState::Stale:
            return step(kind, SetupState::ToDo, judgement.sentence, kHow);
        case BoxState::Passed:
            break;
    }
    return step(kind, SetupState::Done, judgement.sentence);
}

std::vector<SetupStep> withoutBox() {
    std::vector<SetupStep> steps{
        step(SetupStepKind::Print, SetupState::ToDo, "There is no box file yet.",
             "Make a plate that leaves room around the animal, and print it at 100 %: ringrule plate.")};
    for (const auto kind : {SetupStepKind::Rule, SetupStepKind::Lens, SetupStepKind::Water, SetupStepKind::AnimalPlane,
                            SetupStepKind::Rod})
        steps.push_back(step(kind, SetupState::CannotTell, "The plate comes first."));
    return steps;
}

}  // namespace

std::string_view setupStepId(SetupStepKind kind) {
    return kStepIds[static_cast<std::size_t>(kind)];
}

std::string_view setupStateId(SetupState state) {
    return kStateIds[static_cast<std::size_t>(state)];
}

std::vector<SetupStep> boxSetup(const std::optional<Box>& box, const std::vector<PastBoxCheck>& history,
                                std::string_view today, const SetupOptions& options) {
    if (!box) return withoutBox();
    const PastBoxCheck* newest = newestCheck(*box, history, today);
    return {printStep(*box, newest), ruleStep(*box, today, options),
            lensStep(*box, newest),  waterStep(*box, newest),
            planeStep(*box),         rodStep(*box, history, today, options.judgement)};
}

std::optional<SetupStep> nextSetupStep(const std::vector<SetupStep>& steps) {
    const auto found =
        std::find_if(steps.begin(), steps.end(), [](const SetupStep& each) { return each.state != SetupState::Done; });
    if (found == steps.end()) return std::nullopt;
    return *found;
}

}  // namespace ringrule
