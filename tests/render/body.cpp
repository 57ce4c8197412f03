// SPDX-License-Identifier: GPL-3.0-or-later
#include "body.h"

#include <algorithm>
#include <cmath>

namespace render {

Profile::Profile(std::vector<cv::Point2d> knots) : knots_(std::move(knots)) {
    const std::size_t count = knots_.size();
    std::vector<double> secant(count - 1);
    for (std::size_t i = 0; i + 1 < count; ++i) {
        secant[i] = (knots_[i + 1].y - knots_[i].y) / (knots_[i + 1].x - knots_[i].x);
    }
    slopes_.assign(count, 0.0);
    slopes_.front() = secant.front();
    slopes_.back() = secant.back();
    for (std::size_t i = 1; i + 1 < count; ++i) {
        const double product = secant[i - 1] * secant[i];
        slopes_[i] = product > 0.0 ? 2.0 * product / (secant[i - 1] + secant[i]) : 0.0;
    }
}

double Profile::operator()(double place) const {
    if (place <= knots_.front().x) {
        return knots_.front().y;
    }
    if (place >= knots_.back().x) {
        return knots_.back().y;
    }
    const auto next = std::upper_bound(knots_.begin(), knots_.end(), place,
                                       [](double x, const cv::Point2d& knot) { return x < knot.x; });
    const std::size_t i = static_cast<std::size_t>(next - knots_.begin()) - 1;
    const double span = knots_[i + 1].x - knots_[i].x;
    const double t = (place - knots_[i].x) / span;
    const double t2 = t * t;
    const double t3 = t2 * t;
    return (2 * t3 - 3 * t2 + 1) * knots_[i].y + (t3 - 2 * t2 + t) * span * slopes_[i] +
           (3 * t2 - 2 * t3) * knots_[i + 1].y + (t3 - t2) * span * slopes_[i + 1];
}

std::vector<cv::Point2d> outlineOf(const Part& part) {
    std::vector<cv::Point2d> outline;
    outline.reserve(2 * part.stations.size());
    for (const Station& station : part.stations) {
        outline.push_back(station.spineMm + station.towardBack * station.backMm);
    }
    for (auto station = part.stations.rbegin(); station != part.stations.rend(); ++station) {
        outline.push_back(station->spineMm - station->towardBack * station->bellyMm);
    }
    return outline;
}

void roundEnds(Part& part, double frontMm, double rearMm) {
    const double first = part.stations.front().alongMm;
    const double last = part.stations.back().alongMm;
    for (Station& station : part.stations) {
        double factor = 1.0;
        const auto cap = [&factor](double fromEnd, double length) {
            if (fromEnd < length) {
                const double inward = 1.0 - fromEnd / length;
                factor *= std::sqrt(std::max(0.0, 1.0 - inward * inward));
            }
        };
        cap(station.alongMm - first, frontMm);
        cap(last - station.alongMm, rearMm);
        station.backMm *= factor;
        station.bellyMm *= factor;
    }
}

void smoothWidths(Part& part, int reach) {
    const std::vector<Station> original = part.stations;
    const int last = static_cast<int>(original.size()) - 1;
    for (int i = 0; i <= last; ++i) {
        const int span = std::min({reach, i, last - i});
        double back = 0.0;
        double belly = 0.0;
        double weight = 0.0;
        for (int j = -span; j <= span; ++j) {
            const double share = span + 1 - std::abs(j);
            const Station& neighbour = original[static_cast<std::size_t>(i + j)];
            back += share * neighbour.backMm;
            belly += share * neighbour.bellyMm;
            weight += share;
        }
        part.stations[static_cast<std::size_t>(i)].backMm = back / weight;
        part.stations[static_cast<std::size_t>(i)].bellyMm = belly / weight;
    }
}

double greatestDepth(const Part& part, double fromMm, double toMm) {
    double depth = 0.0;
    for (const Station& station : part.stations) {
        if (station.alongMm >= fromMm && station.alongMm <= toMm) {
            depth = std::max(depth, station.backMm + station.bellyMm);
        }
    }
    return depth;
}

std::vector<cv::Point2d> bellyLine(const Part& part, double fromMm, double toMm) {
    std::vector<cv::Point2d> line;
    for (const Station& station : part.stations) {
        if (station.alongMm >= fromMm && station.alongMm <= toMm) {
            line.emplace_back(station.alongMm, station.bellyMm);
        }
    }
    return line;
}

const Station& stationAt(const Part& part, double alongMm) {
    const auto found = std::lower_bound(part.stations.begin(), part.stations.end(), alongMm,
                                        [](const Station& station, double along) { return station.alongMm < along; });
    if (found == part.stations.end()) {
        return part.stations.back();
    }
    if (found != part.stations.begin() && alongMm - (found - 1)->alongMm < found->alongMm - alongMm) {
        return *(found - 1);
    }
    return *found;
}

Body bodyOf(const Animal& animal, const Posture& posture, View view) {
    return animal.shape == Shape::Pipefish ? pipefishBody(animal, posture, view) : seahorseBody(animal, posture, view);
}

}  // namespace render
