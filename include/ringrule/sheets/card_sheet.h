// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/sheets/paper.h"

namespace ringrule {

/// The dictionary of animal cards; a card's number is its marker's id.
inline constexpr std::string_view kCardDictionary = "DICT_5X5_1000";

/// The numbers in a list such as "1-12,15,20-24", in its order. Throws `Error(BadUse)` for anything else, for a number
/// beyond the dictionary (0 to 999) and for one that comes twice.
[[nodiscard]] std::vector<int> cardNumbersIn(std::string_view text);

/// Names by number from a table of two columns, "number,name" (or with semicolons or tabs between), UTF-8, with or
/// without that head; names may be quoted. Throws `Error(BadData)` naming the line for a line that is no such pair or a
/// number that comes twice.
[[nodiscard]] std::map<int, std::string> readCardNames(const std::filesystem::path& csv);

struct CardSheetOptions {
    Paper paper = Paper::A4;
    double markerMm = 10.0;            ///< side of the black square, 6 to 40 mm
    std::map<int, std::string> names;  ///< written under the number; a name too long is cut
};

/// Writes cards with marker, number and name as PDF, as many a sheet as fit, with lines to cut along. Returns the
/// number of sheets. Throws `Error(BadUse)` without numbers or for a marker's side out of bounds, `Error(NoSpace)`.
int writeCards(const std::vector<int>& numbers, const std::filesystem::path& pdf, const CardSheetOptions& options = {});

}  // namespace ringrule
