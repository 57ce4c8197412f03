// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "ringrule/optics/box_history.h"
#include "ringrule/records/store.h"

namespace ringrule {

/// A finding as a line of a kept check's sentences: "fails distance-off: …" or "note plate-tilted: …".
[[nodiscard]] std::string boxFindingLine(const BoxFinding& finding);

/// A kept check as `judgeBox` reads it. A line of its sentences that is no finding is why the photo could not tell.
[[nodiscard]] PastBoxCheck pastBoxCheck(const BoxCheckRecord& record);

/// The checks of a box that a collection keeps, in order of time.
[[nodiscard]] std::vector<PastBoxCheck> boxHistory(const Store& store, const std::string& boxName);

}  // namespace ringrule
