// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/midline/landmarks.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "midline/body_plan.h"
#include "midline/eye.h"
#include "midline/ventral_side.h"
#include "midline/width_profile.h"

namespace ringrule {
namespace {

constexpr double kPipefishAspect = 14.0;  ///< length over greatest width; pipefish data run from 21 to 53 (no eggs)
constexpr double kFishAspect = 7.0;
constexpr double kLeastAspect = 2.5;
constexpr double kEyeFrom = 0.06;  ///< where along the body eyes are looked for
constexpr double kEyeTo = 0.24;
constexpr double kCertain = 9.0;
constexpr double kEyesTell = 2.5;
constexpr double kBentDeg = 35.0;  ///< a seahorse's head stands at an angle to its trunk, and its tail curls

/// How sure the front of the midline is the head; positive: yes, 2 and more: sure.
double headFirstScore(const WidthProfile& profile) {
    double moment = 0.0;
    double area = 0.0;
    const auto count = static_cast<double>(profile.widthPx.size() - 1);
    for (std::size_t i = 0; i < profile.widthPx.size(); ++i) {
        moment += profile.widthPx[i] * static_cast<double>(i) / count;
        area += profile.widthPx[i];
    }
    const double centroid = area > 0.0 ? moment / area : 0.5;
    const double tips = std::log((profile.mean(0.02, 0.08) + 0.5) / (profile.mean(0.92, 0.98) + 0.5));
    return std::clamp((0.5 - centroid) / 0.03, -3.0, 3.0) + std::clamp(tips / 0.35, -2.0, 2.0);
}

/// Greatest turn of the body between any two stations a tenth of its length or more apart.
double greatestTurnDeg(const Midline& midline) {
    const std::size_t n = midline.spinePx.size();
    const std::size_t gap = std::max<std::size_t>(3, n / 25);
    double turn = 0.0;
    double lowest = 0.0;
    double highest = 0.0;
    PixelPoint before = midline.spinePx[gap] - midline.spinePx[0];
    for (std::size_t i = gap; i + gap < n; i += gap) {
        const PixelPoint step = midline.spinePx[i + gap] - midline.spinePx[i];
        turn += std::atan2(cross(before, step), dot(before, step));
        lowest = std::min(lowest, turn);
        highest = std::max(highest, turn);
        before = step;
    }
    return (highest - lowest) * 180.0 / M_PI;
}

struct ShapeGuess {
    Shape shape = Shape::Unknown;
    bool certain = false;
};

ShapeGuess guessShape(const WidthProfile& profile, const Midline& midline, View view) {
    const double aspect = profile.lengthPx / std::max(profile.greatestPx, 1e-9);
    if (aspect > kPipefishAspect) return {Shape::Pipefish, true};
    if (view == View::Front) return {Shape::Seahorse, false};
    if (greatestTurnDeg(midline) > kBentDeg) return {Shape::Seahorse, aspect > 5.0};
    if (aspect < kFishAspect) return {Shape::Fish, aspect < 5.0};
    return {Shape::Fish, false};
}

constexpr std::array kShapes{std::pair{Shape::Pipefish, "pipefish"}, std::pair{Shape::Seahorse, "seahorse"},
                             std::pair{Shape::Fish, "fish"}, std::pair{Shape::Unknown, "unknown"}};
constexpr std::array kViews{std::pair{View::Side, "side"}, std::pair{View::Front, "front"},
                            std::pair{View::Above, "above"}, std::pair{View::Mirror, "mirror"}};

void merge(std::vector<Remark>& into, const std::vector<Remark>& from) {
    for (const Remark remark : from) {
        if (std::find(into.begin(), into.end(), remark) == into.end()) into.push_back(remark);
    }
}

Anatomy straightAnatomy(const Photo& photo, const Outline& outline, const Midline& midline, Shape shape, View view,
                        const EyeSpot& eye) {
    Anatomy anatomy;
    anatomy.shape = shape;
    anatomy.midline = midline;
    anatomy.landmarks = shape == Shape::Pipefish
                            ? pipefishLandmarks(photo, outline, midline, eye, view, anatomy.remarks)
                            : fishLandmarks(outline, midline, eye, anatomy.remarks);
    if (view == View::Side) {
        const double score = ventralLeftScore(photo, outline, midline, eye);
        anatomy.landmarks.ventralOnLeft = score > 0.0;
        anatomy.landmarks.ventralKnown = std::abs(score) > 1.0;
    }
    return anatomy;
}

}  // namespace

std::string_view shapeName(Shape shape) {
    return std::find_if(kShapes.begin(), kShapes.end(), [&](const auto& entry) { return entry.first == shape; })
        ->second;
}

std::string_view viewName(View view) {
    return std::find_if(kViews.begin(), kViews.end(), [&](const auto& entry) { return entry.first == view; })->second;
}

std::optional<Shape> shapeFromName(std::string_view name) {
    const auto found =
        std::find_if(kShapes.begin(), kShapes.end(), [&](const auto& entry) { return entry.second == name; });
    return found == kShapes.end() ? std::nullopt : std::optional(found->first);
}

std::optional<View> viewFromName(std::string_view name) {
    const auto found =
        std::find_if(kViews.begin(), kViews.end(), [&](const auto& entry) { return entry.second == name; });
    return found == kViews.end() ? std::nullopt : std::optional(found->first);
}

Outcome<Anatomy> findLandmarks(const Photo& photo, const Outline& outline, const Midline& midline,
                               const LandmarkOptions& options) {
    const WidthProfile profile = widthProfile(midline);
    if (profile.lengthPx < kLeastAspect * profile.greatestPx) {
        return Refusal{"shape-not-clear",
                       "What was found is too stout for a long fish. Check that the animal lies side on."};
    }
    const Midline backward = reversed(midline);
    // A closed coil is a tail: the midline was cut there and walks toward it. Eyes are looked for at both ends only
    // when the widths do not tell.
    double score = midline.closedCoil ? kCertain : headFirstScore(profile);
    if (std::abs(score) < kEyesTell) {
        const double eyes =
            findEye(photo, midline, kEyeFrom, kEyeTo).strength - findEye(photo, backward, kEyeFrom, kEyeTo).strength;
        score += std::clamp(eyes / 0.8, -1.0, 1.0);
    }
    const Midline& walked = score >= 0.0 ? midline : backward;
    const EyeSpot eye = findEye(photo, walked, kEyeFrom, kEyeTo);
    ShapeGuess guess{options.shape, true};
    if (options.shape == Shape::Unknown) guess = guessShape(widthProfile(walked), walked, options.view);

    Anatomy anatomy;
    if (midline.closedCoil && guess.shape == Shape::Pipefish && options.shape == Shape::Unknown)
        guess = {Shape::Seahorse, false};
    if (guess.shape == Shape::Seahorse && options.view != View::Front) {
        Outcome<Anatomy> seahorse = seahorseAnatomy(outline, walked);
        if (!seahorse) return seahorse;
        anatomy = std::move(seahorse).value();
    } else if (guess.shape == Shape::Seahorse) {
        anatomy.shape = Shape::Seahorse;
        anatomy.midline = walked;
        anatomy.landmarks = seahorseFrontLandmarks(walked);
    } else {
        anatomy = straightAnatomy(photo, outline, walked, guess.shape, options.view, eye);
    }
    // A blunt end is a coil whose gap is not seen, or the head of an animal walked the wrong way round.
    const bool blunt = anatomy.midline.closedCoil && !midline.closedCoil;
    if (std::abs(score) < 1.5 || blunt) anatomy.remarks.push_back(Remark::HeadEndGuessed);
    if (!guess.certain) anatomy.remarks.push_back(Remark::ShapeGuessed);
    merge(anatomy.remarks, midline.remarks);
    return anatomy;
}

}  // namespace ringrule
