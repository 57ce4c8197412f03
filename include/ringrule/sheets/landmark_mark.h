// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "ringrule/midline/landmarks.h"

class QPainter;
class QPainterPath;
class QPointF;

namespace ringrule {

/// Every landmark from head to tail.
inline constexpr std::array kLandmarkNames{LandmarkName::SnoutTip, LandmarkName::Coronet, LandmarkName::HeadEnd,
                                           LandmarkName::TrunkEnd, LandmarkName::TailEnd};

/// Plain words, e.g. "snout tip".
[[nodiscard]] std::string_view landmarkWords(LandmarkName name);

/// The landmark of this name, absent when it was not seen.
[[nodiscard]] const std::optional<Landmark>& landmarkOf(const Landmarks& landmarks, LandmarkName name);

/// The colour of its mark, 0xRRGGBB.
[[nodiscard]] unsigned landmarkColour(LandmarkName name);

/// The mark of a landmark about the origin, `radius` from centre to rim. Each name has its own shape: circle, triangle,
/// square, diamond, upturned triangle.
[[nodiscard]] QPainterPath landmarkMark(LandmarkName name, double radius);

/// Draws the mark at `at`, ringed in white so that it shows on light and dark ground.
void paintLandmarkMark(QPainter& painter, LandmarkName name, const QPointF& at, double radius);

}  // namespace ringrule
