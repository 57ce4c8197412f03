// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/error.h"

namespace ringrule::cli {

/// What a command tells its caller; the table of `docs/command-line.md`.
enum class ExitStatus {
    Done = 0,         ///< every animal was measured
    NotMeasured = 1,  ///< a photo is bad, or an animal could not be measured
    BadInput = 2,     ///< bad use, box file, house file or collection; no room on the disk
    Fault = 3,        ///< a fault of Ringrule itself
    Stopped = 130,    ///< stopped by the user, as shells count an interrupt
};

[[nodiscard]] constexpr ExitStatus exitStatusOf(ErrorKind kind) {
    switch (kind) {
        case ErrorKind::BadPhoto:
            return ExitStatus::NotMeasured;
        case ErrorKind::Stopped:
            return ExitStatus::Stopped;
        case ErrorKind::BadUse:
        case ErrorKind::BadBox:
        case ErrorKind::BadStore:
        case ErrorKind::BadData:
        case ErrorKind::NoSpace:
            break;
    }
    return ExitStatus::BadInput;
}

}  // namespace ringrule::cli
