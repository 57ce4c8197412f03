// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QUndoStack>
#include <filesystem>
#include <functional>
#include <optional>
#include <vector>

#include "app/review.h"
#include "ringrule/husbandry/records.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/records/store.h"
#include "ringrule/records/table_import.h"

namespace ringrule {

/// A box with the file that describes it.
struct BoxFile {
    std::filesystem::path path;
    Box box;
};

/// The collection that all pages show, and what changes in it. The only holder of the store in the window's thread.
class Collection : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    /// Opens a collection in place of the one open before. Throws `Error(BadStore)`; the old one then stays.
    void open(const std::filesystem::path& folder);
    /// Makes an empty collection and opens it.
    void create(const std::filesystem::path& folder);

    [[nodiscard]] bool isOpen() const { return store_.has_value(); }
    /// Precondition: `isOpen()`.
    [[nodiscard]] const Store& store() const { return *store_; }
    [[nodiscard]] std::filesystem::path folder() const { return store_->folder(); }

    /// Runs `body` as one change that can be taken back: all of it, or nothing. `photo`: whose measures it changes.
    /// Throws `Error`.
    void change(const QString& words, const std::function<void(Store&)>& body, std::optional<PhotoId> photo = {});
    /// Initials of who works here; written beside every change.
    [[nodiscard]] QString keeper() const { return keeper_; }
    void setKeeper(const QString& initials);
    /// What was changed in this run, to be taken back and made again.
    [[nodiscard]] QUndoStack& undoStack() { return undo_; }

    [[nodiscard]] const std::vector<Animal>& animals() const { return animals_; }
    [[nodiscard]] const std::vector<Tank>& tanks() const { return tanks_; }
    /// Newest first.
    [[nodiscard]] const std::vector<Session>& sessions() const { return sessions_; }
    /// The diet's name, or its code when it has none.
    [[nodiscard]] QString dietName(DietId id) const;
    [[nodiscard]] QString dietCode(DietId id) const;
    [[nodiscard]] const Animal* animal(AnimalId id) const;
    [[nodiscard]] const Tank* tank(TankId id) const;
    [[nodiscard]] std::optional<AnimalId> animalOfCard(int card) const;
    [[nodiscard]] QString animalCode(std::optional<AnimalId> id) const;

    /// As of the newest session.
    [[nodiscard]] const Review& review() const { return review_; }
    void setReview(Review review);
    /// As of the session that a keeper looks back to on the page of findings, or else of the newest.
    [[nodiscard]] const Review& told() const { return lookBack_ ? *lookBack_ : review_; }
    void setReviews(Review newest, std::optional<Review> lookBack);

    /// The box files of the collection by name of box. One that cannot be used is left out.
    [[nodiscard]] std::vector<BoxFile> boxFiles() const;
    [[nodiscard]] std::vector<Box> boxes() const;
    [[nodiscard]] std::filesystem::path calibrationFolder() const { return folder() / "calibration"; }
    [[nodiscard]] std::optional<Box> box(const std::string& name) const;

    /// Keeps a copy of a box file. Throws `Error(BadBox)`.
    void keepBox(const std::filesystem::path& boxFile);
    /// Adds an animal, and its tank when there is none of this code; no tank when the code is empty.
    void addAnimal(const Animal& animal, const std::string& tankCode, Date since);
    /// Moves an animal to a tank (made when there is none of this code) on a day: its stay before ends there.
    void moveAnimal(AnimalId animal, const std::string& tankCode, Date on);
    /// All that is known of `from` becomes that of `into`; `from` is taken out.
    void mergeAnimals(AnimalId from, AnimalId into);
    /// The sessions from a day on become those of a new animal, which is like this one but for its code and card.
    void splitAnimal(AnimalId animal, Date from, const std::string& newCode);
    /// Adds a record of any kind, changes one that was read with its version, or takes one out.
    void addRecord(const std::string& kind, const RecordValues& values);
    void changeRecord(const std::string& kind, const Record& record, const RecordValues& values);
    void removeRecord(const std::string& kind, const Record& record);
    /// Reads a CSV table as records of a kind (`ringrule::importTable`); tries it only unless `write`.
    TableImport importTable(const std::filesystem::path& file, const std::string& kind, DayOrder days, bool write);
    void addBoxCheck(const BoxCheckRecord& check);
    void decide(const Decision& decision);
    /// Takes a decision out again; the change log keeps it. Throws `ChangedMeanwhile`.
    void takeBack(const Decision& decision);
    void addBrood(const Brood& brood);
    void addBroodEvent(const BroodEvent& event);
    /// Adds corrected and new measures of a photo, accepts others, and keeps states of animals: all of it, or nothing.
    /// A state that is on record for its day is not added again.
    void settle(const StoredPhoto& photo, const std::vector<StoredMeasure>& added,
                const std::vector<MeasureId>& accepted, const std::vector<StateSpell>& states = {});
    void assign(const StoredPhoto& photo, MeasureId measure, std::optional<AnimalId> animal);
    /// Reads again what another connection may have written.
    void reload();

signals:
    void opened();
    void reloaded();
    void photoChanged(ringrule::PhotoId photo);
    /// Measures changed: a review made before no longer holds.
    void measuresChanged();
    void reviewChanged();
    void decisionsChanged();
    /// A change was taken back or made again.
    void changedBack(const QString& words, std::optional<ringrule::PhotoId> photo);
    void problem(const QString& sentence);

private:
    friend class StoreChangeCommand;
    void changedBackTo(const QString& words, std::optional<PhotoId> photo);

    void take(Store store);
    void readHusbandry();

    std::optional<Store> store_;
    std::vector<Animal> animals_;
    std::vector<Tank> tanks_;
    std::vector<Diet> diets_;
    std::vector<Session> sessions_;
    Review review_;
    std::optional<Review> lookBack_;
    QUndoStack undo_;
    QString keeper_;
};

}  // namespace ringrule
