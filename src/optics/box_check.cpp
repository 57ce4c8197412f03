// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/box_check.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstdio>

#include "optics/camera_fit.h"
#include "optics/plate_markers.h"
#include "optics/scale_uncertainty.h"
#include "ringrule/optics/water.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {
namespace {

constexpr double kObliqueDegrees = 10.0;
// Corners of a flat plate, true to its file, lie within a tenth of a pixel or two; a print of 600 dpi within 0.04 mm.
constexpr double kMostCornerPx = 0.4;
constexpr double kMostCornerMm = 0.08;

std::string fixed(double value, int digits) {
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "%.*f", digits, value);
    return text.data();
}

std::vector<MarkerResidual> residualsOf(const Box& box, const FoundPlate& plate, const Scale& scale) {
    std::vector<MarkerResidual> residuals;
    for (const FoundMarker& marker : plate.markers) {
        const PlateMarker* printed = markerOfPlate(box.plate, marker.id);
        if (printed == nullptr) continue;
        const auto corners = markerCornersMm(*printed);
        double squares = 0.0;
        for (std::size_t k = 0; k < 4; ++k)
            squares += std::pow(distance(scale.pixelFromPlate(corners[k]), marker.cornersPx[k]), 2);
        residuals.push_back({marker.id, std::sqrt(0.25 * squares)});
    }
    std::sort(residuals.begin(), residuals.end(), [](const auto& a, const auto& b) { return a.id < b.id; });
    return residuals;
}

double pxPerMmOf(const Box& box, const Scale& scale) {
    const PlatePoint a{0.0, 0.5 * box.plate.heightMm}, b{box.plate.widthMm, 0.5 * box.plate.heightMm};
    return distance(scale.pixelFromPlate(a), scale.pixelFromPlate(b)) / box.plate.widthMm;
}

bool has(const Scale& scale, Remark remark) {
    const auto& remarks = scale.remarks();
    return std::find(remarks.begin(), remarks.end(), remark) != remarks.end();
}

BoxFinding unevenPlate(double byMm) {
    return {BoxFault::PlateUneven, true,
            "The markers lie " + fixed(byMm, 2) +
                " mm off the box file's plate. The plate is bent or unevenly printed, or zoom or focus changed since "
                "the lens photos."};
}

BoxFinding strayMarker(int id, double byMm) {
    return {BoxFault::MarkerOff, true,
            "Marker " + std::to_string(id) + " lies " + fixed(byMm, 2) +
                " mm from where the others put it. Press the plate flat there, or print it anew."};
}

double limitPx(double pxPerMm) {
    return std::max(kMostCornerPx, kMostCornerMm * pxPerMm);
}

void judgeMarkers(double pxPerMm, PlateCheck& check) {
    const auto seen = std::ssize(check.markers);
    if (seen < check.expectedMarkers)
        check.findings.push_back({BoxFault::MarkersMissing, 2 * seen < check.expectedMarkers,
                                  std::to_string(check.expectedMarkers - seen) +
                                      " of the plate's markers were not seen. Clean and uncover them."});
    std::vector<double> all;
    for (const MarkerResidual& marker : check.markers) all.push_back(marker.rmsPx);
    const auto worst = std::max_element(check.markers.begin(), check.markers.end(),
                                        [](const auto& a, const auto& b) { return a.rmsPx < b.rmsPx; });
    const double limit = limitPx(pxPerMm);
    if (worst != check.markers.end() && worst->rmsPx > 2.0 * limit && worst->rmsPx > 2.5 * median(all)) {
        check.findings.push_back(strayMarker(worst->id, worst->rmsPx / pxPerMm));
    } else if (check.cornerRmsPx > limit) {
        check.findings.push_back(unevenPlate(check.cornerRmsMm));
    }
}

void judgeLens(const Scale& scale, PlateCheck& check) {
    if (has(scale, Remark::NoLens))
        check.findings.push_back({BoxFault::NotThisCamera, false,
                                  "The box file has no lens: distance and tilt cannot be told. Calibrate the lens."});
    for (const Remark remark : {Remark::LensOtherSize, Remark::LensOtherCamera, Remark::LensOtherSetting}) {
        if (has(scale, remark))
            check.findings.push_back({BoxFault::NotThisCamera, true, std::string(remarkSentence(remark))});
    }
}

void judgeTilt(const Scale& scale, PlateCheck& check) {
    if (!has(scale, Remark::PlateTilted)) return;
    const std::string by = check.tiltDegrees ? fixed(*check.tiltDegrees, 1) + " degrees" : "clearly";
    check.findings.push_back({BoxFault::PlateTilted, false,
                              "The camera stands " + by + " oblique to the plate. Square it up: below " +
                                  fixed(kObliqueDegrees, 0) + " degrees is good."});
}

void judgeDistance(PlateCheck& check) {
    if (!check.cameraToWindowMm || !check.statedCameraToWindowMm) return;
    const double seen = *check.cameraToWindowMm, stated = *check.statedCameraToWindowMm;
    const double off = std::abs(seen / stated - 1.0);
    if (off <= 2.0 * kDistancePriorSd) return;
    check.findings.push_back(
        {BoxFault::DistanceOff, true,
         "The plate looks as from " + fixed(seen, 0) + " mm before the window, the box file says " + fixed(stated, 0) +
             " mm. Measure it: if the camera was moved, move it back or correct the box file; if not, the plate is "
             "printed at another scale (measure its bar with a steel rule) or zoom or focus changed (calibrate the "
             "lens)."});
}

// Reduced distance from the camera to the animal's plane, with the distance as seen if it was.
double reducedMm(const Box& box, double cameraToWindowMm) {
    Media media = *box.media;
    media.cameraToWindowMm = cameraToWindowMm;
    return layersOf(media, box.animalPlane.distanceFromPlateMm).reducedDepthMm(0.0);
}

// What single cause would make the rod read so, most telling first.
std::string causesOf(const Box& box, const PlateCheck& plate, double error) {
    std::string causes = "Measure the plate's bar with a steel rule: printed at " + fixed(100.0 / (1.0 + error), 1) +
                         " % it would explain this; then correct the box file for it.";
    if (!box.media) return causes + " Or refraction is not corrected: add the box's media to its file.";
    if (plate.cameraToWindowMm && plate.statedCameraToWindowMm) {
        const double distanceOff =
            reducedMm(box, *plate.cameraToWindowMm) / reducedMm(box, *plate.statedCameraToWindowMm) - 1.0;
        const bool agrees = std::abs(distanceOff - error) < 2.0 * kDistancePriorSd * std::abs(error) + 0.005;
        if (std::abs(error) > 0.01 && agrees)
            return "The distance is off by as much: the plate's print is at fault. " + causes;
    }
    const double index = waterIndex(box.media->salinityPpt, box.media->temperatureC);
    const double from = box.animalPlane.distanceFromPlateMm;
    const double to = from + error * index * reducedMm(box, box.media->cameraToWindowMm);
    if (to >= 0.0 && to <= box.media->waterToPlateMm)
        causes += " If the print is true, the rod hangs " + fixed(to, 1) + " mm before the plate, not " +
                  fixed(from, 1) + ": measure that, and correct animal_plane or move what holds the animals.";
    return causes;
}

}  // namespace

std::string_view boxFaultId(BoxFault fault) {
    switch (fault) {
        case BoxFault::MarkersMissing:
            return "markers-missing";
        case BoxFault::MarkerOff:
            return "marker-off";
        case BoxFault::PlateUneven:
            return "plate-uneven";
        case BoxFault::PlateTilted:
            return "plate-tilted";
        case BoxFault::PlateUpsideDown:
            return "plate-upside-down";
        case BoxFault::DistanceOff:
            return "distance-off";
        case BoxFault::NotThisCamera:
            return "not-this-camera";
        case BoxFault::LengthOff:
            break;
    }
    return "length-off";
}

std::vector<BoxFault> allBoxFaults() {
    return {BoxFault::MarkersMissing,  BoxFault::MarkerOff,   BoxFault::PlateUneven,   BoxFault::PlateTilted,
            BoxFault::PlateUpsideDown, BoxFault::DistanceOff, BoxFault::NotThisCamera, BoxFault::LengthOff};
}

bool PlateCheck::holds() const {
    return expectedMarkers > 0 &&
           std::none_of(findings.begin(), findings.end(), [](const BoxFinding& finding) { return finding.fails; });
}

PlateCheck checkPlate(const Box& box, const FoundPlate& plate, const Scale& scale) {
    PlateCheck check;
    check.markers = residualsOf(box, plate, scale);
    check.expectedMarkers = plate.expectedMarkers;
    check.cornerRmsPx = scale.cornerRmsPx();
    const double pxPerMm = pxPerMmOf(box, scale);
    check.cornerRmsMm = check.cornerRmsPx / pxPerMm;
    check.tiltDegrees = scale.tiltDegrees();
    check.cameraToWindowMm = scale.cameraToWindowMm();
    if (box.media) check.statedCameraToWindowMm = box.media->cameraToWindowMm;
    judgeMarkers(pxPerMm, check);
    judgeLens(scale, check);
    judgeDistance(check);
    judgeTilt(scale, check);
    if (has(scale, Remark::PlateUpsideDown))
        check.findings.push_back(
            {BoxFault::PlateUpsideDown, false, std::string(remarkSentence(Remark::PlateUpsideDown))});
    return check;
}

PlateCheck checkMisfit(const Box& box, const FoundPlate& plate, int imageWidthPx, int imageHeightPx) {
    PlateCheck check;
    check.expectedMarkers = plate.expectedMarkers;
    check.cornerRmsPx = plate.cornerRmsPx;
    const double pxPerMm =
        distance(plate.cornersPx[0], plate.cornersPx[2]) / std::hypot(box.plate.widthMm, box.plate.heightMm);
    check.cornerRmsMm = plate.cornerRmsPx / pxPerMm;
    for (const FoundMarker& marker : plate.markers) {
        FoundPlate others = plate;
        std::erase_if(others.markers, [&marker](const FoundMarker& other) { return other.id == marker.id; });
        const auto scale = Scale::fromPlate(box, others, imageWidthPx, imageHeightPx);
        if (!scale || scale.value().cornerRmsPx() > limitPx(pxPerMm)) continue;
        check.markers = residualsOf(box, plate, scale.value());
        const auto stray = std::find_if(check.markers.begin(), check.markers.end(),
                                        [&marker](const auto& residual) { return residual.id == marker.id; });
        check.findings.push_back(strayMarker(marker.id, stray->rmsPx / pxPerMm));
        return check;
    }
    check.findings.push_back(unevenPlate(check.cornerRmsMm));
    return check;
}

RodCheck checkRod(const Box& box, const PlateCheck& plate, const RodReading& reading, double statedMm) {
    assert(statedMm > 0.0);
    RodCheck check;
    check.statedMm = statedMm;
    check.reading = reading;
    check.relativeError = reading.lengthMm.value / statedMm - 1.0;
    check.trueWithin = std::abs(check.relativeError) + 1.96 * reading.lengthMm.sdRandom / statedMm;
    if (std::abs(reading.lengthMm.value - statedMm) > reading.lengthMm.u95()) {
        const std::string way = check.relativeError > 0.0 ? " too long. " : " too short. ";
        check.finding = BoxFinding{BoxFault::LengthOff, true,
                                   "The rod reads " + fixed(100.0 * std::abs(check.relativeError), 2) + " %" + way +
                                       causesOf(box, plate, check.relativeError)};
    }
    return check;
}

}  // namespace ringrule
