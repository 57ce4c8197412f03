// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/interrupt.h"

#include <csignal>
#include <iostream>
#include <string>

#include <unistd.h>

namespace ringrule::cli {
namespace {

volatile std::sig_atomic_t interrupted = 0;

extern "C" void onInterrupt(int signal) {
    interrupted = 1;
    std::signal(signal, SIG_DFL);
}

}  // namespace

void listenForInterrupt() {
    std::signal(SIGINT, onInterrupt);
}

Progress terminalProgress() {
    const bool shown = ::isatty(STDERR_FILENO) == 1;
    return [shown](double fraction, std::string_view stage) {
        if (shown) {
            std::cerr << "\r\x1b[K";  // back to the line's beginning, line cleared
            if (fraction < 1.0) std::cerr << static_cast<int>(100.0 * fraction) << " % " << stage << std::flush;
        }
        return interrupted == 0;
    };
}

}  // namespace ringrule::cli
