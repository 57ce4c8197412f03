// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/photo_reader.h"

#include "app/stored_correction.h"
#include "ringrule/error.h"
#include "ringrule/imaging/photo.h"

namespace ringrule {
namespace {

PhotoAnswer answerTo(const PhotoRequest& request) {
    PhotoAnswer answer;
    answer.photo = request.photo;
    answer.options = request.options;
    if (!request.box) {
        answer.problem = QObject::tr(
            "The collection has no box file of this name: add it on the page Box, then the photo can be corrected.");
        return answer;
    }
    try {
        auto pixels = std::make_shared<const Photo>(loadPhoto(request.original));
        answer.reading = withStoredCorrections(*pixels, measurePhoto(request.original, *request.box, request.options),
                                               request.stored, request.options);
        answer.pixels = std::move(pixels);
    } catch (const Error& error) {
        answer.problem = QString::fromStdString(error.what());
    }
    return answer;
}

}  // namespace

PhotoReader::PhotoReader(QObject* parent) : QObject(parent) {
    connect(&runner_, &JobRunner::finished, this, &PhotoReader::begin);
    connect(&runner_, &JobRunner::failed, this, [this](const QString& sentence, bool stopped) {
        if (!stopped && !waiting_) emit failed(current_, sentence);
    });
}

void PhotoReader::read(PhotoRequest request) {
    waiting_ = std::move(request);
    toMeasure_.reset();
    begin();
}

void PhotoReader::begin() {
    if (runner_.running()) return;
    if (waiting_) {
        PhotoRequest request = std::move(*waiting_);
        waiting_.reset();
        current_ = request.photo;
        runner_.start<PhotoPicture>(
            tr("Reading the photo"), [path = request.original](const Progress&) { return readPicture(path); },
            [this, request](const PhotoPicture& picture) {
                if (waiting_) return;
                toMeasure_ = request;
                emit pictureRead(request.photo, picture);
            });
        return;
    }
    if (!toMeasure_) return;
    PhotoRequest request = std::move(*toMeasure_);
    toMeasure_.reset();
    runner_.start<PhotoAnswer>(
        tr("Reading the photo"), [request](const Progress&) { return answerTo(request); },
        [this](const PhotoAnswer& answer) {
            if (!waiting_) emit answered(answer);
        });
}

}  // namespace ringrule
