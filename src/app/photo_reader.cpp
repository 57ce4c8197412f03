// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/photo_reader.h"

#include "ringrule/error.h"
#include "ringrule/sheets/landmark_mark.h"

namespace ringrule {
namespace {

PhotoAnswer answerTo(const PhotoRequest& request) {
    PhotoAnswer answer;
    answer.photo = request.photo;
    answer.picture = readPicture(request.original);
    if (!request.box) {
        answer.problem = QObject::tr("The collection's calibration folder has no such box: landmarks cannot be moved.");
        return answer;
    }
    try {
        answer.reading = withStoredMoves(measurePhoto(request.original, *request.box, request.options), request.stored);
    } catch (const Error& error) {
        answer.problem = QString::fromStdString(error.what());
    }
    return answer;
}

}  // namespace

PhotoReading withStoredMoves(PhotoReading reading, const std::vector<StoredMeasure>& stored) {
    if (!reading.scale) return reading;
    for (const StoredMeasure& measure : stored)
        for (AnimalReading& animal : reading.animals) {
            if (animal.index != measure.animalIndex) continue;
            for (const LandmarkName name : kLandmarkNames)
                if (const auto& landmark = landmarkOf(measure.landmarks, name); landmark && landmark->movedByHand)
                    animal = withLandmarkMoved(reading, animal, name, landmark->atPx);
        }
    return reading;
}

PhotoReader::PhotoReader(QObject* parent) : QObject(parent) {
    connect(&runner_, &JobRunner::finished, this, &PhotoReader::begin);
    connect(&runner_, &JobRunner::failed, this, [this](const QString& sentence, bool stopped) {
        if (!stopped && !waiting_) emit failed(current_, sentence);
    });
}

void PhotoReader::read(PhotoRequest request) {
    waiting_ = std::move(request);
    begin();
}

void PhotoReader::begin() {
    if (runner_.running() || !waiting_) return;
    PhotoRequest request = std::move(*waiting_);
    waiting_.reset();
    current_ = request.photo;
    runner_.start<PhotoAnswer>(
        tr("Reading the photo"), [request](const Progress&) { return answerTo(request); },
        [this](const PhotoAnswer& answer) {
            if (!waiting_) emit answered(answer);
        });
}

}  // namespace ringrule
