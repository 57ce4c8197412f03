// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <span>

#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// How the shared parts of two estimates go together. `Common`: one session and one set-up, so the shared errors are
/// the same error and cancel in differences and ratios. `Separate`: different set-ups or sessions, so they add in
/// quadrature.
enum class SharedPart { Common, Separate };

/// a + b, to first order (JCGM 100:2008, 5.1 and 5.2). Random parts are always independent.
[[nodiscard]] Estimate sum(const Estimate& a, const Estimate& b, SharedPart shared);
/// a − b, to first order.
[[nodiscard]] Estimate difference(const Estimate& a, const Estimate& b, SharedPart shared);
/// a · b, to first order.
[[nodiscard]] Estimate product(const Estimate& a, const Estimate& b, SharedPart shared);
/// a / b, to first order. Not known when b is zero.
[[nodiscard]] Estimate ratio(const Estimate& a, const Estimate& b, SharedPart shared);
/// factor · a, the factor being exact.
[[nodiscard]] Estimate scaled(const Estimate& a, double factor);
/// a + offset, the offset being exact.
[[nodiscard]] Estimate shifted(const Estimate& a, double offset);
/// ln a, to first order. Not known unless a > 0.
[[nodiscard]] Estimate logarithm(const Estimate& a);
/// e^a, to first order.
[[nodiscard]] Estimate exponential(const Estimate& a);

/// The plain mean of the known estimates: the random part shrinks with their number, the shared part does so only when
/// it is `Separate`. Not known when none is.
[[nodiscard]] Estimate mean(std::span<const Estimate> values, SharedPart shared);

/// f of several estimates, to first order; derivatives by central differences over one standard deviation, so that a
/// curve within the error is averaged. The random parts are independent; the shared parts go together as told.
/// Not known when an input is not.
[[nodiscard]] Estimate propagate(const std::function<double(std::span<const double>)>& f,
                                 std::span<const Estimate> inputs, SharedPart shared);

}  // namespace ringrule
