// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/scale.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <variant>

#include <Eigen/LU>

#include "optics/camera_fit.h"
#include "optics/lens_doubt.h"
#include "optics/plate_homography.h"
#include "optics/refracted_camera.h"
#include "optics/scale_uncertainty.h"
#include "ringrule/optics/box_history.h"
#include "ringrule/optics/lens.h"

namespace ringrule {
namespace {

constexpr double kObliqueDegrees = 10.0;

struct RefractedScale {
    RefractedCamera camera;
    FlatLayers toPlate;
    FlatLayers toAnimal;
};

// Without a lens a tilt shows only as a scale that differs from one end of the plate to the other.
bool looksOblique(const PlateHomography& plane, const PlateLayout& plate) {
    const auto areaAt = [&](double x, double y) {
        return std::abs(plane.straightFromPlate.jacobian({x * plate.widthMm, y * plate.heightMm}).determinant());
    };
    const double across = areaAt(1.0, 0.5) / areaAt(0.0, 0.5), down = areaAt(0.5, 1.0) / areaAt(0.5, 0.0);
    return std::max(std::abs(std::log(across)), std::abs(std::log(down))) > 0.2;
}

// Why the box file's lens is not that of the photo, as far as EXIF tells it; one that says nothing contradicts nothing.
std::optional<Remark> foreignLens(const LensOrigin& lens, const FoundPlate& plate) {
    const CameraSeen then{lens.cameraMake, lens.cameraModel, std::nullopt};
    if (differ(then, {plate.cameraMake, plate.cameraModel, std::nullopt})) return Remark::LensOtherCamera;
    if (differ({"", "", lens.focalLengthMm}, {"", "", plate.focalLengthMm})) return Remark::LensOtherSetting;
    return std::nullopt;
}

// The lens for the photo, and what is to be said of it.
std::optional<PhotoLens> lensFor(const Box& box, const FoundPlate& plate, int widthPx, int heightPx,
                                 std::vector<Remark>& remarks) {
    if (!box.lens) {
        remarks.push_back(Remark::NoLens);
        return std::nullopt;
    }
    if (const auto foreign = foreignLens(box.lensOrigin, plate)) {
        remarks.push_back(*foreign);
        return std::nullopt;
    }
    auto lens = PhotoLens::of(*box.lens, widthPx, heightPx, plate.exifOrientation);
    if (!lens) remarks.push_back(Remark::LensOtherSize);
    if (lens && lens->scaled()) remarks.push_back(Remark::LensScaled);
    return lens;
}

// Whether the top of the plate is at the bottom of the photo; on its side it is neither.
bool upsideDown(const FoundPlate& plate) {
    const PixelPoint across = plate.cornersPx[1] - plate.cornersPx[0];
    return across.x < -std::abs(across.y);
}

Refusal notDetermined() {
    return {"scale-not-determined",
            "The plate's markers do not fit the box file and its lens. Check the box file against the box."};
}

// Beyond this the corners contradict plate or lens: noise and print stay far below. Near and tilted, water bends the
// plate in ways that no lens does, which a lens that is not known leaves in the corners (0.2 mm in simulated boxes).
bool holds(double rmsPx, double pxPerMm, bool lensKnown) {
    return rmsPx <= std::max(1.5, (lensKnown ? 0.15 : 0.3) * pxPerMm);
}

double pxPerMmOf(const FoundPlate& plate, const PlateLayout& layout) {
    return distance(plate.cornersPx[0], plate.cornersPx[2]) / std::hypot(layout.widthMm, layout.heightMm);
}

}  // namespace

struct Scale::State {
    std::variant<PlateHomography, RefractedScale> model;
    ScaleUncertainty uncertainty;
    std::vector<Remark> remarks;
    std::optional<double> cameraToWindowMm;
    double rmsPx = 0.0;
};

Scale::Scale(std::shared_ptr<const State> state) : state_(std::move(state)) {}

Outcome<Scale> Scale::fromPlate(const Box& box, const FoundPlate& plate, int imageWidthPx, int imageHeightPx) {
    State state;
    auto& remarks = state.remarks;
    const auto lens = lensFor(box, plate, imageWidthPx, imageHeightPx, remarks);
    if (!box.media) remarks.push_back(Remark::NoMedia);
    if (std::ssize(plate.markers) < plate.expectedMarkers) remarks.push_back(Remark::MarkersMissing);

    bool oblique = false;
    if (lens) {
        const auto fit = fitCamera(*lens, box.media, box.plate, plate.markers);
        if (!fit) return notDetermined();
        state.model = RefractedScale{
            fit->camera, fit->layersToPlate,
            layersBefore(fit->layersToPlate, box.animalPlane.distanceFromPlateMm, box.media.has_value())};
        state.uncertainty = scaleUncertainty(*fit, box);
        if (box.lensCovariance)
            state.uncertainty.shared =
                std::hypot(state.uncertainty.shared, lensDoubt(*fit, box, plate, imageWidthPx, imageHeightPx));
        state.rmsPx = fit->rmsPx;
        if (box.media) state.cameraToWindowMm = fit->layersToPlate.airMm;
        oblique = fit->camera.tiltRadians() * 180.0 / std::numbers::pi > kObliqueDegrees;
    } else {
        auto plane = fitPlateHomography(box.plate, plate.markers, imageWidthPx, imageHeightPx);
        if (!plane) return notDetermined();
        if (box.media) plane->animalFromPlate = 1.0 / (1.0 + depthBias(box));
        state.uncertainty = scaleUncertainty(*plane, box, plate, imageWidthPx, imageHeightPx);
        state.rmsPx = plane->rmsPx;
        oblique = looksOblique(*plane, box.plate);
        state.model = *plane;
    }
    if (!holds(state.rmsPx, pxPerMmOf(plate, box.plate), lens.has_value())) return notDetermined();
    if (oblique) remarks.push_back(Remark::PlateTilted);
    if (upsideDown(plate)) remarks.push_back(Remark::PlateUpsideDown);
    return Scale(std::make_shared<const State>(std::move(state)));
}

AnimalPoint Scale::animalFromPixel(PixelPoint pixel) const {
    if (const auto* plane = std::get_if<PlateHomography>(&state_->model)) return plane->animalFromPixel(pixel);
    const auto& scale = std::get<RefractedScale>(state_->model);
    const Eigen::Vector2d at = scale.camera.planeFromPixel(pixel, scale.toAnimal);
    return {at.x(), at.y()};
}

PlatePoint Scale::plateFromPixel(PixelPoint pixel) const {
    if (const auto* plane = std::get_if<PlateHomography>(&state_->model)) return plane->plateFromPixel(pixel);
    const auto& scale = std::get<RefractedScale>(state_->model);
    const Eigen::Vector2d at = scale.camera.planeFromPixel(pixel, scale.toPlate);
    return {at.x(), at.y()};
}

PixelPoint Scale::pixelFromAnimal(AnimalPoint point) const {
    if (const auto* plane = std::get_if<PlateHomography>(&state_->model)) return plane->pixelFromAnimal(point);
    const auto& scale = std::get<RefractedScale>(state_->model);
    return scale.camera.pixelFromPlane({point.x, point.y}, scale.toAnimal);
}

PixelPoint Scale::pixelFromPlate(PlatePoint point) const {
    if (const auto* plane = std::get_if<PlateHomography>(&state_->model)) return plane->pixelFromPlate(point);
    const auto& scale = std::get<RefractedScale>(state_->model);
    return scale.camera.pixelFromPlane({point.x, point.y}, scale.toPlate);
}

Eigen::Matrix2d Scale::animalFromPixelJacobian(PixelPoint pixel) const {
    if (const auto* plane = std::get_if<PlateHomography>(&state_->model))
        return plane->animalFromPlate * plane->plateFromPixelJacobian(pixel);
    const auto& scale = std::get<RefractedScale>(state_->model);
    return scale.camera.planeFromPixelJacobian(pixel, scale.toAnimal);
}

double Scale::mmPerPx(PixelPoint pixel) const {
    return std::sqrt(std::abs(animalFromPixelJacobian(pixel).determinant()));
}

double Scale::relativeSdRandom() const {
    return state_->uncertainty.random;
}

double Scale::relativeSdShared() const {
    return state_->uncertainty.shared;
}

const std::vector<Remark>& Scale::remarks() const {
    return state_->remarks;
}

std::optional<double> Scale::cameraToWindowMm() const {
    return state_->cameraToWindowMm;
}

std::optional<double> Scale::tiltDegrees() const {
    const auto* scale = std::get_if<RefractedScale>(&state_->model);
    if (scale == nullptr) return std::nullopt;
    return scale->camera.tiltRadians() * 180.0 / std::numbers::pi;
}

double Scale::cornerRmsPx() const {
    return state_->rmsPx;
}

}  // namespace ringrule
