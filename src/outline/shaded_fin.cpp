// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/shaded_fin.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace ringrule {
namespace {

constexpr double kCoreShare = 0.3;  ///< of the way from the body's lighter third to the plate: surely body
constexpr int kLeastPx = 12;        ///< smaller parts are the edge's own blur
constexpr int kLeastContactPx = 4;
constexpr double kSameShare = 0.3;   ///< of that step: parts of one fin differ by less
constexpr double kOpenShare = 0.42;  ///< of its border: a fin is open to the plate along more than this
constexpr double kLeastFin = 0.05;   ///< of the square of the body's half-width: smaller parts are lines between scales
/// The same of fins about as dim as the mask's own threshold, of which it holds a rim or less: the mask is drawn looser
/// for them, and its looser rim along the belly is dim too, but thin, and open on one side only.
constexpr double kLeastDim = 0.25;
constexpr double kDimStepShare = 0.8;
constexpr double kDimOpenShare = 0.6;
constexpr int kBlurredPx = 4;  ///< width of a fin's blurred edge
constexpr int kEyeRimPx = 4;
constexpr int kBesidePx = 6;  ///< what lies beside a part, and what goes on from it, is looked for within this
constexpr int kCrumbReachPx = 8;
constexpr double kSmoothPx = 1.0;
/// Of the step from body to plate, in a pixel: a blurred edge between them has 0.2 to 0.3.
constexpr double kEdgeShare = 0.06;
constexpr double kStepShare = 0.6;  ///< of the step from the part to the plate: a step from body to fin is higher

cv::Mat1b grown(const cv::Mat1b& mask, int reachPx) {
    cv::Mat1b wide;
    cv::dilate(mask, wide, cv::Mat1b::ones(2 * reachPx + 1, 2 * reachPx + 1));
    return wide;
}

cv::Mat1b without(const cv::Mat1b& mask, const cv::Mat1b& taken) {
    cv::Mat1b rest = mask.clone();
    rest.setTo(0, taken);
    return rest;
}

double quantileIn(const cv::Mat1f& light, const cv::Mat1b& mask, double share) {
    std::vector<float> values;
    for (int y = 0; y < light.rows; ++y) {
        for (int x = 0; x < light.cols; ++x) {
            if (mask(y, x) != 0) values.push_back(light(y, x));
        }
    }
    if (values.empty()) return 0.0;
    const auto at = values.begin() + static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
    std::nth_element(values.begin(), at, values.end());
    return static_cast<double>(*at);
}

/// Where the light changes as fast as it does at an edge.
cv::Mat1b edgesIn(const cv::Mat1f& light, double step) {
    cv::Mat1f smooth;
    cv::GaussianBlur(light, smooth, {}, kSmoothPx);
    cv::Mat1f dx;
    cv::Mat1f dy;
    cv::Scharr(smooth, dx, CV_32F, 1, 0, 1.0 / 32.0);
    cv::Scharr(smooth, dy, CV_32F, 0, 1, 1.0 / 32.0);
    cv::Mat1f slope;
    cv::magnitude(dx, dy, slope);
    cv::Mat1b edges;
    cv::compare(slope, kEdgeShare * step, edges, cv::CMP_GT);
    return edges;
}

/// A part of the body in the shade, or a fin.
struct Part {
    cv::Rect bounds;  ///< with room for what lies beside it
    cv::Mat1b mask;   ///< within its bounds
    double light = 0.0;
    int areaPx = 0;
    bool fin = false;
};

/// What a part must be to be a fin by itself; what goes on from it is more of it.
struct FinRule {
    double leastPx = 0.0;  ///< area
    double step = 0.0;     ///< into it from the body, of the step from it to the plate
    double open = 0.0;     ///< share of the border of it and what goes on from it that lies on the plate
    bool goesOn = true;
};

/// Whether the light steps from the body beside it into the part, by much of what it then has left to the plate.
bool stepsInto(const cv::Mat1f& light, const cv::Mat1b& plain, const Part& part, double plate, double step) {
    cv::Mat1b beside;
    cv::bitwise_and(without(grown(part.mask, kBesidePx - 1), grown(part.mask, 1)), plain(part.bounds), beside);
    if (cv::countNonZero(beside) < kLeastContactPx) return false;
    return part.light - cv::mean(light(part.bounds), beside)[0] > step * (plate - part.light);
}

/// Whether a part lies beside a fin and is as light: more of it, beyond a ray.
bool goesOn(const Part& fin, const Part& part, double plate) {
    const cv::Rect both = fin.bounds & part.bounds;
    if (both.empty() || std::abs(part.light - fin.light) >= kSameShare * (plate - fin.light)) return false;
    cv::Mat1b shared;
    cv::bitwise_and(grown(fin.mask, kBesidePx)(both - fin.bounds.tl()), part.mask(both - part.bounds.tl()), shared);
    return cv::countNonZero(shared) > 0;
}

cv::Rect boundsOf(const cv::Mat& stats, int label, int marginPx, const cv::Size& within) {
    const auto at = [&](int what) { return stats.at<int>(label, what); };
    return cv::Rect(at(cv::CC_STAT_LEFT) - marginPx, at(cv::CC_STAT_TOP) - marginPx,
                    at(cv::CC_STAT_WIDTH) + 2 * marginPx, at(cv::CC_STAT_HEIGHT) + 2 * marginPx) &
           cv::Rect({0, 0}, within);
}

std::vector<Part> partsOf(const cv::Mat1f& light, const cv::Mat1b& plain) {
    cv::Mat1i labels;
    cv::Mat stats;
    cv::Mat centroids;
    const int count = cv::connectedComponentsWithStats(plain, labels, stats, centroids, 8, CV_32S);
    std::vector<Part> parts;
    for (int label = 1; label < count; ++label) {
        if (stats.at<int>(label, cv::CC_STAT_AREA) < kLeastPx) continue;
        Part part;
        part.bounds = boundsOf(stats, label, kBesidePx, light.size());
        cv::compare(labels(part.bounds), label, part.mask, cv::CMP_EQ);
        part.light = cv::mean(light(part.bounds), part.mask)[0];
        part.areaPx = stats.at<int>(label, cv::CC_STAT_AREA);
        parts.push_back(std::move(part));
    }
    return parts;
}

cv::Mat1b finsAmong(std::vector<Part> parts, const cv::Mat1f& light, const cv::Mat1b& plain, double plate,
                    const FinRule& rule) {
    cv::Mat1b fins(light.size(), static_cast<unsigned char>(0));
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        parts[i].fin = parts[i].areaPx >= rule.leastPx && stepsInto(light, plain, parts[i], plate, rule.step);
        if (parts[i].fin) found.push_back(i);
    }
    while (!found.empty()) {
        const Part& fin = parts[found.back()];
        found.pop_back();
        fins(fin.bounds) |= fin.mask;
        for (std::size_t i = 0; rule.goesOn && i < parts.size(); ++i) {
            if (parts[i].fin || !goesOn(fin, parts[i], plate)) continue;
            parts[i].fin = true;
            found.push_back(i);
        }
    }
    return fins;
}

/// Takes away pieces of the mask that hold nothing of the core: what is left of a fin's rim.
void dropCrumbs(const cv::Mat1b& core, const cv::Mat1b& near, cv::Mat1b& body) {
    cv::Mat1i labels;
    const int count = cv::connectedComponents(body, labels, 8, CV_32S);
    std::vector<bool> keeps(static_cast<std::size_t>(count), false);
    std::vector<bool> touched(static_cast<std::size_t>(count), false);
    for (int y = 0; y < labels.rows; ++y) {
        for (int x = 0; x < labels.cols; ++x) {
            const auto label = static_cast<std::size_t>(labels(y, x));
            if (core(y, x) != 0) keeps[label] = true;
            if (near(y, x) != 0) touched[label] = true;
        }
    }
    for (int y = 0; y < labels.rows; ++y) {
        for (int x = 0; x < labels.cols; ++x) {
            const auto label = static_cast<std::size_t>(labels(y, x));
            if (label > 0 && touched[label] && !keeps[label]) body(y, x) = 0;
        }
    }
}

/// Those of `fins` that are open to the plate along more than `share` of their border.
cv::Mat1b openAmong(const cv::Mat1b& fins, const cv::Mat1b& body, double share) {
    cv::Mat1i labels;
    cv::Mat stats;
    cv::Mat centroids;
    const int count = cv::connectedComponentsWithStats(fins, labels, stats, centroids, 8, CV_32S);
    cv::Mat1b open(fins.size(), static_cast<unsigned char>(0));
    for (int label = 1; label < count; ++label) {
        const cv::Rect bounds = boundsOf(stats, label, 1, fins.size());
        cv::Mat1b fin;
        cv::compare(labels(bounds), label, fin, cv::CMP_EQ);
        const cv::Mat1b border = without(grown(fin, 1), fin);
        if (cv::countNonZero(without(border, body(bounds))) > share * cv::countNonZero(border)) open(bounds) |= fin;
    }
    return open;
}

/// The fins of a mask with their blurred edges.
cv::Mat1b finsOf(const FinSearch& seen, const cv::Mat1b& mask, const cv::Mat1b& core, double lighter, double plate,
                 const FinRule& rule) {
    const cv::Mat1b rest = without(without(mask, grown(core, 1)), grown(seen.eyes, kEyeRimPx));
    cv::Mat1b plain;
    cv::morphologyEx(without(rest, edgesIn(seen.light, plate - lighter)), plain, cv::MORPH_OPEN, cv::Mat1b::ones(2, 2));
    cv::Mat1b body;
    cv::bitwise_or(plain, core, body);
    const cv::Mat1b fins = finsAmong(partsOf(seen.light, plain), seen.light, body, plate, rule);
    cv::Mat1b whole;
    cv::bitwise_and(grown(fins, kBlurredPx), rest, whole);
    return openAmong(whole, mask, rule.open);
}

}  // namespace

void dropFins(const FinSearch& seen, cv::Mat1b& body) {
    const double lighter = quantileIn(seen.light, body, 0.35);
    const double plate = quantileIn(seen.light, without(grown(body, 6), grown(body, 2)), 0.5);
    cv::Mat1b core;
    cv::compare(seen.light, lighter + kCoreShare * (plate - lighter), core, cv::CMP_LT);
    cv::bitwise_and(core, body, core);
    const double squarePx = seen.halfWidthPx * seen.halfWidthPx;
    cv::Mat1b fins = finsOf(seen, body, core, lighter, plate, {kLeastFin * squarePx, kStepShare, kOpenShare, true});
    fins |= finsOf(seen, seen.loose, core, lighter, plate, {kLeastDim * squarePx, kDimStepShare, kDimOpenShare, false});
    body.setTo(0, fins);
    dropCrumbs(core, grown(fins, kCrumbReachPx), body);
}

}  // namespace ringrule
