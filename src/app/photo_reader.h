// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <deque>
#include <memory>
#include <optional>

#include "app/job_runner.h"
#include "app/kept_drafts.h"
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
    std::optional<std::filesystem::path> emptyBoxPhoto{};  ///< with which the session was measured
    std::vector<StoredMeasure> stored;                     ///< whose corrections by hand are made again
    std::vector<KeptCorrection> kept;                      ///< corrections of an earlier run that were not accepted
};

struct PhotoAnswer {
    PhotoId photo;
    std::shared_ptr<const Photo> pixels;  ///< as the engine reads it; null without a reading
    std::optional<PhotoReading> reading;
    PhotoOptions options;
    QString problem;                      ///< why there is no reading
    std::optional<DraftState> corrected;  ///< as the kept corrections leave it
};

/// Reads photos off the window's thread: first the picture to look at, then what the engine reads in it. Only the
/// newest request is answered. Pictures that will be asked for next are read ahead, and a few are kept.
class PhotoReader : public QObject {
    Q_OBJECT

public:
    explicit PhotoReader(QObject* parent = nullptr);
    /// `ahead`: the photos that are likely asked for next. A picture that is at hand is told before this returns.
    void read(PhotoRequest request, std::vector<std::filesystem::path> ahead = {});
    [[nodiscard]] bool busy() const { return runner_.running() || waiting_ || toMeasure_; }
    /// Whether the picture of a photo is at hand.
    [[nodiscard]] bool holds(const std::filesystem::path& original) const;

signals:
    void pictureRead(ringrule::PhotoId photo, const ringrule::PhotoPicture& picture);
    void answered(const ringrule::PhotoAnswer& answer);
    void failed(ringrule::PhotoId photo, const QString& sentence);

private:
    struct Kept {
        std::filesystem::path original;
        PhotoPicture picture;
    };

    void goOn();
    void begin();
    void readAhead();
    void keep(const std::filesystem::path& original, const PhotoPicture& picture);

    JobRunner runner_;
    JobRunner aheadRunner_;
    std::vector<std::filesystem::path> ahead_;
    std::deque<Kept> kept_;                  ///< the one used last in front
    std::optional<PhotoRequest> waiting_;    ///< its picture is wanted
    std::optional<PhotoRequest> toMeasure_;  ///< its picture was read
    PhotoId current_;                        ///< asked for last
    PhotoId runningFor_;                     ///< what `runner_` reads
};

}  // namespace ringrule
