// SPDX-License-Identifier: GPL-3.0-or-later
// The animal as geometry: swept parts of known spine and width, fins, eyes, landmarks.
#pragma once

#include "scene.h"

namespace render {

// One cross-section of a swept part, in the body frame.
struct Station {
    cv::Point2d spineMm;
    cv::Point2d towardBack;  // unit normal, from belly to back
    double alongMm = 0.0;    // arc length on the spine
    double backMm = 0.0, bellyMm = 0.0;
};

enum class Region { Trunk, Head, Coronet, Pouch, Eye };

struct Part {
    Region region = Region::Trunk;
    std::vector<Station> stations;
};

struct Fin {
    std::vector<cv::Point2d> outlineMm;
    std::vector<std::array<cv::Point2d, 2>> raysMm;
    double opacity = 0.3;
};

struct Eye {
    cv::Point2d centreMm;
    double radiusMm = 0.0;
    bool mouth = false;  // the open end of a snout that points at the camera
};

struct Landmarks {
    std::optional<cv::Point2d> snoutTip, coronet, headEnd, trunkEnd, tailEnd;
};

struct Body {
    std::vector<Part> parts;   // drawn in this order
    std::size_t mainPart = 0;  // carries trunk and tail (pipefish: the head too)
    std::vector<Fin> fins;
    std::vector<Eye> eyes;
    Landmarks landmarks;
    double headStartMm = 0.0, trunkStartMm = 0.0, tailStartMm = 0.0, tailTipMm = 0.0;  // along mainPart
    double headLengthMm = 0.0, trunkLengthMm = 0.0, tailLengthMm = 0.0;
    std::optional<double> heightMm;
    std::vector<cv::Point2d> straightBelly;  // trunk: place along, distance from the unbent axis to the belly
    double gillMm = -1.0;                    // pipefish: where the gill cover ends, along mainPart
};

// A value given at a few places, interpolated by monotone cubics (Fritsch & Carlson 1980).
class Profile {
public:
    explicit Profile(std::vector<cv::Point2d> knots);
    double operator()(double place) const;

private:
    std::vector<cv::Point2d> knots_;
    std::vector<double> slopes_;
};

// Stations every `stepMm` along a spine that starts at `start` in direction `startAngle`
// (radians, 0 = right, growing from right to down) and turns by `curvature(along)` per mm.
template <typename Curvature>
std::vector<Station> sweep(cv::Point2d start, double startAngle, double fromMm, double toMm, int steps,
                           Curvature curvature);

// Closed outline of a part: along the back, round the rear, along the belly.
std::vector<cv::Point2d> outlineOf(const Part& part);

// Shrinks a part's first and last stations to half ellipses of this length.
void roundEnds(Part& part, double frontMm, double rearMm);

// Smooths the widths of a part along the spine over ± `reach` stations.
void smoothWidths(Part& part, int reach);

// Greatest depth (back + belly) of the main part between two places.
double greatestDepth(const Part& part, double fromMm, double toMm);

// Belly line of a part between two places, as it would be without any bend.
std::vector<cv::Point2d> bellyLine(const Part& part, double fromMm, double toMm);

// The station nearest to a place along the spine.
const Station& stationAt(const Part& part, double alongMm);

// Builds the whole animal for the view of the scene.
Body bodyOf(const Animal& animal, const Posture& posture, View view);
Body pipefishBody(const Animal& animal, const Posture& posture, View view);
Body seahorseBody(const Animal& animal, const Posture& posture, View view);

template <typename Curvature>
std::vector<Station> sweep(cv::Point2d start, double startAngle, double fromMm, double toMm, int steps,
                           Curvature curvature) {
    std::vector<Station> stations;
    stations.reserve(static_cast<std::size_t>(steps) + 1);
    const double step = (toMm - fromMm) / steps;
    cv::Point2d place = start;
    double angle = startAngle;
    for (int i = 0; i <= steps; ++i) {
        const double along = fromMm + step * i;
        stations.push_back({place, {std::sin(angle), -std::cos(angle)}, along, 0.0, 0.0});
        const double half = angle + 0.5 * step * curvature(along + 0.25 * step);
        place += step * cv::Point2d(std::cos(half), std::sin(half));
        angle += step * curvature(along + 0.5 * step);
    }
    return stations;
}

}  // namespace render
