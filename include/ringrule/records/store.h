// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "ringrule/error.h"
#include "ringrule/husbandry/brood.h"
#include "ringrule/husbandry/care.h"
#include "ringrule/husbandry/records.h"
#include "ringrule/measure/measurement.h"
#include "ringrule/records/box_check_record.h"
#include "ringrule/records/record_kind.h"

namespace ringrule {

struct BoxJudgement;

/// A photo as the collection keeps it. The original is copied to `photos/<hash>.<ext>` and never rewritten.
struct StoredPhoto {
    PhotoId id;
    SessionId session;
    std::string contentHash;
    std::string originalName;
    std::string takenAt;  ///< ISO 8601 or empty
    int widthPx = 0;
    int heightPx = 0;
    View view = View::Side;
    std::optional<bool> fedBefore;  ///< whether the animal was fed before; absent: not told
};

/// A measure of one animal in one photo. A correction adds a row that replaces an earlier one; the first stays.
/// `accepted` measures count in the animal's history; the others wait for a person to look at them. A measure taken
/// with a box whose check had failed or grown stale is read with the remark that says so; that remark is never stored.
struct StoredMeasure {
    MeasureId id;
    PhotoId photo;
    std::optional<AnimalId> animal;  ///< absent: not yet identified
    int animalIndex = 0;
    std::optional<int> card;
    std::string boxName;
    std::string softwareVersion;
    std::string keeper;
    std::optional<MeasureId> replaces;
    bool accepted = false;
    Measurement measurement;
    Landmarks landmarks;
    std::vector<PixelPoint> outlinePx;
    std::vector<PixelPoint> spinePx;
    std::optional<BroodId> brood;  ///< the brood it is a sample of
    Date sessionOn;                ///< read only: the day of its session
    std::int64_t version = 0;      ///< read only: of the row as it was read
};

/// One line of the change log.
struct Change {
    std::string at;       ///< ISO 8601, UTC
    std::string who;      ///< initials: `Store::setKeeper`, or else the keeper of the measure
    std::string what;     ///< "added", "changed", "removed", "corrected", "accepted", "assigned", "described", "undone"
    std::string subject;  ///< "measure 12", "animal P4"
    std::string before;
    std::string after;
    std::int64_t id = 0;                   ///< by which it is taken back
    std::optional<std::int64_t> undoes{};  ///< the change that this one took back
};

/// A record was changed by somebody else after it was read; nothing was overwritten. The message says who and when.
class ChangedMeanwhile : public Error {
public:
    using Error::Error;
};

/// A collection: a folder with `collection.sqlite`, `photos/` and `calibration/`; one that several workstations share
/// has `collection.address` in the database's place, and the database on a PostgreSQL server. Every call that changes
/// something is one transaction. A store belongs to the thread that opened it. Throws `Error(BadStore)` or
/// `Error(NoSpace)`.
class Store {
public:
    /// Creates an empty collection in `folder` (made if missing). Throws when a collection is already there.
    [[nodiscard]] static Store create(const std::filesystem::path& folder);
    /// Creates an empty collection that several workstations share: its database in the empty PostgreSQL database at
    /// `address` ("postgresql://USER@HOST/DATABASE", without a password), photos, box files and backups in `folder`,
    /// which all of them see. From then on either of the two names it.
    [[nodiscard]] static Store createShared(const std::string& address, const std::filesystem::path& folder);
    /// Opens a collection, migrating an older one; refuses a newer one unharmed. `where` is its folder, or the address
    /// of its database when it is shared.
    [[nodiscard]] static Store open(const std::filesystem::path& where);
    ~Store();
    Store(Store&&) noexcept;
    Store& operator=(Store&&) noexcept;

    [[nodiscard]] std::filesystem::path folder() const;

    /// Initials written beside every change from now on.
    void setKeeper(const std::string& initials);

    AnimalId addAnimal(const Animal& animal);
    /// Describes an animal anew (sex once it is known, a new card); `animal.id` says which, `animal.version` as it was
    /// read. Throws `ChangedMeanwhile`.
    void updateAnimal(const Animal& animal);
    TankId addTank(const Tank& tank);
    DietId addDiet(const Diet& diet);
    void addStay(const Stay& stay);
    void addDietSpell(const DietSpell& spell);
    void addState(const StateSpell& spell);
    void addNote(const Note& note);
    void addTankDietSpell(const TankDietSpell& spell);
    BroodId addBrood(const Brood& brood);
    void addBroodEvent(const BroodEvent& event);
    void addFeedingNote(const FeedingNote& note);
    void addWaterReading(const WaterReading& reading);
    void addTreatment(const Treatment& treatment);
    /// Returns the record's number, by which `changeRecord("decision", …)` and `removeRecord` find it.
    std::int64_t addDecision(const Decision& decision);
    void addHandMeasure(const HandMeasure& measure);
    void addBoxCheck(const BoxCheckRecord& check);
    SessionId addSession(const Session& session);
    /// Copies the original in under its hash; a photo already there is recognised and its id returned.
    PhotoId addPhoto(const StoredPhoto& photo, const std::filesystem::path& original);
    MeasureId addMeasure(const StoredMeasure& measure);
    /// All measures of one photo at once, or none.
    std::vector<MeasureId> addMeasures(const std::vector<StoredMeasure>& measures);
    void setAccepted(MeasureId measure, bool accepted);
    void assignAnimal(MeasureId measure, std::optional<AnimalId> animal);

    // Records of any kind (see `record_kind.h`), links written as codes where the other record has one.
    /// Adds a record; returns its number. Throws `Error(BadData)` that names the field.
    std::int64_t addRecord(const std::string& kind, const RecordValues& values);
    /// Changes the fields in `values` (empty: none) of a record that was read with `version`. A reading of a photo is
    /// never changed but in whose it is and whether it counts. Throws `ChangedMeanwhile`, `Error(BadData)`.
    void changeRecord(const std::string& kind, std::int64_t id, std::int64_t version, const RecordValues& values);
    /// Takes a record out; it stays in the change log, and `undo` puts it back. Readings are never removed.
    void removeRecord(const std::string& kind, std::int64_t id, std::int64_t version);
    [[nodiscard]] std::vector<Record> records(const std::string& kind) const;
    [[nodiscard]] std::optional<Record> record(const std::string& kind, std::int64_t id) const;
    /// The number of the record with this code. Throws `Error(BadData)`.
    [[nodiscard]] std::int64_t numberOf(const std::string& kind, const std::string& code) const;
    /// Takes a change back by another change. Refuses, `Error(BadData)`, when what it changed was changed again since.
    /// A correction taken back leaves the first reading, the correction and, in its place, the first reading again.
    void undo(std::int64_t change);

    /// A fact about the collection (see `docs/collection.md`), or nothing.
    [[nodiscard]] std::optional<std::string> setting(const std::string& name) const;
    void set(const std::string& name, const std::string& value);

    [[nodiscard]] std::vector<Animal> animals() const;
    [[nodiscard]] std::vector<Tank> tanks() const;
    [[nodiscard]] std::vector<Diet> diets() const;
    [[nodiscard]] std::vector<Stay> stays() const;
    /// Each animal's own diet spells, and those of its tank while it stayed there and had none of its own.
    [[nodiscard]] std::vector<DietSpell> dietSpells() const;
    [[nodiscard]] std::vector<StateSpell> states() const;
    [[nodiscard]] std::vector<Note> notes(AnimalId animal) const;
    [[nodiscard]] std::vector<Brood> broods() const;
    [[nodiscard]] std::vector<BroodEvent> broodEvents(BroodId brood) const;
    [[nodiscard]] std::vector<FeedingNote> feedingNotes() const;
    [[nodiscard]] std::vector<WaterReading> waterReadings(TankId tank) const;
    [[nodiscard]] std::vector<Treatment> treatments() const;
    /// Of every animal and tank, or of one animal; in order of day.
    [[nodiscard]] std::vector<Decision> decisions() const;
    [[nodiscard]] std::vector<Decision> decisions(AnimalId animal) const;
    [[nodiscard]] std::vector<HandMeasure> handMeasures() const;
    [[nodiscard]] std::vector<HandMeasure> handMeasures(AnimalId animal) const;
    /// The checks of every box, or of one, in order of time.
    [[nodiscard]] std::vector<BoxCheckRecord> boxChecks(const std::string& boxName = {}) const;
    /// What the checks of a box say of measures taken with it on a day (`judgeBox`).
    [[nodiscard]] BoxJudgement boxJudgementOn(const std::string& boxName, Date on) const;
    [[nodiscard]] std::vector<Session> sessions() const;
    [[nodiscard]] std::vector<StoredPhoto> photos(SessionId session) const;
    /// The photo with this content, in whatever session.
    [[nodiscard]] std::optional<StoredPhoto> photoWithHash(const std::string& contentHash) const;
    /// Current measures only (not those replaced by a correction).
    [[nodiscard]] std::vector<StoredMeasure> measuresOfPhoto(PhotoId photo) const;
    [[nodiscard]] std::vector<StoredMeasure> measuresOfSession(SessionId session) const;
    [[nodiscard]] std::vector<StoredMeasure> measuresOfAnimal(AnimalId animal) const;
    [[nodiscard]] std::filesystem::path originalOf(const StoredPhoto& photo) const;
    [[nodiscard]] std::vector<Change> changes() const;
    /// The number of the newest change in the log, by which `undo` finds it; 0 when nothing was changed yet.
    [[nodiscard]] std::int64_t newestChange() const;

    /// Runs `body` inside one transaction: all of it, or nothing, photos copied meanwhile included. May be nested.
    template <class Body>
    void together(Body&& body) {
        begin();
        try {
            body();
        } catch (...) {
            rollback();
            throw;
        }
        commit();
    }

    /// Runs `body` while every read sees one state of the collection, whatever others write meanwhile.
    template <class Body>
    static void reading(const Store& store, Body&& body) {
        store.beginReading();
        try {
            body();
        } catch (...) {
            store.endReading();
            throw;
        }
        store.endReading();
    }

private:
    friend std::filesystem::path backUp(const Store& store);
    friend class CollectionFile;  // reads and writes whole tables for export, import and archive
    struct State;
    explicit Store(std::unique_ptr<State> state);
    /// Adds a row whose links are numbers, and logs it.
    std::int64_t addRow(const std::string& kind, const RecordValues& values);
    void changeRow(const RecordKind& kind, const Record& before, const RecordValues& values, const Change& words);
    void begin();
    void commit();
    void rollback();
    void beginReading() const;
    void endReading() const noexcept;
    std::unique_ptr<State> state_;
};

}  // namespace ringrule
