// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QUndoGroup>
#include <functional>
#include <map>
#include <memory>

#include "app/photo_draft.h"
#include "app/photo_list_model.h"
#include "app/photo_reader.h"
#include "app/photo_view.h"

namespace ringrule {

/// One animal of the photo that is looked at: as it is stored, or as it was changed since.
struct DeskAnimal {
    std::optional<StoredMeasure> stored;  ///< absent: a new one, not stored yet
    std::optional<std::size_t> place;     ///< in the draft's reading; absent: it cannot be corrected (yet)
    bool changed = false;
    bool brooding = false;
    Measurement measurement;              ///< that which counts now
    std::optional<Estimate> readAgainMm;  ///< standard length read today, where it differs from the stored one
    ShownAnimal shown;
};

/// The photo that is looked at, its draft, and every correction of it. Corrections are made here and by undo only.
class PhotoDesk : public QObject {
    Q_OBJECT

public:
    explicit PhotoDesk(Collection& collection, QObject* parent = nullptr);
    ~PhotoDesk() override;

    /// Shows another photo: reads it and its animals off the window's thread. `next`: the photos likely shown after it.
    void show(const PhotoListModel::Row& row, const std::vector<StoredPhoto>& next = {});
    /// The same photo, its measures read from the store again.
    void update(const PhotoListModel::Row& row);
    void clear();
    /// Drafts of a collection that is no longer open are dropped.
    void forgetAll();

    [[nodiscard]] bool busy() const { return reader_.busy(); }
    /// Whether the photo is there to draw its animals over.
    [[nodiscard]] bool hasPicture() const { return hasPicture_; }
    /// Corrections of the photo that is shown; when there are none (or another page is in front), changes of the
    /// collection.
    [[nodiscard]] QUndoGroup& undoGroup() { return undoGroup_; }
    void setInFront(bool inFront);
    [[nodiscard]] PhotoDraft* draft() const;
    /// The photo's pixels for tracing; null while it is read, or when it cannot be.
    [[nodiscard]] std::shared_ptr<const Photo> pixels() const { return pixels_; }
    /// Left to right. Stays as it is until `changed`.
    [[nodiscard]] const std::vector<DeskAnimal>& animals() const { return animals_; }
    /// Whether accepting would store anything.
    [[nodiscard]] bool somethingToAccept() const;

    // Corrections of one of `animals()`, each one undo entry. Those that cannot be made say `refused`.
    void moveLandmark(std::size_t animal, LandmarkName name, QPointF atPx, bool byKey);
    [[nodiscard]] std::optional<Measurement> withLandmarkAt(std::size_t animal, LandmarkName name, QPointF atPx) const;
    void pull(std::size_t animal, const Outline& outline);
    /// A trace whose ends lie within `nearPx` of the animal's outline replaces the stretch between; any other goes
    /// round an animal: this one, or one that was missed.
    void trace(std::size_t animal, const std::vector<PixelPoint>& clicks, bool closed, double nearPx);
    void cut(std::size_t animal, const std::vector<PixelPoint>& line);
    void setTailClosed(std::size_t animal, bool closed);
    void setBrooding(std::size_t animal, bool brooding);

    /// Stores what was changed and accepts what was measured. Throws `Error`.
    void accept();

signals:
    void pictureRead(const ringrule::PhotoPicture& picture);
    void pictureFailed(const QString& sentence);
    /// Animals, their numbers or what may be done with them.
    void changed();
    void refused(const QString& sentence);
    void news(const QString& sentence);

private:
    void keepDraft(PhotoId photo, const std::string& contentHash);
    void takePicture(PhotoId photo, const PhotoPicture& picture);
    void takeAnswer(const PhotoAnswer& answer);
    void rebuild();
    void chooseUndoStack();
    void dropDrafts();
    /// What was accepted of a photo was taken back: it is read afresh.
    void forgetDraft(PhotoId photo);
    [[nodiscard]] DeskAnimal deskAnimal(std::optional<StoredMeasure> stored, std::optional<std::size_t> place) const;
    [[nodiscard]] const Session* session() const;
    /// The place in the draft of an animal that can be corrected with the photo's pixels.
    [[nodiscard]] std::optional<std::size_t> editable(std::size_t animal) const;

    Collection& collection_;
    PhotoReader reader_;
    std::optional<PhotoListModel::Row> row_;
    std::shared_ptr<const Photo> pixels_;
    bool hasPicture_ = false;
    std::map<PhotoId, std::unique_ptr<PhotoDraft>> drafts_;
    QUndoGroup undoGroup_;
    std::vector<DeskAnimal> animals_;
    bool inFront_ = true;
};

}  // namespace ringrule
