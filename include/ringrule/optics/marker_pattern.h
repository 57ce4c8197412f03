// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace ringrule {

/// A square marker as it is printed: `cells` × `cells` cells, row by row, the black border included. Paper around it
/// must stay white for at least one cell.
struct MarkerPattern {
    int cells = 0;
    std::vector<bool> ink;

    /// Precondition: 0 ≤ row, column < cells.
    [[nodiscard]] bool inkAt(int row, int column) const {
        return ink[static_cast<std::size_t>(row) * static_cast<std::size_t>(cells) + static_cast<std::size_t>(column)];
    }
};

/// The marker with that id of OpenCV's predefined dictionary, e.g. "DICT_4X4_50"; nothing when there is no such
/// dictionary or no such id in it.
[[nodiscard]] std::optional<MarkerPattern> markerPattern(std::string_view dictionary, int id);

/// How many markers the dictionary has; 0 when there is no such dictionary.
[[nodiscard]] int markerCount(std::string_view dictionary);

}  // namespace ringrule
