// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/lens_fit.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>

#include <opencv2/calib3d.hpp>

namespace ringrule {
namespace {

BoardPose poseOf(const cv::Mat& turn, const cv::Mat& shift, const BoardView& view) {
    cv::Matx33d rotation;
    cv::Rodrigues(turn, rotation);
    PlatePoint mean;
    for (const PlatePoint p : view.printedMm) mean = mean + p * (1.0 / static_cast<double>(view.printedMm.size()));
    BoardPose pose;
    for (int row = 0; row < 3; ++row) {
        for (int column = 0; column < 3; ++column) pose.cameraFromBoard(row, column) = rotation(row, column);
        pose.middle(row) = shift.at<double>(row);
    }
    pose.middle += pose.cameraFromBoard * Eigen::Vector3d(mean.x, mean.y, 0.0);
    return pose;
}

Lens lensOf(const cv::Matx33d& matrix, const cv::Mat& coefficients, const BoardView& view) {
    Lens lens{matrix(0, 0), matrix(1, 1), matrix(0, 2), matrix(1, 2), {}, view.widthPx, view.heightPx};
    for (std::size_t i = 0; i < lens.distortion.size(); ++i)
        lens.distortion[i] = coefficients.at<double>(static_cast<int>(i));
    return lens;
}

// OpenCV divides the squared residuals by points less parameters where each point has two coordinates, which makes its
// standard errors about √2 too large; this undoes it.
double sdCorrection(const std::vector<const BoardView*>& views, const LensModel& model) {
    double points = 0.0;
    for (const BoardView* view : views) points += static_cast<double>(view->seenPx.size());
    const double parameters = 6.0 + (model.thirdRadial ? 1.0 : 0.0) + (model.tangential ? 2.0 : 0.0) +
                              6.0 * static_cast<double>(views.size());
    return std::sqrt(std::max(1.0, points - parameters) / std::max(1.0, 2.0 * points - parameters));
}

}  // namespace

double BoardPose::tiltRadians() const {
    return std::acos(std::min(1.0, std::abs(cameraFromBoard(2, 2))));
}

double BoardPose::turnTo(const BoardPose& other) const {
    const double trace = (cameraFromBoard.transpose() * other.cameraFromBoard).trace();
    return std::acos(std::clamp(0.5 * (trace - 1.0), -1.0, 1.0));
}

std::optional<LensFit> fitLens(const std::vector<const BoardView*>& views, const LensModel& model) {
    assert(!views.empty());
    std::vector<std::vector<cv::Point3f>> printed;
    std::vector<std::vector<cv::Point2f>> seen;
    for (const BoardView* view : views) {
        printed.emplace_back();
        seen.emplace_back();
        for (const PlatePoint p : view->printedMm)
            printed.back().emplace_back(static_cast<float>(p.x), static_cast<float>(p.y), 0.0F);
        for (const PixelPoint p : view->seenPx)
            seen.back().emplace_back(static_cast<float>(p.x), static_cast<float>(p.y));
    }
    const int flags = (model.thirdRadial ? 0 : cv::CALIB_FIX_K3) | (model.tangential ? 0 : cv::CALIB_ZERO_TANGENT_DIST);
    cv::Matx33d matrix = cv::Matx33d::eye();
    cv::Mat coefficients = cv::Mat::zeros(5, 1, CV_64F), sd, poseSd, viewErrors;
    std::vector<cv::Mat> turns, shifts;
    LensFit fit;
    try {
        fit.rmsPx = cv::calibrateCamera(printed, seen, {views.front()->widthPx, views.front()->heightPx}, matrix,
                                        coefficients, turns, shifts, sd, poseSd, viewErrors, flags,
                                        {cv::TermCriteria::COUNT | cv::TermCriteria::EPS, 100, 1e-10});
    } catch (const cv::Exception&) {
        return std::nullopt;  // views that leave its equations singular
    }
    sd *= sdCorrection(views, model);
    fit.model = model;
    fit.lens = lensOf(matrix, coefficients, *views.front());
    fit.focalSdPx = std::max(sd.at<double>(0), sd.at<double>(1));
    fit.centreSdPx = std::max(sd.at<double>(2), sd.at<double>(3));
    for (std::size_t i = 0; i < fit.distortionSd.size(); ++i)
        fit.distortionSd[i] = sd.at<double>(static_cast<int>(i) + 4);
    for (std::size_t i = 0; i < views.size(); ++i) {
        fit.viewRmsPx.push_back(viewErrors.at<double>(static_cast<int>(i)));
        fit.poses.push_back(poseOf(turns[i], shifts[i], *views[i]));
    }
    const double all[]{fit.rmsPx, fit.focalSdPx, fit.lens.focalXPx, fit.lens.focalYPx, fit.lens.distortion[0]};
    if (!std::all_of(std::begin(all), std::end(all), [](double v) { return std::isfinite(v); })) return std::nullopt;
    if (fit.lens.focalXPx <= 0.0 || fit.lens.focalYPx <= 0.0) return std::nullopt;
    return fit;
}

}  // namespace ringrule
