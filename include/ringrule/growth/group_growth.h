// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/growth/reference.h"
#include "ringrule/outcome.h"
#include "ringrule/statistics/mixed_model.h"

namespace ringrule {

/// One animal's length at one age (or days since arrival, for the whole group alike).
struct AnimalLength {
    std::int64_t animal = 0;
    double ageDays = 0.0;
    double lengthMm = 0.0;
    double weight = 1.0;  ///< 1/sd² in mm⁻², relative to the others: all 1 scatter alike in mm
};

enum class LengthScale {
    Length,
    LogLength,
    Reciprocal  ///< −1/length: a curve that saturates there is logistic
};

/// How length (or its logarithm) goes with age: the covariate of intercept and slope.
enum class AgeCurve {
    Straight,    ///< age
    SquareRoot,  ///< √age
    Logarithm,   ///< ln age; only when every age is one day or more
    Quadratic,   ///< age and age²; animals differ in intercept and in the slope of age
    Saturating,  ///< −e^(−k·age), k common to the group: von Bertalanffy on length, Gompertz on its
                 ///< logarithm, logistic on its reciprocal
};

[[nodiscard]] std::string_view lengthScaleName(LengthScale scale);

/// A length in mm on a scale, the length of a value there, and the derivative of the length by it.
[[nodiscard]] double onScale(LengthScale scale, double lengthMm);
[[nodiscard]] double lengthFrom(LengthScale scale, double value);
[[nodiscard]] double lengthByScale(LengthScale scale, double lengthMm);

[[nodiscard]] std::string_view ageCurveName(AgeCurve curve);

/// A value with its 95 % interval, in mm or in what the function says.
struct Interval95 {
    double value = 0.0;
    double lower = 0.0;
    double upper = 0.0;
};

struct GroupGrowthCandidate {
    LengthScale scale = LengthScale::Length;
    AgeCurve curve = AgeCurve::Straight;
    double aicc = 0.0;    ///< of length in mm, whatever the scale, by maximum likelihood
    double perDay = 0.0;  ///< k of a saturating curve
};

/// How a saturating curve's covariate goes with the age: (−e^(−k·days) − centre)/spread, days from the youngest age.
struct Saturation {
    double perDay = 0.0;  ///< k
    double centre = 0.0;
    double spread = 1.0;
};

/// Each animal's own line with a bend of its own, drawn to the group's bend the more the less its own is known (best
/// linear unbiased prediction), the scatter pooled over animals. The bend of a saturating curve is ln of the animal's
/// own k over the group's, and the curve is followed as it runs with that k (Lindstrom & Bates 1990).
struct OwnBends {
    struct Curve {
        bool told = false;                 ///< seen at two ages or more
        std::array<double, 3> at{};        ///< of 1, the covariate and its bend (0 for one that went into `logRate`)
        std::array<double, 9> inverse{};   ///< (X'X + Λ)⁻¹, row by row
        std::array<double, 3> byCommon{};  ///< derivative of `at` by the common bend
        double logRate = 0.0;              ///< ln(own k / the group's k) of a saturating curve
    };
    std::vector<Curve> of;        ///< in the order of the animals
    double variance = 0.0;        ///< of a value of weight 1
    double freedom = 0.0;         ///< its degrees of freedom
    double spread = 0.0;          ///< standard deviation of bends between animals
    double commonVariance = 0.0;  ///< of the common bend
};

/// Growth of a group whose animals differ: a mixed model with each animal's own intercept and slope.
struct GroupGrowth {
    LengthScale scale = LengthScale::Length;
    AgeCurve curve = AgeCurve::Straight;
    MixedFit fit;                       ///< by restricted likelihood
    MixedFit ownFit;                    ///< each animal's own line, drawn to no mean, where that could be fitted
    bool leansOnGroup = false;          ///< animals are told from `fit`; else those seen twice or more from `ownFit`
    std::optional<OwnBends> bends;      ///< where animals bend differently: they are then told from these
    std::vector<int> timesSeen;         ///< ages of each animal
    std::vector<std::int64_t> animals;  ///< in the order of the fit's groups
    std::vector<GroupGrowthCandidate> candidates;  ///< least AICc first
    bool showsTurn = false;                        ///< seen at ages enough to show growth that is about to slow down
    double youngestDays = 0.0;                     ///< ages between which the curve rests on data
    double oldestDays = 0.0;
    double perDay = 0.0;         ///< k of a saturating curve
    double centre = 0.0;         ///< the covariate's origin, and…
    double spread = 1.0;         ///< …unit, both on the curve's own scale
    double errorVariance = 1.0;  ///< of a single session of 1 mm in units of σ², in mm², and…
    double errorPower = 0.0;     ///< …the power of length that it goes with: 0 alike in mm, 2 in proportion
    double weight = 1.0;         ///< Akaike weight among the curves that the data do not tell apart, and…
    std::vector<GroupGrowth>
        others;           ///< …those others (without others of their own): figures below are over all of them
    std::string caution;  ///< empty, or a sentence a reader of the bands must know

    /// The middle animal (on the logarithmic scale the median) with the interval of that curve.
    [[nodiscard]] Interval95 meanAt(double ageDays) const;
    /// A further animal's length as it would be measured: 95 % of animals lie within.
    [[nodiscard]] Interval95 newAnimalAt(double ageDays) const;
    /// An animal of the group. Where animals bend differently: its own bent curve (`bends`). Else, in a group of twelve
    /// or more, its curve drawn to the mean, the more the less was seen of it; in a smaller one, whose spread is too
    /// little known to lean on, its own line, with the scatter of all. Nothing for a stranger.
    [[nodiscard]] std::optional<Interval95> animalAt(std::int64_t animal, double ageDays) const;
    /// The same for a further photo session: the interval holds the scatter of a single session as well.
    [[nodiscard]] std::optional<Interval95> measuredAt(std::int64_t animal, double ageDays) const;
    /// An animal's growth between two ages: mm/day and specific growth rate of length in % a day, from its own curve.
    /// Precondition: toDays > fromDays.
    [[nodiscard]] std::optional<Interval95> rateMmPerDay(std::int64_t animal, double fromDays, double toDays) const;
    [[nodiscard]] std::optional<Interval95> sgrPercentPerDay(std::int64_t animal, double fromDays, double toDays) const;

    [[nodiscard]] std::optional<std::size_t> indexOf(std::int64_t animal) const;
    /// The fit that tells this animal.
    [[nodiscard]] const MixedFit& fitOf(std::size_t index) const;
    [[nodiscard]] MixedPoint pointAt(double ageDays) const;
    /// The derivatives of an own curve at an age by what it is made of, as in `OwnBends::Curve::at`.
    [[nodiscard]] std::array<double, 3> bendAt(const OwnBends::Curve& own, double ageDays) const;
    /// The value of an own curve at an age, on the fit's scale.
    [[nodiscard]] double fittedBy(const OwnBends::Curve& own, double ageDays) const;
    [[nodiscard]] double lengthOf(double fitted) const;  ///< from the fit's scale to mm
    /// Of a single session at a fitted value, in units of σ².
    [[nodiscard]] double errorVarianceAt(double fitted) const;
};

/// Scale and curve chosen by maximum likelihood and AICc of the mean (with the Jacobian of the logarithm, so that
/// scales compare), then fitted by restricted likelihood. Several lengths of one animal at one age count as their mean:
/// repeat photos are no further animals. Refuses with "no-length" (a length that is not above zero, or an age that is
/// not a number), "too-few-animals" (fewer than three), "too-few-ages", "too-few-points" (no animal seen three times,
/// or too few values for any curve) or as `fitMixed` does.
[[nodiscard]] Outcome<GroupGrowth> groupGrowth(std::span<const AnimalLength> lengths);

/// The lengths of a group's sessions, one an animal and session, each with its `lengthWeight`, `without` one animal (a
/// key of nobody: all). Ages are `Observation::ageDays`; when no animal's age is known, days since its first session.
/// Animals of unknown age among animals of known age are left out. Refuses with "dates-reversed" when an animal's age
/// goes down while the date goes up.
[[nodiscard]] Outcome<std::vector<AnimalLength>> lengthsOf(std::span<const GroupMember> group, std::int64_t without);

}  // namespace ringrule
