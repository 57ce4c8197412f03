// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/demo_overlays.h"

#include "cli/overlay_files.h"

namespace ringrule::cli {

void DemoOverlays::take(const PhotoResult& result) {
    if (which_ == "none" || !result.reading) return;
    const std::string day = result.reading->takenAt.value_or("undated").substr(0, 10);
    if (day != day_) {
        if (which_ == "all") draw();
        waiting_.clear();
        day_ = day;
    }
    waiting_.push_back(*result.reading);
}

void DemoOverlays::finish() {
    draw();
}

void DemoOverlays::draw() {
    std::map<int, std::string> labels;
    for (const Animal& animal : store_.animals()) {
        if (animal.card) labels[*animal.card] = animal.code;
    }
    OverlayFiles overlays(folder_ / day_);
    for (const PhotoReading& reading : waiting_) overlays.write(reading, labels);
    waiting_.clear();
}

}  // namespace ringrule::cli
