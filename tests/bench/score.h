// SPDX-License-Identifier: GPL-3.0-or-later
// Errors of one measure against truth, gathered over many scenes.
#pragma once

#include <string>
#include <vector>

namespace bench {

/// Relative errors in % of truth (points for measures that already are in %), with the stated 95 % half-widths.
struct Score {
    std::vector<double> errors;
    std::vector<double> halfWidths;
    int refused = 0;

    void add(double error, double halfWidth);
};

/// "mean |e|, 95th percentile, bias, coverage with its Wilson interval, width ratio, n, refused" as a Markdown table row.
/// The width ratio is median u95 / (1.96 · RMSE): 1 is honest, above is padded.
std::string tableRow(const std::string& label, const Score& score);
std::string tableHead();

}  // namespace bench
