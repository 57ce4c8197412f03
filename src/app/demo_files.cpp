// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo_files.h"

#include <QCoreApplication>
#include <vector>

namespace ringrule {

std::optional<DemoFiles> findDemoFiles() {
    namespace fs = std::filesystem;
    const fs::path program = QCoreApplication::applicationDirPath().toStdString();
    std::vector<fs::path> places{program.parent_path() / "share" / "ringrule", fs::current_path()};
    // A program run from its build folder has the sources some folders above it.
    for (fs::path up = program; up.has_relative_path(); up = up.parent_path()) places.push_back(up);
    for (const fs::path& place : places) {
        DemoFiles files{place / "sample_images" / "house.json", place / "calibration"};
        if (fs::exists(files.house) && fs::exists(files.calibration)) return files;
    }
    return std::nullopt;
}

}  // namespace ringrule
