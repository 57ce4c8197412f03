// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace ringrule {

/// A sentence with its figures apart, so that another language can put them where they belong.
struct Sentence {
    std::string pattern{};              ///< English, with "%1" to "%9" where the values go
    std::vector<std::string> values{};  ///< figures, names and days, as they are to be read

    [[nodiscard]] bool empty() const { return pattern.empty(); }
    /// In English.
    [[nodiscard]] std::string text() const;
};

[[nodiscard]] Sentence sentence(std::string pattern, std::vector<std::string> values = {});

/// The sentences in English, one after the other.
[[nodiscard]] std::string textOf(const std::vector<Sentence>& sentences);

}  // namespace ringrule
