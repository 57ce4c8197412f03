// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/plate_tiles.h"

#include <algorithm>
#include <cmath>

#include "ringrule/error.h"

namespace ringrule {
namespace {

constexpr double kRoomMm = 3.0;  // between a cut and a marker's quiet zone

bool clearOfMarkers(const PlateLayout& plate, double atMm, bool acrossX) {
    for (const PlateMarker& marker : plate.markers) {
        const double middle = acrossX ? marker.centreMm.x : marker.centreMm.y;
        if (std::abs(middle - atMm) < marker.sideMm * 2.0 / 3.0 + kRoomMm) return false;
    }
    return true;
}

// The clear place nearest to `wantedMm` in [from, to], half-way between two numbers of the scale and between ticks.
std::optional<double> cutNear(const PlateLayout& plate, double wantedMm, double from, double to, bool acrossX) {
    std::optional<double> best;
    for (int mm = static_cast<int>(from); mm < to; ++mm) {
        const double at = mm + 0.5;
        const bool amidNumbers = mm % 10 >= 3 && mm % 10 <= 6;
        if (at < from || at > to || !amidNumbers || !clearOfMarkers(plate, at, acrossX)) continue;
        if (!best || std::abs(at - wantedMm) < std::abs(*best - wantedMm)) best = at;
    }
    return best;
}

// Cuts into `pieces` none longer than `roomMm`, or nothing.
std::optional<std::vector<double>> cutsInto(int pieces, const PlateLayout& plate, double lengthMm, double roomMm,
                                            bool acrossX) {
    std::vector<double> cuts{0.0};
    for (int k = 1; k < pieces; ++k) {
        const double furthest = cuts.back() + roomMm;
        const double nearest = lengthMm - (pieces - k) * roomMm;  // the rest must still fit
        const auto cut = cutNear(plate, lengthMm * k / pieces, nearest, furthest, acrossX);
        if (!cut || *cut <= cuts.back()) return std::nullopt;
        cuts.push_back(*cut);
    }
    if (lengthMm - cuts.back() > roomMm) return std::nullopt;
    cuts.push_back(lengthMm);
    return cuts;
}

std::optional<std::vector<double>> fewestCuts(const PlateLayout& plate, double lengthMm, double roomMm, bool acrossX) {
    if (lengthMm <= roomMm) return std::vector<double>{0.0, lengthMm};
    const double besideTab = roomMm - sheet_frame::kTabMm;
    const int least = static_cast<int>(std::ceil(lengthMm / besideTab));
    for (int pieces = std::max(2, least); pieces <= least + 3; ++pieces)
        if (auto cuts = cutsInto(pieces, plate, lengthMm, besideTab, acrossX)) return cuts;
    return std::nullopt;
}

}  // namespace

PlateTiles tilesOf(const PlateLayout& plate, Paper paper) {
    using namespace sheet_frame;
    std::optional<PlateTiles> best;
    const bool wide = plate.widthMm >= plate.heightMm;
    for (const bool landscape : {wide, !wide}) {
        const PaperSize size = paperSize(paper);
        const double across = landscape ? size.heightMm : size.widthMm, down = landscape ? size.widthMm : size.heightMm;
        const auto x = fewestCuts(plate, plate.widthMm, across - 2.0 * kMarginMm - kBarColumnMm, true);
        const auto y = fewestCuts(plate, plate.heightMm, down - 2.0 * kMarginMm - kHeaderMm - kFooterMm, false);
        if (!x || !y) continue;
        PlateTiles tiles{landscape, *x, *y};
        if (!best || tiles.sheets() < best->sheets()) best = std::move(tiles);
    }
    if (!best)
        throw Error(ErrorKind::BadUse, "a plate of this size cannot be cut clear of its markers: choose another");
    return *best;
}

}  // namespace ringrule
