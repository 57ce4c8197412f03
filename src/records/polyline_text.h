// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/remark.h"

namespace ringrule {

/// A polyline as JSON text "[[x,y],…]", pixels to a hundredth: finer than an edge can be seen, a third of the size.
[[nodiscard]] std::string textOfPolyline(const std::vector<PixelPoint>& points);
[[nodiscard]] std::vector<PixelPoint> polylineOfText(const std::string& text);

/// Words as a JSON array, and back.
[[nodiscard]] std::string textOfWords(const std::vector<std::string>& words);
[[nodiscard]] std::vector<std::string> wordsOfText(const std::string& text);

[[nodiscard]] std::string textOfRemarks(const std::vector<Remark>& remarks);
/// Ids that this program does not know (a newer one's) are left out.
[[nodiscard]] std::vector<Remark> remarksOfText(const std::string& text);

}  // namespace ringrule
