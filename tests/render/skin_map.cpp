// SPDX-License-Identifier: GPL-3.0-or-later
#include "skin_map.h"

#include <algorithm>
#include <cmath>

namespace render {

namespace {

struct Corner {
    cv::Point2d px;
    cv::Vec3f place;
};

void fillTriangle(SkinMap& map, const Corner& a, const Corner& b, const Corner& c, unsigned char region) {
    const double area = (b.px - a.px).cross(c.px - a.px);
    if (std::abs(area) < 1e-9) {
        return;
    }
    const int left = std::max(0, static_cast<int>(std::ceil(std::min({a.px.x, b.px.x, c.px.x}))) - map.bounds.x);
    const int right =
        std::min(map.bounds.width - 1, static_cast<int>(std::floor(std::max({a.px.x, b.px.x, c.px.x}))) - map.bounds.x);
    const int top = std::max(0, static_cast<int>(std::ceil(std::min({a.px.y, b.px.y, c.px.y}))) - map.bounds.y);
    const int bottom = std::min(map.bounds.height - 1,
                                static_cast<int>(std::floor(std::max({a.px.y, b.px.y, c.px.y}))) - map.bounds.y);
    for (int row = top; row <= bottom; ++row) {
        for (int column = left; column <= right; ++column) {
            const cv::Point2d px(column + map.bounds.x, row + map.bounds.y);
            const double wb = (px - a.px).cross(c.px - a.px) / area;
            const double wc = (b.px - a.px).cross(px - a.px) / area;
            const double wa = 1.0 - wb - wc;
            if (wa < -1e-6 || wb < -1e-6 || wc < -1e-6) {
                continue;
            }
            map.place(row, column) =
                a.place * static_cast<float>(wa) + b.place * static_cast<float>(wb) + c.place * static_cast<float>(wc);
            map.region(row, column) = region;
        }
    }
}

// One row of corners across the body, a little beyond both edges.
std::vector<Corner> rowAcross(const Station& station, const Sight& sight, cv::Point2d light, double beyondMm) {
    static constexpr std::array<double, 9> kAcross{-1.0001, -1.0, -0.7, -0.35, 0.0, 0.35, 0.7, 1.0, 1.0001};
    std::vector<Corner> row;
    const cv::Point2d back = sight.turned(station.towardBack);
    const double facing = back.dot(light);
    for (const double across : kAcross) {
        double offset = across * (across > 0.0 ? station.backMm : station.bellyMm);
        if (std::abs(across) > 1.0) {
            offset += std::copysign(beyondMm, across);
        }
        const double bounded = std::clamp(across, -1.0, 1.0);
        row.push_back(
            {sight.pxFromBody(station.spineMm + station.towardBack * offset),
             {static_cast<float>(station.alongMm), static_cast<float>(bounded), static_cast<float>(bounded * facing)}});
    }
    return row;
}

}  // namespace

SkinMap mapSkin(const Body& body, const Sight& sight, cv::Rect bounds, cv::Point2d light) {
    SkinMap map;
    map.bounds = bounds;
    map.place = cv::Mat3f(bounds.size(), cv::Vec3f());
    map.region = cv::Mat1b(bounds.size(), static_cast<unsigned char>(255));
    const double beyond =
        3.0 / (bounds.width + bounds.height) *
        (cv::norm(outlineOf(body.parts[body.mainPart]).front() - body.parts[body.mainPart].stations.back().spineMm));
    for (const Part& part : body.parts) {
        const std::size_t stride = part.stations.size() > 1000 ? 6 : 3;
        std::vector<Corner> previous;
        for (std::size_t i = 0; i < part.stations.size(); i += stride) {
            std::vector<Corner> row = rowAcross(part.stations[i], sight, light, std::max(0.15, beyond));
            for (std::size_t j = 0; !previous.empty() && j + 1 < row.size(); ++j) {
                fillTriangle(map, previous[j], previous[j + 1], row[j], static_cast<unsigned char>(part.region));
                fillTriangle(map, row[j], previous[j + 1], row[j + 1], static_cast<unsigned char>(part.region));
            }
            previous = std::move(row);
        }
    }
    return map;
}

}  // namespace render
