// SPDX-License-Identifier: GPL-3.0-or-later
// What one photo gave against its truth.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "accuracy_scene.h"
#include "ringrule/workflow/measure_photo.h"

namespace bench {

/// One measure of one photo.
struct Row {
    std::string measure;
    bool relative = true;  ///< a length; else % of depth already
    double truth = 0.0;
    std::optional<double> value, u95;
};

/// One photo.
struct PhotoScore {
    std::uint64_t seed = 0;
    Stand stand = Stand::Stated;
    render::Shape shape = render::Shape::Pipefish;
    render::View view = render::View::Side;
    render::Tail tail = render::Tail::Open;
    bool lens = true;
    bool large = false;  ///< 400 px long and 40 px deep, or more
    double megapixels = 0.0, lengthMm = 0.0, pxPerMm = 0.0;
    std::vector<Row> rows;
    int animals = 0;  ///< found in the photo, which shows one
    bool measured = false, swapped = false, shapeWrong = false, doubtSaid = false;
    std::string refusal, remarks;
    ringrule::Measurement measurement;  ///< to be joined with the second view of a pair

    [[nodiscard]] bool closedTail() const;
    /// Relative error of the worst main measure in %: length, depth, width.
    [[nodiscard]] double worstPercent() const;
    /// "seahorse, side, tail open"
    [[nodiscard]] std::string kind() const;
    /// Tab-separated lines, one a measure.
    [[nodiscard]] std::string lines() const;
};

PhotoScore scoreOf(const AccuracyScene& drawn, std::uint64_t seed, Stand stand, const ringrule::PhotoReading& reading);

/// Girth from the side view and the second view of one animal, added to the second one's rows.
void addGirthFromTwoViews(const PhotoScore& side, PhotoScore& second);

}  // namespace bench
