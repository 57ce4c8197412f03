// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/lens_calibration.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <tuple>

#include "optics/lens_fit.h"
#include "ringrule/optics/lens.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {
namespace {

constexpr int kCellColumns = 8;
constexpr int kCellRows = 6;
// Photos that repeat a pose to this measure do not count as poses of their own.
constexpr double kSameTurnDegrees = 5.0;
constexpr double kSamePlace = 0.06;  // of the distance to the board

double degrees(double radians) {
    return radians * 180.0 / std::numbers::pi;
}

LensPhoto describe(const BoardView& view) {
    LensPhoto photo;
    photo.path = view.path;
    photo.blurPx = view.blurPx;
    photo.points = static_cast<int>(view.seenPx.size());
    photo.seenPx = view.seenPx;
    photo.state = view.seenPx.empty() ? LensPhotoState::BoardNotFound : LensPhotoState::Used;
    photo.advice = view.seenPx.empty() ? view.notFound : "";
    return photo;
}

using Size = std::pair<int, int>;
// Make, model, and focal length in tenths of a millimetre: a phone has several lenses behind one name.
using Camera = std::tuple<std::string, std::string, long>;

// The value that most of the views with a board have; the first of equals.
template <class Value, class Of>
Value commonest(const std::vector<BoardView>& views, Of of) {
    Value best{};
    std::ptrdiff_t most = 0;
    for (const BoardView& view : views) {
        const auto same = std::count_if(views.begin(), views.end(), [&](const BoardView& other) {
            return !other.seenPx.empty() && of(other) == of(view);
        });
        if (same > most) std::tie(best, most) = std::pair(of(view), same);
    }
    return best;
}

Size sizeOf(const BoardView& view) {
    return {view.widthPx, view.heightPx};
}
Camera cameraOf(const BoardView& view) {
    return {view.cameraMake, view.cameraModel, std::lround(10.0 * view.focalLengthMm.value_or(0.0))};
}

// One lens is that of one camera in one setting.
void setAsideOthers(const std::vector<BoardView>& views, std::vector<LensPhoto>& photos) {
    const Size size = commonest<Size>(views, sizeOf);
    const Camera camera = commonest<Camera>(views, cameraOf);
    for (std::size_t i = 0; i < views.size(); ++i) {
        if (photos[i].state != LensPhotoState::Used) continue;
        if (cameraOf(views[i]) != camera) {
            photos[i].state = LensPhotoState::OtherCamera;
            photos[i].advice = "Another camera or focal length than the other photos': leave it out.";
        } else if (sizeOf(views[i]) != size) {
            photos[i].state = LensPhotoState::OtherSize;
            photos[i].advice = "Another size than the other photos: set the camera to one size and retake it.";
        }
    }
}

std::vector<std::size_t> usedOf(const std::vector<LensPhoto>& photos) {
    std::vector<std::size_t> used;
    for (std::size_t i = 0; i < photos.size(); ++i) {
        if (photos[i].state == LensPhotoState::Used) used.push_back(i);
    }
    return used;
}

std::vector<const BoardView*> viewsOf(const std::vector<BoardView>& views, const std::vector<std::size_t>& used) {
    std::vector<const BoardView*> chosen;
    for (const std::size_t i : used) chosen.push_back(&views[i]);
    return chosen;
}

void tellResiduals(const LensFit& fit, const std::vector<std::size_t>& used, std::vector<LensPhoto>& photos) {
    for (std::size_t k = 0; k < used.size(); ++k) {
        photos[used[k]].rmsPx = fit.viewRmsPx[k];
        photos[used[k]].tiltDegrees = degrees(fit.poses[k].tiltRadians());
        photos[used[k]].missesPx = fit.missesPx[k];
    }
}

// Sets photos aside whose corners lie far off against the others'; whether there were any.
bool setAsideOutliers(const LensFit& fit, const std::vector<std::size_t>& used, std::vector<LensPhoto>& photos) {
    const double usual = median(fit.viewRmsPx);
    bool any = false;
    for (std::size_t k = 0; k < used.size(); ++k) {
        if (fit.viewRmsPx[k] <= std::max(3.0 * usual, 0.25)) continue;
        photos[used[k]].state = LensPhotoState::Outlier;
        photos[used[k]].advice =
            "Its corners do not fit what the other photos say; retake it: board flat, hands still.";
        any = true;
    }
    return any;
}

// The fit with only those coefficients that it tells from zero.
std::optional<LensFit> withoutLooseCoefficients(LensFit fit, const std::vector<const BoardView*>& views) {
    const auto loose = [&fit](std::size_t i) { return std::abs(fit.lens.distortion[i]) < 2.0 * fit.sd(i + 4); };
    LensModel model;
    model.thirdRadial = !loose(4) && coversImage(fit.lens);
    model.tangential = !(loose(2) && loose(3));
    if (model.thirdRadial && model.tangential) return fit;
    return fitLens(views, model);
}

void markBlurred(std::vector<LensPhoto>& photos) {
    std::vector<double> blurs;
    for (const LensPhoto& photo : photos) {
        if (photo.blurPx > 0.0) blurs.push_back(photo.blurPx);
    }
    if (blurs.empty()) return;
    const double limit = std::max(1.5, 2.0 * median(blurs));
    for (LensPhoto& photo : photos) {
        if (photo.state != LensPhotoState::Used || photo.blurPx <= limit) continue;
        photo.state = LensPhotoState::Blurred;
        photo.advice = "Blurred against the other photos; retake it in better light.";
    }
}

bool samePose(const BoardPose& a, const BoardPose& b) {
    return degrees(a.turnTo(b)) < kSameTurnDegrees && (a.middle - b.middle).norm() < kSamePlace * a.middle.norm();
}

// How many poses of their own the used photos show; those that repeat one are marked.
int countPoses(const LensFit& fit, const std::vector<std::size_t>& used, std::vector<LensPhoto>& photos) {
    int poses = 0;
    for (std::size_t k = 0; k < used.size(); ++k) {
        const auto repeats = [&](const BoardPose& earlier) { return samePose(earlier, fit.poses[k]); };
        const auto here = fit.poses.begin() + static_cast<std::ptrdiff_t>(k);
        if (std::none_of(fit.poses.begin(), here, repeats)) {
            ++poses;
        } else if (photos[used[k]].state == LensPhotoState::Used) {
            photos[used[k]].state = LensPhotoState::TooSimilar;
            photos[used[k]].advice = "Repeats another photo's pose; hold the board otherwise.";
        }
    }
    return poses;
}

void tellCoverage(const std::vector<const BoardView*>& views, LensReport& report) {
    report.cellColumns = kCellColumns;
    report.cellRows = kCellRows;
    report.cornersInCell.assign(static_cast<std::size_t>(kCellColumns) * kCellRows, 0);
    for (const BoardView* view : views) {
        for (const PixelPoint p : view->seenPx) {
            const int column =
                std::clamp(static_cast<int>((p.x + 0.5) * kCellColumns / view->widthPx), 0, kCellColumns - 1);
            const int row = std::clamp(static_cast<int>((p.y + 0.5) * kCellRows / view->heightPx), 0, kCellRows - 1);
            ++report.cornersInCell[static_cast<std::size_t>(row * kCellColumns + column)];
        }
    }
    const auto held =
        std::count_if(report.cornersInCell.begin(), report.cornersInCell.end(), [](int n) { return n > 0; });
    report.coverage = static_cast<double>(held) / static_cast<double>(report.cornersInCell.size());
}

Refusal tooFew(int poses, const LensCalibrationOptions& options) {
    return {"too-few-lens-photos", "Only " + std::to_string(poses) +
                                       (poses == 1 ? " usable photo shows" : " usable photos show") +
                                       " the board in poses of their own; at least " +
                                       std::to_string(options.leastPhotos) + " are needed, ten are good."};
}

std::optional<Refusal> refusalFor(const LensFit& fit, const LensReport& report, int poses,
                                  const LensCalibrationOptions& options) {
    if (poses < options.leastPhotos) return tooFew(poses, options);
    if (report.coverage < options.leastCoverage)
        return Refusal{"poor-coverage",
                       "The board was seen in too little of the frame. Take more photos with it in the corners and "
                       "along the edges."};
    double steepest = 0.0;
    for (const BoardPose& pose : fit.poses) steepest = std::max(steepest, degrees(pose.tiltRadians()));
    if (steepest < options.leastTiltDegrees || fit.focalSdPx() > options.mostFocalSd * fit.lens.focalXPx)
        return Refusal{"poor-angles",
                       "The photos do not tell the focal length from the distance. Hold the board at 20 to 40 degrees, "
                       "a different way in each."};
    const Lens& lens = fit.lens;
    const bool centred = lens.centreXPx > 0.0 && lens.centreXPx < lens.imageWidthPx && lens.centreYPx > 0.0 &&
                         lens.centreYPx < lens.imageHeightPx;
    if (!centred || !coversImage(lens) || !(fit.rmsPx <= options.mostRmsPx))
        return Refusal{"lens-not-determined",
                       "No lens fits these photos. Check that the board is flat and is the one that was named, and "
                       "take them anew."};
    return std::nullopt;
}

LensOrigin originOf(const std::vector<const BoardView*>& views) {
    LensOrigin origin{{}, views.front()->cameraMake, views.front()->cameraModel, views.front()->focalLengthMm};
    for (const BoardView* view : views) {
        if (view->takenAt) origin.calibratedOn = std::max(origin.calibratedOn, view->takenAt->substr(0, 10));
    }
    return origin;
}

FittedLens fittedFrom(const LensFit& fit, const std::vector<const BoardView*>& views) {
    FittedLens result;
    result.lens = fit.lens;
    result.origin = originOf(views);
    result.rmsPx = fit.rmsPx;
    result.origin.rmsPx = fit.rmsPx;
    result.covariance = fit.covariance;
    result.focalSdPx = fit.focalSdPx();
    result.centreSdPx = std::max(fit.sd(2), fit.sd(3));
    for (std::size_t i = 0; i < result.distortionSd.size(); ++i) result.distortionSd[i] = fit.sd(i + 4);
    result.thirdRadialFixed = !fit.model.thirdRadial;
    result.tangentialFixed = !fit.model.tangential;
    return result;
}

}  // namespace

LensReport calibrateLens(const std::vector<BoardView>& views, const LensCalibrationOptions& options) {
    LensReport report;
    std::transform(views.begin(), views.end(), std::back_inserter(report.photos), describe);
    setAsideOthers(views, report.photos);
    auto used = usedOf(report.photos);
    tellCoverage(viewsOf(views, used), report);
    if (std::ssize(used) < options.leastPhotos) {
        report.refusal = tooFew(static_cast<int>(used.size()), options);
        return report;
    }
    auto fit = fitLens(viewsOf(views, used), {});
    if (fit) {
        tellResiduals(*fit, used, report.photos);
        if (setAsideOutliers(*fit, used, report.photos)) {
            used = usedOf(report.photos);
            tellCoverage(viewsOf(views, used), report);
            fit = std::ssize(used) < options.leastPhotos ? std::nullopt : fitLens(viewsOf(views, used), {});
        }
    }
    const auto chosen = viewsOf(views, used);
    if (fit) fit = withoutLooseCoefficients(*fit, chosen);
    if (!fit) {
        report.refusal = Refusal{"lens-not-determined",
                                 "No lens fits these photos. Check that the board is flat and is the one that was "
                                 "named, and take them anew."};
        return report;
    }
    tellResiduals(*fit, used, report.photos);
    markBlurred(report.photos);
    const int poses = countPoses(*fit, used, report.photos);
    report.refusal = refusalFor(*fit, report, poses, options);
    if (!report.refusal) report.fitted = fittedFrom(*fit, chosen);
    return report;
}

}  // namespace ringrule
