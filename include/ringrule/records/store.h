// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "ringrule/husbandry/records.h"
#include "ringrule/measure/measurement.h"

namespace ringrule {

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
};

/// A measure of one animal in one photo. A correction adds a row that replaces an earlier one; the first stays.
/// `accepted` measures count in the animal's history; the others wait for a person to look at them.
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
};

/// One line of the change log: a correction, an acceptance, an animal assigned or described anew.
struct Change {
    std::string at;       ///< ISO 8601, UTC
    std::string who;      ///< initials: `Store::setKeeper`, or else the keeper of the measure
    std::string what;     ///< "corrected", "accepted", "assigned", "described"
    std::string subject;  ///< "measure 12", "animal P4"
    std::string before;
    std::string after;
};

/// A collection on disk: a folder with `collection.sqlite`, `photos/` and `calibration/`. Every call that changes
/// something is one transaction. A store belongs to the thread that opened it. Throws `Error(BadStore)` or
/// `Error(NoSpace)`.
class Store {
public:
    /// Creates an empty collection in `folder` (made if missing). Throws when a collection is already there.
    [[nodiscard]] static Store create(const std::filesystem::path& folder);
    /// Opens a collection, migrating an older one; refuses a newer one unharmed.
    [[nodiscard]] static Store open(const std::filesystem::path& folder);
    ~Store();
    Store(Store&&) noexcept;
    Store& operator=(Store&&) noexcept;

    [[nodiscard]] std::filesystem::path folder() const;

    /// Initials written beside every change from now on.
    void setKeeper(const std::string& initials);

    AnimalId addAnimal(const Animal& animal);
    /// Describes an animal anew (sex once it is known, a new card); `animal.id` says which.
    void updateAnimal(const Animal& animal);
    TankId addTank(const Tank& tank);
    DietId addDiet(const Diet& diet);
    void addStay(const Stay& stay);
    void addDietSpell(const DietSpell& spell);
    void addState(const StateSpell& spell);
    void addNote(const Note& note);
    SessionId addSession(const Session& session);
    /// Copies the original in under its hash; a photo already there is recognised and its id returned.
    PhotoId addPhoto(const StoredPhoto& photo, const std::filesystem::path& original);
    MeasureId addMeasure(const StoredMeasure& measure);
    /// All measures of one photo at once, or none.
    std::vector<MeasureId> addMeasures(const std::vector<StoredMeasure>& measures);
    void setAccepted(MeasureId measure, bool accepted);
    void assignAnimal(MeasureId measure, std::optional<AnimalId> animal);

    [[nodiscard]] std::vector<Animal> animals() const;
    [[nodiscard]] std::vector<Tank> tanks() const;
    [[nodiscard]] std::vector<Diet> diets() const;
    [[nodiscard]] std::vector<Stay> stays() const;
    [[nodiscard]] std::vector<DietSpell> dietSpells() const;
    [[nodiscard]] std::vector<StateSpell> states() const;
    [[nodiscard]] std::vector<Note> notes(AnimalId animal) const;
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

private:
    struct State;
    explicit Store(std::unique_ptr<State> state);
    void begin();
    void commit();
    void rollback();
    std::unique_ptr<State> state_;
};

}  // namespace ringrule
