// SPDX-License-Identifier: GPL-3.0-or-later
#include "samples.h"

#include <fstream>

#include <opencv2/aruco.hpp>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "../scratch_folder.h"

namespace samples {

nlohmann::json truth(const std::string& day, const std::string& stem) {
    std::ifstream in(kSource / "sample_images/truth" / day / (stem + ".json"));
    return nlohmann::json::parse(in);
}

void writeBlank(const std::filesystem::path& file) {
    cv::imwrite(file.string(), cv::Mat(1200, 1600, CV_8UC3, cv::Scalar(210, 212, 208)));
}

void writeWithoutMarkers(const std::filesystem::path& photo, const std::filesystem::path& file, std::size_t from) {
    cv::Mat image = cv::imread(photo.string());
    std::vector<std::vector<cv::Point2f>> corners;
    std::vector<int> ids;
    cv::aruco::detectMarkers(image, cv::aruco::getPredefinedDictionary(cv::aruco::DICT_4X4_50), corners, ids);
    for (std::size_t i = 0; i < ids.size(); ++i) {
        if (static_cast<std::size_t>(ids[i]) < from) continue;
        cv::Rect place = cv::boundingRect(corners[i]);
        place -= cv::Point(place.width / 4, place.height / 4);
        place += cv::Size(place.width / 2, place.height / 2);
        place &= cv::Rect(0, 0, image.cols, image.rows);
        image(place).setTo(cv::Scalar(215, 215, 215));
    }
    cv::imwrite(file.string(), image, {cv::IMWRITE_JPEG_QUALITY, 92});
}

void writeTruncated(const std::filesystem::path& photo, const std::filesystem::path& file) {
    const std::string bytes = contentOf(photo);
    std::ofstream(file, std::ios::binary) << bytes.substr(0, bytes.size() / 2);
}

}  // namespace samples
