// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

/// What one run of the program gave.
struct Ran {
    int status = -1;  ///< exit status; -1 when it did not exit by itself
    std::string out;
    std::string err;

    /// Standard output, one JSON object a line.
    [[nodiscard]] std::vector<nlohmann::ordered_json> lines() const;
};

struct RunOptions {
    bool interruptAtFirstOutput = false;  ///< sent an interrupt, as Ctrl+C does, once it has printed something
    std::string outputFile;               ///< standard output goes there instead of into `Ran::out`
};

/// Runs `ringrule` with these arguments and waits for it. Nothing is read from standard input.
[[nodiscard]] Ran ringrule(const std::vector<std::string>& arguments, const RunOptions& options = {});
