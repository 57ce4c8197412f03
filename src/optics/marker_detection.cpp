// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/marker_detection.h"

#include <cstddef>

#include <opencv2/aruco.hpp>
#include <opencv2/imgproc.hpp>

namespace ringrule {

ReducedImage reduced(const cv::Mat& grey, int factor) {
    if (factor <= 1) return {grey, 1};
    // Whole blocks only: a resize to a rounded size would stretch the image by up to a block.
    const cv::Rect whole(0, 0, grey.cols / factor * factor, grey.rows / factor * factor);
    ReducedImage image{{}, factor};
    cv::resize(grey(whole), image.grey, {whole.width / factor, whole.height / factor}, 0, 0, cv::INTER_AREA);
    return image;
}

std::vector<FoundMarker> detectMarkers(const ReducedImage& image, const MarkerDictionary& dictionary,
                                       const DetectionOptions& options) {
    auto parameters = cv::aruco::DetectorParameters::create();
    // Two windows of the adaptive threshold: the smaller for markers of a few pixels a cell, the larger for the rest.
    parameters->adaptiveThreshWinSizeMin = 7;
    parameters->adaptiveThreshWinSizeMax = 27;
    parameters->adaptiveThreshWinSizeStep = 20;
    parameters->cornerRefinementMethod = cv::aruco::CORNER_REFINE_NONE;
    parameters->errorCorrectionRate = options.errorCorrection;
    parameters->minMarkerPerimeterRate = 0.02;
    std::vector<std::vector<cv::Point2f>> corners;
    std::vector<int> ids;
    cv::aruco::detectMarkers(image.grey, cv::aruco::getPredefinedDictionary(dictionary.opencvId), corners, ids,
                             parameters);
    std::vector<FoundMarker> markers(ids.size());
    const double factor = image.factor, half = 0.5 * (factor - 1.0);
    for (std::size_t i = 0; i < ids.size(); ++i) {
        markers[i].id = ids[i];
        for (std::size_t k = 0; k < 4; ++k)
            markers[i].cornersPx[k] = {corners[i][k].x * factor + half, corners[i][k].y * factor + half};
    }
    return markers;
}

}  // namespace ringrule
