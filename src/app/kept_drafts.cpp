// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/kept_drafts.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSaveFile>
#include <algorithm>

#include "ringrule/measure/measure.h"
#include "ringrule/sheets/landmark_mark.h"
#include "ringrule/workflow/stored_correction.h"

namespace ringrule {
namespace {

constexpr const char* kFormat = "ringrule-draft/1";

bool has(const std::vector<Remark>& remarks, Remark remark) {
    return std::find(remarks.begin(), remarks.end(), remark) != remarks.end();
}

QJsonArray jsonOf(PixelPoint point) {
    return {point.x, point.y};
}

PixelPoint pointIn(const QJsonValue& json) {
    return {json.toArray().at(0).toDouble(), json.toArray().at(1).toDouble()};
}

QJsonObject jsonOf(const KeptCorrection& correction) {
    const StoredMeasure& measure = correction.measure;
    QJsonArray outline;
    for (const PixelPoint& point : measure.outlinePx) outline.append(jsonOf(point));
    QJsonArray marks;
    for (const LandmarkName name : kLandmarkNames)
        if (const auto& landmark = landmarkOf(measure.landmarks, name); landmark && landmark->movedByHand)
            marks.append(QJsonObject{{"name", static_cast<int>(name)}, {"at_px", jsonOf(landmark->atPx)}});
    return {{"replaces", static_cast<qint64>(measure.id.value)},
            {"index", measure.animalIndex},
            {"outline_px", outline},
            {"marks", marks},
            {"by_hand", has(measure.measurement.remarks, Remark::OutlinedByHand)},
            {"tail_closed", has(measure.measurement.remarks, Remark::TailClosed)},
            {"brooding", correction.brooding}};
}

KeptCorrection correctionIn(const QJsonObject& json) {
    KeptCorrection correction;
    StoredMeasure& measure = correction.measure;
    measure.id.value = json["replaces"].toInteger();
    measure.animalIndex = json["index"].toInt();
    const QJsonArray outline = json["outline_px"].toArray(), marks = json["marks"].toArray();
    for (const auto point : outline) measure.outlinePx.push_back(pointIn(point));
    for (const auto each : marks) {
        const QJsonObject mark = each.toObject();
        const int name = mark["name"].toInt(-1);
        for (const LandmarkName known : kLandmarkNames) {
            if (static_cast<int>(known) != name) continue;
            Landmark landmark;
            landmark.atPx = pointIn(mark["at_px"]);
            landmark.movedByHand = true;
            landmarkIn(measure.landmarks, known) = landmark;
        }
    }
    if (json["by_hand"].toBool()) measure.measurement.remarks.push_back(Remark::OutlinedByHand);
    if (json["tail_closed"].toBool()) measure.measurement.remarks.push_back(Remark::TailClosed);
    correction.brooding = json["brooding"].toBool();
    return correction;
}

}  // namespace

std::vector<KeptCorrection> correctionsOf(const DraftState& state) {
    std::vector<KeptCorrection> corrections;
    for (std::size_t k = 0; k < state.reading.animals.size(); ++k) {
        const DraftMark& mark = state.marks[k];
        if (!mark.changed) continue;
        KeptCorrection correction{correctionOf({}, state.reading.animals[k], {}), mark.brooding};
        correction.measure.id = mark.stored.value_or(MeasureId{});
        corrections.push_back(std::move(correction));
    }
    return corrections;
}

DraftState withKeptCorrections(const Photo& photo, const PhotoReading& reading,
                               const std::vector<StoredMeasure>& stored, const std::vector<KeptCorrection>& kept,
                               const PhotoOptions& options) {
    std::vector<StoredMeasure> standing;
    for (const KeptCorrection& correction : kept) standing.push_back(correction.measure);
    // Animals that were not corrected stand as they are stored.
    for (const StoredMeasure& measure : stored)
        if (std::none_of(kept.begin(), kept.end(),
                         [&](const KeptCorrection& each) { return each.measure.id == measure.id; }))
            standing.push_back(measure);
    DraftState state;
    state.reading = withStoredCorrections(photo, reading, standing, options);
    state.marks.resize(state.reading.animals.size());
    const auto places = placesOf(standing, state.reading);
    for (std::size_t k = 0; k < standing.size(); ++k) {
        if (!places[k]) continue;
        DraftMark& mark = state.marks[*places[k]];
        if (standing[k].id.value != 0) mark.stored = standing[k].id;
        if (k >= kept.size()) continue;
        mark.changed = true;
        mark.brooding = kept[k].brooding;
        auto& remarks = state.reading.animals[*places[k]].measurement.remarks;
        std::erase(remarks, Remark::NotOnGirth);
        if (mark.brooding) remarks.push_back(Remark::NotOnGirth);
    }
    return state;
}

std::filesystem::path KeptDrafts::fileOf(const std::string& contentHash) const {
    return folder_ / (contentHash + ".json");
}

bool KeptDrafts::holds(const std::string& contentHash) const {
    std::error_code error;
    return std::filesystem::exists(fileOf(contentHash), error);
}

void KeptDrafts::keep(const std::string& contentHash, const std::vector<KeptCorrection>& corrections) const {
    std::error_code error;
    if (corrections.empty()) {
        std::filesystem::remove(fileOf(contentHash), error);
        return;
    }
    std::filesystem::create_directories(folder_, error);
    QJsonArray animals;
    for (const KeptCorrection& correction : corrections) animals.append(jsonOf(correction));
    // Written beside and put in place at once: what was kept before stays whole until then.
    QSaveFile file(QString::fromStdString(fileOf(contentHash).string()));
    if (!file.open(QIODevice::WriteOnly)) return;
    file.write(QJsonDocument(QJsonObject{{"format", kFormat}, {"animals", animals}}).toJson(QJsonDocument::Compact));
    file.commit();
}

std::vector<KeptCorrection> KeptDrafts::of(const std::string& contentHash) const {
    std::vector<KeptCorrection> corrections;
    QFile file(QString::fromStdString(fileOf(contentHash).string()));
    if (!file.open(QIODevice::ReadOnly)) return corrections;
    const QJsonObject json = QJsonDocument::fromJson(file.readAll()).object();
    if (json["format"].toString() != QLatin1String(kFormat)) return corrections;
    const QJsonArray animals = json["animals"].toArray();
    for (const auto animal : animals) corrections.push_back(correctionIn(animal.toObject()));
    return corrections;
}

}  // namespace ringrule
