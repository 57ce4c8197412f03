// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace ringrule {

/// Paper that sheets are printed on at true scale.
enum class Paper { A4, Letter };

struct PaperSize {
    double widthMm = 0.0;  ///< upright: the shorter side
    double heightMm = 0.0;
};

/// ISO 216 A4, or ANSI A ("Letter", 8.5 × 11 inches).
[[nodiscard]] PaperSize paperSize(Paper paper);

/// "A4" or "Letter".
[[nodiscard]] std::string_view paperName(Paper paper);

/// The paper of that name, in small or large letters. Throws `Error(BadUse)` for any other.
[[nodiscard]] Paper paperNamed(std::string_view name);

}  // namespace ringrule
