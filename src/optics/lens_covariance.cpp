// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/lens_covariance.h"

#include <cstddef>

#include <Eigen/Cholesky>
#include <Eigen/Core>

#include <opencv2/calib3d.hpp>

namespace ringrule {
namespace {

constexpr int kLensParameters = 9, kPoseParameters = 6;

using LensMatrix = Eigen::Matrix<double, kLensParameters, kLensParameters>;
using ViewJacobian = Eigen::Matrix<double, Eigen::Dynamic, kPoseParameters + kLensParameters, Eigen::RowMajor>;

// d(pixels) / d(pose, lens) of one view, and what it misses.
struct Linearised {
    ViewJacobian jacobian;
    double squares = 0.0;
};

Linearised linearised(const BoardView& view, const Lens& lens, const cv::Mat& turn, const cv::Mat& shift) {
    std::vector<cv::Point3d> printed;
    for (const PlatePoint p : view.printedMm) printed.emplace_back(p.x, p.y, 0.0);
    const cv::Matx33d matrix(lens.focalXPx, 0.0, lens.centreXPx, 0.0, lens.focalYPx, lens.centreYPx, 0.0, 0.0, 1.0);
    const cv::Mat coefficients(1, 5, CV_64F, const_cast<double*>(lens.distortion.data()));
    std::vector<cv::Point2d> at;
    cv::Mat jacobian;
    cv::projectPoints(printed, turn, shift, matrix, coefficients, at, jacobian);
    Linearised result;
    result.jacobian = Eigen::Map<const ViewJacobian, 0, Eigen::OuterStride<>>(
        jacobian.ptr<double>(), jacobian.rows, jacobian.cols,
        Eigen::OuterStride<>(static_cast<Eigen::Index>(jacobian.step1())));
    for (std::size_t i = 0; i < at.size(); ++i) {
        const double dx = at[i].x - view.seenPx[i].x, dy = at[i].y - view.seenPx[i].y;
        result.squares += dx * dx + dy * dy;
    }
    return result;
}

std::vector<int> freeParameters(const LensModel& model) {
    std::vector<int> free{0, 1, 2, 3, 4, 5};
    if (model.tangential) free.insert(free.end(), {6, 7});
    if (model.thirdRadial) free.push_back(8);
    return free;
}

}  // namespace

LensCovariance lensCovariance(const std::vector<const BoardView*>& views, const LensModel& model, const Lens& lens,
                              const std::vector<cv::Mat>& turns, const std::vector<cv::Mat>& shifts) {
    LensMatrix information = LensMatrix::Zero();
    double squares = 0.0, coordinates = 0.0;
    for (std::size_t i = 0; i < views.size(); ++i) {
        const auto [jacobian, misses] = linearised(*views[i], lens, turns[i], shifts[i]);
        const auto pose = jacobian.leftCols<kPoseParameters>();
        const auto intrinsic = jacobian.rightCols<kLensParameters>();
        const Eigen::Matrix<double, kPoseParameters, kLensParameters> cross = pose.transpose() * intrinsic;
        const Eigen::Matrix<double, kPoseParameters, kPoseParameters> own = pose.transpose() * pose;
        information += intrinsic.transpose() * intrinsic - cross.transpose() * own.ldlt().solve(cross);
        squares += misses;
        coordinates += 2.0 * static_cast<double>(views[i]->seenPx.size());
    }
    const auto free = freeParameters(model);
    const auto count = static_cast<Eigen::Index>(free.size());
    Eigen::MatrixXd reduced(count, count);
    for (Eigen::Index i = 0; i < count; ++i)
        for (Eigen::Index j = 0; j < count; ++j)
            reduced(i, j) = information(free[static_cast<std::size_t>(i)], free[static_cast<std::size_t>(j)]);
    // Pixels beside coefficients of 1e-4: scaled to a diagonal of ones before it is inverted.
    const Eigen::VectorXd scale = reduced.diagonal().cwiseMax(1e-300).cwiseSqrt().cwiseInverse();
    const Eigen::LDLT<Eigen::MatrixXd> scaled(scale.asDiagonal() * reduced * scale.asDiagonal());
    LensCovariance covariance{};
    const double left = coordinates - static_cast<double>(count) - kPoseParameters * static_cast<double>(views.size());
    if (scaled.info() != Eigen::Success || !scaled.isPositive() || left < 1.0) return covariance;
    const Eigen::MatrixXd inverse = scale.asDiagonal() *
                                    Eigen::MatrixXd(scaled.solve(Eigen::MatrixXd::Identity(count, count))) *
                                    scale.asDiagonal();
    for (Eigen::Index i = 0; i < count; ++i)
        for (Eigen::Index j = 0; j < count; ++j)
            covariance[static_cast<std::size_t>(free[static_cast<std::size_t>(i)])]
                      [static_cast<std::size_t>(free[static_cast<std::size_t>(j)])] =
                          0.5 * (inverse(i, j) + inverse(j, i)) * squares / left;
    return covariance;
}

}  // namespace ringrule
