// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

#include "ringrule/records/box_check_history.h"
#include "ringrule/workflow/check_box.h"

namespace ringrule {

/// A check as the history of its box has it. `today` ("YYYY-MM-DD") dates a photo that does not say when it was taken.
[[nodiscard]] PastBoxCheck pastBoxCheck(const BoxCheck& check, const Box& box, const std::string& today);

/// The same as a collection keeps it. Each finding is a line "fails distance-off: …" or "note plate-tilted: …" of its
/// sentences. `photo` is the file that was checked.
[[nodiscard]] BoxCheckRecord boxCheckRecord(const BoxCheck& check, const Box& box, const std::filesystem::path& photo,
                                            bool withRod, const std::string& today);

}  // namespace ringrule
