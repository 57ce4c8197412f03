// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ringrule {

/// A point in an animal's life that is due at a length or at an age (one of the two is there).
struct SpeciesMilestone {
    std::string name;  ///< "first-larger-food", "sexing", "next-tank", or the keeper's own
    std::optional<double> lengthMm;
    std::optional<double> ageDays;
    std::string source;
};

/// What is usual: for a reader to compare with, never a limit.
struct UsualRange {
    std::string what;  ///< e.g. "length at birth"
    std::string unit;
    double low = 0.0;
    double high = 0.0;
    std::string source;
};

/// Mass in grams = a · length^b, length in millimetres.
struct LengthWeight {
    double a = 0.0;
    double b = 0.0;
    std::string source;
};

/// Published growth in standard length over a range of age: what a whole tank is compared with.
struct GrowthReference {
    double fromDays = 0.0;
    double toDays = 0.0;
    double mmPerDay = 0.0;
    double lowMmPerDay = 0.0;  ///< below this a tank is told to grow slowly
    std::string sex;           ///< "female", "male", or empty: where the sex is not known or makes no difference
    std::string source;
};

/// What the tool knows of a species; each fact with its source.
struct SpeciesFacts {
    std::string species;   ///< scientific name; empty: what holds where nothing else is known
    std::string protocol;  ///< how its standard length is defined, "lourie-1999" or "dawson-1985"; may be empty
    std::vector<SpeciesMilestone> milestones;
    std::vector<UsualRange> usual;
    std::optional<LengthWeight> lengthWeight;
    std::vector<GrowthReference> growth;
};

/// The facts of a species among `all`: its own, with the milestones that it does not name taken from those of the empty
/// name.
[[nodiscard]] SpeciesFacts factsOf(const std::vector<SpeciesFacts>& all, std::string_view species);

}  // namespace ringrule
