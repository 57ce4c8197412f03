// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// A PDF as a printer would see it: pdftoppm (poppler) shares nothing with what wrote it.

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <memory>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <opencv2/aruco.hpp>
#include <opencv2/imgcodecs.hpp>

namespace raster {

constexpr double kMmPerInch = 25.4;

/// Pixel i spans i … i + 1 over pxPerMm, from the page's left or upper edge.
struct Page {
    cv::Mat1b grey;
    double pxPerMm = 0.0;

    [[nodiscard]] cv::Point2d mmOf(cv::Point2f px) const {
        return cv::Point2d(px.x + 0.5, px.y + 0.5) * (1.0 / pxPerMm);
    }
    [[nodiscard]] double widthMm() const { return grey.cols / pxPerMm; }
    [[nodiscard]] double heightMm() const { return grey.rows / pxPerMm; }
};

inline Page pageOf(const std::filesystem::path& pdf, int page, int dotsPerInch = 600) {
    const std::filesystem::path prefix = pdf.string() + "." + std::to_string(page);
    const std::string number = std::to_string(page);
    const std::string command = "pdftoppm -gray -singlefile -r " + std::to_string(dotsPerInch) + " -f " + number +
                                " -l " + number + " '" + pdf.string() + "' '" + prefix.string() + "'";
    if (std::system(command.c_str()) != 0)
        throw std::runtime_error("pdftoppm failed: install poppler-utils with script/install-packages");
    const std::string image = prefix.string() + ".pgm";
    Page result{cv::imread(image, cv::IMREAD_GRAYSCALE), dotsPerInch / kMmPerInch};
    std::filesystem::remove(image);
    if (result.grey.empty()) throw std::runtime_error("pdftoppm gave no picture of page " + number);
    return result;
}

inline int pagesOf(const std::filesystem::path& pdf) {
    const std::filesystem::path out = pdf.string() + ".info";
    if (std::system(("pdfinfo '" + pdf.string() + "' | grep ^Pages | tr -dc 0-9 > '" + out.string() + "'").c_str()) !=
        0)
        throw std::runtime_error("pdfinfo failed: install poppler-utils with script/install-packages");
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(out.c_str(), "r"), &std::fclose);
    int pages = 0;
    return file && std::fscanf(file.get(), "%d", &pages) == 1 ? pages : 0;
}

/// Corners by id, in mm on the page, by OpenCV's own search and refinement.
inline std::map<int, std::vector<cv::Point2d>> markersOn(const Page& page, int dictionary) {
    auto parameters = cv::aruco::DetectorParameters::create();
    parameters->adaptiveThreshWinSizeMin = parameters->adaptiveThreshWinSizeMax = 41;
    parameters->minMarkerPerimeterRate = 0.01;
    parameters->cornerRefinementMethod = cv::aruco::CORNER_REFINE_SUBPIX;
    std::vector<std::vector<cv::Point2f>> corners;
    std::vector<int> ids;
    cv::aruco::detectMarkers(page.grey, cv::aruco::getPredefinedDictionary(dictionary), corners, ids, parameters);
    std::map<int, std::vector<cv::Point2d>> found;
    for (std::size_t i = 0; i < ids.size(); ++i)
        for (const cv::Point2f& corner : corners[i]) found[ids[i]].push_back(page.mmOf(corner));
    return found;
}

/// Where the longest run of black in any row begins and ends, in mm.
inline std::pair<double, double> longestBlackRun(const cv::Mat1b& grey, double pxPerMm) {
    int best = 0, from = 0;
    for (int y = 0; y < grey.rows; y += 4) {
        const unsigned char* row = grey.ptr<unsigned char>(y);
        for (int x = 0, start = 0; x <= grey.cols; ++x) {
            if (x < grey.cols && row[x] < 128) continue;
            if (x - start > best) best = x - start, from = start;
            start = x + 1;
        }
    }
    return {from / pxPerMm, (from + best) / pxPerMm};
}

}  // namespace raster
