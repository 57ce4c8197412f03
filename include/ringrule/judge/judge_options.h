// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace ringrule {

/// Whose sessions are looked at together, and which are left out.
struct GroupOptions {
    /// Sessions this many days apart count as one: a large bay is photographed over a few days.
    int sameSessionDays = 3;
    /// A finding is still told this long after the animal's last session: three missed monthly sessions.
    int toldForDays = 100;
    /// Sessions older than this say nothing of an animal's usual shape: a year and a half, most of a small species'
    /// life.
    int lookBackDays = 550;
    /// Tankmates are of like age when the older is at most this many times the younger's age…
    double likeAgeRatio = 1.25;
    /// …or this many days older: brood follows brood after about three weeks.
    int likeAgeDays = 21;
    /// From here on all are adults and of like age: seahorses and pipefish of middle size mature within the year.
    int adultDays = 365;
    /// Without a known age, lengths must agree within this ratio.
    double likeLengthRatio = 1.25;
    /// Known sexes are kept apart from this age on: reared H. kuda show them at about 110 days (Choo & Liew 2006).
    int sexCountsFromDays = 110;
    /// Body ratios are not compared across this length: they change near 25 mm SL in H. kuda (Choo & Liew 2006).
    double shapeChangesAtMm = 25.0;
    /// A session this soon after a change of food is not judged: weaned H. erectus lost weight for 4 to 6 days (Lin et
    /// al. 2009).
    int settleDays = 7;
    /// Food refused, and nothing taken, on so many noted days running (common practice, no source)…
    int refusedDays = 3;
    /// …is told this long after the last note.
    int refusalToldDays = 7;
    /// Tankmates from which on a robust spread is told; fewer are compared by ratio, and the finding says so.
    int robustFrom = 5;
    int fewFrom = 2;
};

/// How thin is told. Spreads and variations are in ln, so 0.03 is 3 %.
struct ThinnessOptions {
    /// Least spread of condition between healthy tankmates that is believed: six animals can look more alike than they
    /// are.
    double leastSpread = 0.04;
    /// Spread assumed with two to four tankmates, which tell none: half of the 0.10 of wild S. floridae (171 adults of
    /// both sexes, pipefish-traits data), for animals raised together.
    double spreadOfFew = 0.05;
    /// Change from session to session beyond the photos' own scatter (posture, breath, fill of the gut) that is always
    /// allowed for; more when the tankmates show more.
    double sessionVariation = 0.015;
    /// The same with up to four tankmates, who show too little of it.
    double sessionVariationOfFew = 0.015;
    /// Uncertainty of the allometric slope while the group's lengths are too alike to tell it; it is then taken as 1
    /// (depth in proportion to length). Wild S. floridae show 1.46 (males) and 1.70 (females).
    double slopeSdUntold = 0.5;
    /// Longest over shortest from which on the slope is fitted.
    double slopeToldByRatio = 1.2;
    /// Two sessions: each below its past by more than its own 95 % interval, and their mean by this many standard
    /// errors.
    double changeSds = 3.5;
    /// …and, for Thin, their mean below the tankmates by this many spreads (one-sided 95 %).
    double supportedLevelSds = 1.645;
    /// Without an own past: mean of two sessions below the tankmates by this many spreads.
    double levelSds = 5.0;
    /// One session alone: below its past by this many standard errors and below the tankmates by `singleLevelSds`…
    double singleChangeSds = 6.0;
    double singleLevelSds = 3.0;
    /// …on at least so many side photos whose depths agree within `photosAgree` (standard deviation of their mean).
    int singlePhotos = 3;
    double photosAgree = 0.02;
    /// Fewer than five tankmates: more is asked of the change.
    double changeSdsOfFew = 4.5;
};

/// How lagging is told.
struct LaggingOptions {
    /// Sessions closer than this give no rate of their own.
    int leastDays = 14;
    /// Tankmates' lengths are interpolated between sessions at most so far apart.
    int longestGapDays = 75;
    /// Least spread of growth between healthy tankmates that is believed, as part of the growth: reared H. kuda were
    /// 119.35 ± 6.04 mm at day 124, 5.1 % (Choo & Liew 2006).
    double leastSpread = 0.05;
    /// The same with two to four tankmates.
    double spreadOfFew = 0.10;
    /// Spread between healthy animals of growth over the tankmates' growth, for good…
    double growthSpread = 0.05;
    /// …and the same anew in each interval between sessions.
    double monthlySpread = 0.05;
    /// The longest run of intervals that is looked at for a lag.
    int longestWindow = 4;
    /// Two intervals or more: behind by this many standard deviations of a healthy animal's growth…
    double lagSds = 3.0;
    double lagSdsOfFew = 2.6;  ///< …with one to four tankmates
    /// …and by this many already one session ago: one photo never flags.
    double lagSdsBefore = 0.8;
    /// A lag of less than this part of the tankmates' growth does not matter.
    double leastLag = 0.15;
    /// One interval alone, on `singlePhotos` photos: behind by this many standard deviations and by more than this
    /// part.
    double singleLagSds = 5.0;
    double singleLagPart = 0.5;
    int singlePhotos = 3;
    /// Length itself, for animals that grow in step but stay small: mean of two sessions below the tankmates by so many
    /// spreads, least spread as above.
    double lengthSds = 5.0;
    /// Growth is compared only where the tankmates' own growth is this many times the smallest real change.
    double growthOverError = 2.0;
    /// Stalled: grew less than its error and less than this part of what was expected.
    double stalledPart = 0.25;
    /// An animal beyond this part of its asymptote has grown up, not stalled.
    double grownUpPart = 0.9;
};

/// When a measure itself is doubted.
struct DoubtOptions {
    /// Error of a length beyond what its photos tell, as part of it: an animal never lies twice just the same, and its
    /// own distance from the plate is not quite its tankmates'. A tenth of a percent of foreshortening is 2.6 degrees.
    double postureVariation = 0.003;
    /// Fish do not shrink: shorter than before by this many standard deviations is doubted.
    double shrinkSds = 3.5;
    /// Longer than the tankmates' growth explains by this many standard deviations and this part.
    double jumpSds = 6.0;
    double jumpPart = 0.10;
    /// A trunk that changes its condition by this much (ln) from one session to the next is doubted until confirmed.
    double depthJump = 0.35;
};

/// Every threshold of `reviewAnimals`. The reasons stand here; what they give in false alarms and delay is measured in
/// `docs/judgement.md` by `tests/judge/simulated_group_test.cpp`.
struct JudgeOptions {
    GroupOptions group;
    ThinnessOptions thinness;
    LaggingOptions lagging;
    DoubtOptions doubt;
};

}  // namespace ringrule
