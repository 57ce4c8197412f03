// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "ringrule/optics/lens_calibration.h"
#include "ringrule/workflow/measure_session.h"

namespace ringrule {

struct LensTask {
    std::vector<std::filesystem::path> photos;
    std::filesystem::path boxFile;
    std::optional<Chessboard> board;  ///< none: the photos show the box's own plate, in air
    bool write = true;                ///< false: the box file stays as it is
    LensCalibrationOptions options;
};

/// Calibrates a lens from photos and puts it into the box file, unless it is refused. A photo that cannot be read is
/// told as one without a board. Throws `Error(BadBox)`, `Error(NoSpace)`, `Error(Stopped)`.
[[nodiscard]] LensReport calibrateBoxLens(const LensTask& task, const Progress& progress = {});

}  // namespace ringrule
