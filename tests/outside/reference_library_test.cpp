// SPDX-License-Identifier: GPL-3.0-or-later
// Areas, perimeters, medial axes and geodesic lengths of bent tubes against scikit-image's (data/skimage: the version
// and the command are in measures.csv; script/check-deep computes them anew).
#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "midline/medial_axis.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/geometry/polyline.h"

using namespace ringrule;

namespace {

/// The rows of a table by their id, comments and the header left out.
std::vector<std::vector<double>> rowsOf(const std::string& name) {
    std::ifstream file(std::filesystem::path(RINGRULE_SOURCE_DIR) / "tests/outside/data/skimage" / name);
    std::vector<std::vector<double>> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line[0] == '#' || line[0] == 'i') continue;
        std::replace(line.begin(), line.end(), ',', ' ');
        std::istringstream cells(line);
        std::vector<double> row;
        for (double value = 0.0; cells >> value;) row.push_back(value);
        rows.push_back(row);
    }
    return rows;
}

std::map<int, Outline> tubes() {
    std::map<int, Outline> outlines;
    for (const auto& row : rowsOf("tubes.csv")) {
        outlines[static_cast<int>(row.at(0))].boundaryPx.push_back({row.at(1), row.at(2)});
    }
    for (auto& [id, outline] : outlines) {
        if (signedArea<PixelFrame>(outline.boundaryPx) < 0.0)
            std::reverse(outline.boundaryPx.begin(), outline.boundaryPx.end());
        outline.areaPx2 = signedArea<PixelFrame>(outline.boundaryPx);
    }
    return outlines;
}

}  // namespace

TEST_CASE("bent tubes measure as in scikit-image") {
    const std::map<int, Outline> outlines = tubes();
    const auto expected = rowsOf("measures.csv");
    REQUIRE(expected.size() == 5);
    for (const auto& row : expected) {
        const Outline& outline = outlines.at(static_cast<int>(row.at(0)));
        INFO("tube " << row.at(0));
        // A mask counts whole pixels: along an outline of 1,600 px that is a few tens of pixels.
        CHECK(outline.areaPx2 == Approx(row.at(1)).epsilon(0.004));
        // Theirs runs round the mask's pixels and is straightened by 0.8 px.
        CHECK(perimeter<PixelFrame>(outline.boundaryPx) == Approx(row.at(2)).epsilon(0.01));
        const MedialPath path = medialPath(outline);
        CHECK(path.greatestHalfWidthPx == Approx(row.at(3)).margin(1.5));  // both count from cell to cell
        // Both walk from cell to cell through the middle, on grids of their own.
        CHECK(lengthOf<PixelFrame>(path.pathPx) == Approx(row.at(4)).epsilon(0.03));
    }
}
