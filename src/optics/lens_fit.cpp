// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/lens_fit.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>

#include <opencv2/calib3d.hpp>

#include "optics/lens_covariance.h"

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

std::vector<PixelPoint> missesOf(const BoardView& view, const Lens& lens, const cv::Mat& turn, const cv::Mat& shift) {
    std::vector<cv::Point3d> printed;
    for (const PlatePoint p : view.printedMm) printed.emplace_back(p.x, p.y, 0.0);
    const cv::Matx33d matrix(lens.focalXPx, 0.0, lens.centreXPx, 0.0, lens.focalYPx, lens.centreYPx, 0.0, 0.0, 1.0);
    std::vector<cv::Point2d> at;
    cv::projectPoints(printed, turn, shift, matrix, std::vector<double>(lens.distortion.begin(), lens.distortion.end()),
                      at);
    std::vector<PixelPoint> misses;
    for (std::size_t i = 0; i < at.size(); ++i) misses.push_back(view.seenPx[i] - PixelPoint{at[i].x, at[i].y});
    return misses;
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
    cv::Mat coefficients = cv::Mat::zeros(5, 1, CV_64F), viewErrors;
    std::vector<cv::Mat> turns, shifts;
    LensFit fit;
    try {
        fit.rmsPx = cv::calibrateCamera(printed, seen, {views.front()->widthPx, views.front()->heightPx}, matrix,
                                        coefficients, turns, shifts, cv::noArray(), cv::noArray(), viewErrors, flags,
                                        {cv::TermCriteria::COUNT | cv::TermCriteria::EPS, 100, 1e-10});
    } catch (const cv::Exception&) {
        return std::nullopt;  // views that leave its equations singular
    }
    fit.model = model;
    fit.lens = lensOf(matrix, coefficients, *views.front());
    fit.covariance = lensCovariance(views, model, fit.lens, turns, shifts);
    for (std::size_t i = 0; i < views.size(); ++i) {
        fit.viewRmsPx.push_back(viewErrors.at<double>(static_cast<int>(i)));
        fit.poses.push_back(poseOf(turns[i], shifts[i], *views[i]));
        fit.missesPx.push_back(missesOf(*views[i], fit.lens, turns[i], shifts[i]));
    }
    const double all[]{fit.rmsPx, fit.focalSdPx(), fit.lens.focalXPx, fit.lens.focalYPx, fit.lens.distortion[0]};
    if (!std::all_of(std::begin(all), std::end(all), [](double v) { return std::isfinite(v); })) return std::nullopt;
    if (fit.focalSdPx() <= 0.0) return std::nullopt;  // the focal length is left open
    if (fit.lens.focalXPx <= 0.0 || fit.lens.focalYPx <= 0.0) return std::nullopt;
    return fit;
}

}  // namespace ringrule
