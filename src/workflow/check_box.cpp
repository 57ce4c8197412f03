// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/check_box.h"

#include "ringrule/imaging/photo.h"
#include "ringrule/outline/find_outline.h"

namespace ringrule {
namespace {

// The longest straight rod among what hangs before the plate.
Outcome<RodReading> findRod(const Photo& photo, const Box& box, const FoundPlate& plate, const Scale& scale,
                            RodShape shape) {
    std::optional<RodReading> longest;
    Refusal refusal = readRod({}, box, scale, shape).refusal();
    const auto outlines = findOutlines(photo, box, plate, scale);
    if (!outlines) return refusal;
    for (const Outline& outline : outlines.value()) {
        const auto rod = readRod(outline.boundaryPx, box, scale, shape);
        if (rod && (!longest || rod.value().lengthMm.value > longest->lengthMm.value)) longest = rod.value();
    }
    if (!longest) return refusal;
    return *longest;
}

}  // namespace

bool BoxCheck::holds() const {
    return plate && plate->holds() && !refusal && !(rod && rod->finding);
}

BoxCheck checkBox(const std::filesystem::path& path, const Box& box, const BoxCheckOptions& options) {
    const Photo photo = loadPhoto(path);
    BoxCheck check;
    check.takenAt = photo.takenAt.value_or("");
    check.photoHash = photo.contentHash;
    check.camera = {photo.cameraMake, photo.cameraModel, photo.focalLengthMm};
    const auto plate = findPlate(photo, box);
    if (!plate) {
        check.refusal = plate.refusal();
        return check;
    }
    const auto scale = Scale::fromPlate(box, plate.value(), photo.grey.cols, photo.grey.rows);
    if (!scale) {
        check.plate = checkMisfit(box, plate.value(), photo.grey.cols, photo.grey.rows);
        check.refusal = scale.refusal();
        return check;
    }
    check.plate = checkPlate(box, plate.value(), scale.value());
    if (!options.rodMm) return check;
    const auto rod = findRod(photo, box, plate.value(), scale.value(), options.rodShape);
    if (rod) {
        check.rod = checkRod(box, *check.plate, rod.value(), *options.rodMm);
    } else {
        check.refusal = rod.refusal();
    }
    return check;
}

}  // namespace ringrule
