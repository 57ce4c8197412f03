// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/photo_reader.h"

#include <QTimer>
#include <algorithm>

#include "ringrule/error.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/workflow/empty_box_photo.h"
#include "ringrule/workflow/stored_correction.h"

namespace ringrule {
namespace {

/// Photos of twelve megapixels take 64 MB each.
constexpr std::size_t kMostKept = 4;
constexpr int kDrawFirstMs = 20;

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
        PhotoOptions options = request.options;
        if (request.emptyBoxPhoto) options.emptyBox = readEmptyBox(*request.emptyBoxPhoto, *request.box);
        answer.reading = withStoredCorrections(*pixels, measurePhoto(request.original, *request.box, options),
                                               request.stored, request.options);
        if (!request.kept.empty() && answer.reading->scale)
            answer.corrected =
                withKeptCorrections(*pixels, *answer.reading, request.stored, request.kept, request.options);
        answer.pixels = std::move(pixels);
    } catch (const Error& error) {
        answer.problem = QString::fromStdString(error.what());
    }
    return answer;
}

}  // namespace

PhotoReader::PhotoReader(QObject* parent) : QObject(parent) {
    connect(&runner_, &JobRunner::finished, this, &PhotoReader::goOn);
    connect(&aheadRunner_, &JobRunner::finished, this, &PhotoReader::readAhead);
    connect(&runner_, &JobRunner::failed, this, [this](const QString& sentence, bool stopped) {
        if (!stopped && !waiting_) emit failed(runningFor_, sentence);
    });
}

bool PhotoReader::holds(const std::filesystem::path& original) const {
    return std::any_of(kept_.begin(), kept_.end(), [&](const Kept& kept) { return kept.original == original; });
}

void PhotoReader::keep(const std::filesystem::path& original, const PhotoPicture& picture) {
    std::erase_if(kept_, [&](const Kept& kept) { return kept.original == original; });
    kept_.push_front({original, picture});
    if (kept_.size() > kMostKept) kept_.pop_back();
}

void PhotoReader::readAhead() {
    if (aheadRunner_.running() || waiting_) return;
    std::erase_if(ahead_, [this](const std::filesystem::path& path) { return holds(path); });
    if (ahead_.empty()) return;
    const std::filesystem::path path = ahead_.front();
    ahead_.erase(ahead_.begin());
    // A photo that cannot be read says so when it is looked at.
    aheadRunner_.start<PhotoPicture>(
        tr("Reading the photo"), [path](const Progress&) { return readPicture(path); },
        [this, path](const PhotoPicture& picture) { keep(path, picture); });
}

void PhotoReader::read(PhotoRequest request, std::vector<std::filesystem::path> ahead) {
    ahead_ = std::move(ahead);
    toMeasure_.reset();
    const auto kept =
        std::find_if(kept_.begin(), kept_.end(), [&](const Kept& each) { return each.original == request.original; });
    if (kept == kept_.end()) {
        waiting_ = std::move(request);
    } else {
        waiting_.reset();
        current_ = request.photo;
        const PhotoPicture picture = kept->picture;
        keep(request.original, picture);
        toMeasure_ = std::move(request);
        emit pictureRead(toMeasure_->photo, picture);
    }
    goOn();
}

void PhotoReader::goOn() {
    // Measuring takes every core: a picture that is there is drawn first.
    if (waiting_)
        begin();
    else
        QTimer::singleShot(kDrawFirstMs, this, &PhotoReader::begin);
}

void PhotoReader::begin() {
    if (runner_.running()) return;
    if (waiting_) {
        PhotoRequest request = std::move(*waiting_);
        waiting_.reset();
        current_ = request.photo;
        runningFor_ = request.photo;
        runner_.start<PhotoPicture>(
            tr("Reading the photo"), [path = request.original](const Progress&) { return readPicture(path); },
            [this, request](const PhotoPicture& picture) {
                keep(request.original, picture);
                // Another photo may have been asked for, and shown at once, meanwhile.
                if (waiting_ || toMeasure_ || current_ != request.photo) return;
                toMeasure_ = request;
                emit pictureRead(request.photo, picture);
            });
        return;
    }
    readAhead();
    if (!toMeasure_) return;
    PhotoRequest request = std::move(*toMeasure_);
    toMeasure_.reset();
    runningFor_ = request.photo;
    runner_.start<PhotoAnswer>(
        tr("Reading the photo"), [request](const Progress&) { return answerTo(request); },
        [this](const PhotoAnswer& answer) {
            if (!waiting_) emit answered(answer);
        });
}

}  // namespace ringrule
