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

using Sentences = std::vector<Sentence>;

SetupStep step(SetupStepKind kind, SetupState state, Sentences found, Sentences advice = {}) {
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
    const Sentences found{{"%1: %2 x %3 mm with %4 markers.",
                           {box.name, fixed(box.plate.widthMm, 1), fixed(box.plate.heightMm, 1),
                            std::to_string(box.plate.markers.size())}}};
    if (const auto* finding = wrong(newest, {BoxFault::MarkerOff, BoxFault::PlateUneven}))
        return step(SetupStepKind::Print, SetupState::Wrong, found, {{finding->sentence}});
    if (box.plate.markers.size() < kEasyMarkers)
        return step(SetupStepKind::Print, SetupState::Done, found,
                    {{"So few markers leave no scale when one is hidden: print a plate with four or more."}});
    return step(SetupStepKind::Print, SetupState::Done, found);
}

SetupStep ruleStep(const Box& box, std::string_view today, const SetupOptions& options) {
    if (!box.ruleCheck)
        return step(SetupStepKind::Rule, SetupState::ToDo, {{"The box file does not say that the print was measured."}},
                    {{"Measure the bars beside the plate with a steel rule and type what you read."},
                     {"No photo can show a plate that was printed at 97 %."}});
    const PrintScale& scale = box.ruleCheck->scale;
    Sentences found{{"Printed at %1 % across and %2 % down; the box file is corrected for it.",
                     {fixed(100.0 * scale.across, 2), fixed(100.0 * scale.down, 2)}}};
    const auto on = calendarDay(box.ruleCheck->checkedOn), now = calendarDay(today);
    if (!on || !now) return step(SetupStepKind::Rule, SetupState::Done, std::move(found));
    found.push_back(sentence("Measured on %1.", {box.ruleCheck->checkedOn.substr(0, 10)}));
    if (*now - *on > options.mostRuleAgeDays)
        return step(SetupStepKind::Rule, SetupState::ToDo, std::move(found),
                    {{"That was %1 days ago. Heat and damp stretch paper: measure the plate again.",
                      {std::to_string(*now - *on)}}});
    return step(SetupStepKind::Rule, SetupState::Done, std::move(found));
}

double relativeFocalSd(const Box& box) {
    const auto& covariance = *box.lensCovariance;
    return std::sqrt(std::max(covariance[0][0], covariance[1][1])) / box.lens->focalXPx;
}

// What the box file says of its lens, and where it came from.
Sentences lensFound(const Box& box) {
    const LensOrigin& origin = box.lensOrigin;
    Sentences found;
    found.push_back(sentence("A lens of %1 px focal length for photos of %2 x %3 pixels is in the box file.",
                             {fixed(box.lens->focalXPx, 0), std::to_string(box.lens->imageWidthPx),
                              std::to_string(box.lens->imageHeightPx)}));
    if (!origin.cameraModel.empty()) found.push_back(sentence("Camera: %1.", {origin.cameraModel}));
    if (!origin.calibratedOn.empty()) found.push_back(sentence("Calibrated on %1.", {origin.calibratedOn}));
    if (origin.rmsPx) found.push_back(sentence("Corners lie within %1 px of the fit.", {fixed(*origin.rmsPx, 2)}));
    if (box.lensCovariance)
        found.push_back(sentence("The focal length is known to %1 %.", {fixed(100.0 * relativeFocalSd(box), 2)}));
    if (origin.cameraModel.empty() && origin.calibratedOn.empty())
        found.push_back(sentence("The file names neither camera nor day."));
    return found;
}

SetupStep lensStep(const Box& box, const PastBoxCheck* newest) {
    constexpr SetupStepKind kind = SetupStepKind::Lens;
    if (!box.lens)
        return step(
            kind, SetupState::ToDo, {{"The box file has no lens: every interval is wider than need be."}},
            {{"Photograph the plate or a chessboard in air ten to fifteen times, tilted another way in each and "
              "brought into every corner, with the focus and zoom of the sessions."}});
    Sentences found = lensFound(box);
    if (const auto* finding = wrong(newest, {BoxFault::NotThisCamera}))
        return step(kind, SetupState::Wrong, std::move(found), {{finding->sentence}});
    if (box.lensCovariance && relativeFocalSd(box) > kMostFocalSd)
        return step(kind, SetupState::Wrong, std::move(found),
                    {{"The focal length is not told well enough: tilt the board by 20 to 40 degrees and retake."}});
    if (!box.lensCovariance)
        return step(kind, SetupState::Done, std::move(found),
                    {{"How surely it is known the box file does not say: a new calibration would add that."}});
    return step(kind, SetupState::Done, std::move(found));
}

Sentence waterFound(const Media& media) {
    const std::string camera = fixed(media.cameraToWindowMm, 0), depth = fixed(media.waterToPlateMm, 0),
                      index = fixed(waterIndex(media.salinityPpt, media.temperatureC), 4);
    if (media.windowThicknessMm > 0.0)
        return {"Camera %1 mm before a window of %2 mm (index %3), then %4 mm of water of index %5.",
                {camera, fixed(media.windowThicknessMm, 1), fixed(media.windowIndex, 3), depth, index}};
    return {"Camera %1 mm before the water's surface, then %2 mm of water of index %3.", {camera, depth, index}};
}

SetupStep waterStep(const Box& box, const PastBoxCheck* newest) {
    constexpr SetupStepKind kind = SetupStepKind::Water;
    if (!box.media)
        return step(
            kind, SetupState::ToDo, {{"The box file says nothing of window and water."}},
            {{"Measure camera to window, the window's thickness and window to plate, and give them with salinity "
              "and temperature."}});
    const Media& media = *box.media;
    Sentences found{waterFound(media)};
    if (media.windowThicknessMm > 0.0 && (media.windowIndex < kLeastPaneIndex || media.windowIndex > kMostPaneIndex))
        return step(kind, SetupState::Wrong, std::move(found),
                    {{"No pane has such an index: acrylic has about 1.49, glass about 1.52."}});
    if (const auto* finding = wrong(newest, {BoxFault::DistanceOff}))
        return step(kind, SetupState::Wrong, std::move(found), {{finding->sentence}});
    if (newest == nullptr || !box.lens) found.push_back(sentence("No photo has confirmed the distance yet."));
    return step(kind, SetupState::Done, std::move(found));
}

SetupStep planeStep(const Box& box) {
    constexpr SetupStepKind kind = SetupStepKind::AnimalPlane;
    const AnimalPlane& plane = box.animalPlane;
    Sentences found{{"The animal's middle is %1 ± %2 mm before the plate.",
                     {fixed(plane.distanceFromPlateMm, 1), fixed(plane.toleranceMm, 1)}}};
    if (plane.distanceFromPlateMm == 0.0)
        return step(kind, SetupState::Wrong, std::move(found),
                    {{"No animal lies in the plate: measure from the plate's face to the middle of its body."}});
    if (plane.toleranceMm == 0.0)
        return step(kind, SetupState::Wrong, std::move(found),
                    {{"No animal keeps its place exactly: state how much room it has, half of it each way."}});
    if (plane.toleranceMm >= plane.distanceFromPlateMm)
        return step(kind, SetupState::ToDo, std::move(found),
                    {{"That is as wide as a guess: measure from the plate's face to the middle of the animal's body, "
                      "and the room it has."}});
    if (box.media) {
        const FlatLayers layers = layersOf(*box.media, plane.distanceFromPlateMm);
        const double share = plane.toleranceMm / (layers.waterIndex * layers.reducedDepthMm(0.0));
        found.push_back(sentence("That leaves every length open by %1 %.", {fixed(100.0 * share, 2)}));
    }
    return step(kind, SetupState::Done, std::move(found));
}

SetupStep rodStep(const Box& box, const std::vector<PastBoxCheck>& history, const PastBoxCheck* newest,
                  std::string_view today, const BoxJudgementOptions& options) {
    constexpr SetupStepKind kind = SetupStepKind::Rod;
    const Sentences how{
        {"Hang a dark straight rod of known length where the animals hang, and photograph it."},
    };
    // The camera in use is that of the newest photo of the box.
    const BoxJudgement judgement =
        judgeBox(boxFingerprint(box), history, today, newest != nullptr ? newest->camera : CameraSeen{}, options);
    switch (judgement.state) {
        case BoxState::NeverChecked:
            return step(kind, SetupState::ToDo, {{"The box was never checked."}}, how);
        case BoxState::Failed:
            return step(kind, SetupState::Wrong, {{"The last check failed."}}, {judgement.sentence});
        case BoxState::Stale:
            return step(kind, SetupState::ToDo, {judgement.sentence}, how);
        case BoxState::Passed:
            break;
    }
    return step(kind, SetupState::Done, {judgement.sentence});
}

std::vector<SetupStep> withoutBox() {
    std::vector<SetupStep> steps{step(SetupStepKind::Print, SetupState::ToDo, {{"There is no box file yet."}},
                                      {{"Make a plate that leaves room around the animal, and print it at 100 %."}})};
    for (const auto kind : {SetupStepKind::Rule, SetupStepKind::Lens, SetupStepKind::Water, SetupStepKind::AnimalPlane,
                            SetupStepKind::Rod})
        steps.push_back(step(kind, SetupState::CannotTell, {{"The plate comes first."}}));
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
            planeStep(*box),         rodStep(*box, history, newest, today, options.judgement)};
}

std::optional<SetupStep> nextSetupStep(const std::vector<SetupStep>& steps) {
    const auto found =
        std::find_if(steps.begin(), steps.end(), [](const SetupStep& each) { return each.state != SetupState::Done; });
    if (found == steps.end()) return std::nullopt;
    return *found;
}

}  // namespace ringrule
