// SPDX-License-Identifier: GPL-3.0-or-later
// How well a measure did over many scenes.
#pragma once

#include <span>
#include <string>
#include <vector>

namespace bench {

/// One measure in one scene: error and interval in the same unit (% of truth, points of % of depth, or px).
struct Answer {
    double error = 0.0;
    double halfWidth = 0.0;  ///< of the 95 % interval
    bool inDoubt = false;    ///< said to be: its interval was widened by a share of the measure
};

/// Errors of one measure in one kind of scene, with the half-widths that were stated for them.
struct Score {
    std::vector<Answer> answers;
    int refused = 0;

    [[nodiscard]] double meanAbs() const;
    [[nodiscard]] double percentile95() const;  ///< of the absolute errors
    [[nodiscard]] double bias() const;
    [[nodiscard]] double covered() const;  ///< share whose interval holds the truth
    /// Median half-width over 1.96 times the root mean square error.
    [[nodiscard]] double padding() const;
    /// The same of the answers that were not said to be in doubt: one fold in a thousand is most of the mean square.
    [[nodiscard]] double paddingOfSure() const;
};

/// 95 % interval of a share after Wilson (1927, J. Am. Stat. Assoc. 22:209).
struct ShareInterval {
    double low = 0.0;
    double high = 1.0;
};
ShareInterval wilson(double share, std::size_t count);

/// Rows of a Markdown table: errors only, or coverage too.
std::string errorHead(const std::string& unit);
std::string errorRow(const std::string& label, const Score& score);
std::string coverageHead();
std::string coverageRow(const std::string& label, const Score& score);

}  // namespace bench
