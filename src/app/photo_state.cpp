// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/photo_state.h"

#include <QCoreApplication>
#include <algorithm>
#include <optional>

#include "ringrule/sheets/colours.h"
#include "ringrule/sheets/landmark_mark.h"
#include "ringrule/workflow/stored_correction.h"

namespace ringrule {

bool correctedByHand(const StoredMeasure& measure) {
    const auto& remarks = measure.measurement.remarks;
    if (std::find(remarks.begin(), remarks.end(), Remark::OutlinedByHand) != remarks.end()) return true;
    return std::any_of(kLandmarkNames.begin(), kLandmarkNames.end(), [&](LandmarkName name) {
        const auto& landmark = landmarkOf(measure.landmarks, name);
        return landmark && landmark->movedByHand;
    });
}

PhotoState stateOf(const StoredMeasure& measure) {
    if (!measure.measurement.measured()) return PhotoState::CannotTell;
    if (!measure.accepted) return PhotoState::Measured;
    return correctedByHand(measure) ? PhotoState::Corrected : PhotoState::Accepted;
}

PhotoState stateOf(const std::vector<StoredMeasure>& measures) {
    std::optional<PhotoState> worst;
    for (const StoredMeasure& measure : measures) {
        if (seenNoMore(measure)) continue;
        worst = std::min(worst.value_or(PhotoState::Accepted), stateOf(measure));
    }
    return worst.value_or(PhotoState::NotMeasured);
}

QString stateWords(PhotoState state) {
    switch (state) {
        case PhotoState::NotMeasured:
            return QCoreApplication::translate("PhotoState", "Nothing measured");
        case PhotoState::CannotTell:
            return QCoreApplication::translate("PhotoState", "Cannot tell");
        case PhotoState::Measured:
            return QCoreApplication::translate("PhotoState", "To be looked at");
        case PhotoState::Corrected:
            return QCoreApplication::translate("PhotoState", "Corrected by hand");
        case PhotoState::Accepted:
            return QCoreApplication::translate("PhotoState", "Accepted");
    }
    return {};
}

QString stateSign(PhotoState state) {
    switch (state) {
        case PhotoState::NotMeasured:
            return QStringLiteral("–");
        case PhotoState::CannotTell:
            return QStringLiteral("?");
        case PhotoState::Measured:
            return QStringLiteral("○");
        case PhotoState::Corrected:
            return QStringLiteral("✎");
        case PhotoState::Accepted:
            return QStringLiteral("✓");
    }
    return {};
}

QColor stateColour(PhotoState state) {
    switch (state) {
        case PhotoState::NotMeasured:
        case PhotoState::CannotTell:
            return {colour::kVermilion};
        case PhotoState::Measured:
            return {colour::kBlue};
        case PhotoState::Corrected:
            return {colour::kPurple};
        case PhotoState::Accepted:
            return {colour::kGreen};
    }
    return {};
}

}  // namespace ringrule
