// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <memory>
#include <optional>

#include "app/job_runner.h"
#include "app/photo_picture.h"
#include "ringrule/records/store.h"
#include "ringrule/workflow/measure_photo.h"

namespace ringrule {

/// What is to be read of a stored photo.
struct PhotoRequest {
    PhotoId photo;
    std::filesystem::path original;
    std::optional<Box> box;  ///< absent: picture only
    PhotoOptions options;
    std::vector<StoredMeasure> stored;  ///< whose corrections by hand are made again
};

struct PhotoAnswer {
    PhotoId photo;
    std::shared_ptr<const Photo> pixels;  ///< as the engine reads it; null without a reading
    std::optional<PhotoReading> reading;
    PhotoOptions options;
    QString problem;  ///< why there is no reading
};

/// Reads photos off the window's thread: first the picture to look at, then what the engine reads in it. Only the
/// newest request is answered.
class PhotoReader : public QObject {
    Q_OBJECT

public:
    explicit PhotoReader(QObject* parent = nullptr);
    void read(PhotoRequest request);
    [[nodiscard]] bool busy() const { return runner_.running() || waiting_ || toMeasure_; }

signals:
    void pictureRead(ringrule::PhotoId photo, const ringrule::PhotoPicture& picture);
    void answered(const ringrule::PhotoAnswer& answer);
    void failed(ringrule::PhotoId photo, const QString& sentence);

private:
    void begin();

    JobRunner runner_;
    std::optional<PhotoRequest> waiting_;    ///< its picture is wanted
    std::optional<PhotoRequest> toMeasure_;  ///< its picture was read
    PhotoId current_;
};

}  // namespace ringrule
