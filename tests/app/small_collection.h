// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

namespace ringrule {

/// A fresh copy of a collection of three pipefish (P1 to P3, cards 1 to 3, in tank "bay-3") with one session of three
/// demo photos, measured once a run. Gone when the program ends.
[[nodiscard]] std::filesystem::path smallCollection();

/// The session's photos, for another session.
[[nodiscard]] std::filesystem::path photosOfSmallCollection();

}  // namespace ringrule
