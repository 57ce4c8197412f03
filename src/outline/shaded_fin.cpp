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
constexpr double kSameShare = 0.3;  ///< of that step: parts of one fin differ by less
constexpr int kEyeRimPx = 4;
constexpr int kCrumbReachPx = 8;
constexpr double kSmoothPx = 1.0;
constexpr double kEdgeShare = 0.06;  ///< of the step from body to plate, in a pixel: a blurred edge between them has 0.2 to 0.3
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
    cv::Mat1b mask;
    double light = 0.0;
    bool fin = false;
};

/// Whether the light steps from the body beside it into the part, by much of what it then has left to the plate.
bool stepsInto(const cv::Mat1f& light, const cv::Mat1b& plain, const Part& part, double plate) {
    cv::Mat1b beside;
    cv::bitwise_and(without(grown(part.mask, 5), grown(part.mask, 1)), plain, beside);
    if (cv::countNonZero(beside) < kLeastContactPx) return false;
    return part.light - cv::mean(light, beside)[0] > kStepShare * (plate - part.light);
}

/// Whether a part lies beside a fin and is as light: more of it, beyond a ray.
bool goesOn(const Part& fin, const Part& part, double plate) {
    cv::Mat1b both;
    cv::bitwise_and(grown(fin.mask, 6), part.mask, both);
    return cv::countNonZero(both) > 0 && std::abs(part.light - fin.light) < kSameShare * (plate - fin.light);
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
        cv::compare(labels, label, part.mask, cv::CMP_EQ);
        part.light = cv::mean(light, part.mask)[0];
        parts.push_back(std::move(part));
    }
    return parts;
}

cv::Mat1b finsAmong(std::vector<Part> parts, const cv::Mat1f& light, const cv::Mat1b& plain, double plate) {
    cv::Mat1b fins(light.size(), static_cast<unsigned char>(0));
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        parts[i].fin = stepsInto(light, plain, parts[i], plate);
        if (parts[i].fin) found.push_back(i);
    }
    while (!found.empty()) {
        const Part& fin = parts[found.back()];
        found.pop_back();
        fins |= fin.mask;
        for (std::size_t i = 0; i < parts.size(); ++i) {
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

}  // namespace

void dropFins(const cv::Mat1f& light, const cv::Mat1b& eyes, cv::Mat1b& body) {
    const double lighter = quantileIn(light, body, 0.35);
    const double plate = quantileIn(light, without(grown(body, 6), grown(body, 2)), 0.5);
    cv::Mat1b core;
    cv::compare(light, lighter + kCoreShare * (plate - lighter), core, cv::CMP_LT);
    cv::bitwise_and(core, body, core);
    const cv::Mat1b rest = without(without(body, grown(core, 1)), grown(eyes, kEyeRimPx));
    cv::Mat1b plain;
    cv::morphologyEx(without(rest, edgesIn(light, plate - lighter)), plain, cv::MORPH_OPEN, cv::Mat1b::ones(2, 2));
    cv::Mat1b seen;
    cv::bitwise_or(plain, core, seen);
    const cv::Mat1b fins = finsAmong(partsOf(light, plain), light, seen, plate);
    // With their blurred edges.
    cv::Mat1b whole;
    cv::bitwise_and(grown(fins, 4), rest, whole);
    body.setTo(0, whole);
    dropCrumbs(core, grown(whole, kCrumbReachPx), body);
}

}  // namespace ringrule
