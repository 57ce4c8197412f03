// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/measure_again.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <map>

#include "ringrule/error.h"
#include "ringrule/workflow/empty_box_photo.h"
#include "ringrule/workflow/stored_correction.h"
#include "workflow/again_rules.h"
#include "workflow/session_rules.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

/// A photo with its measures as they were before.
struct OnePhoto {
    StoredPhoto photo;
    std::vector<StoredMeasure> stored;
};

Session sessionOf(const Store& store, SessionId id) {
    for (Session& session : store.sessions())
        if (session.id == id) return std::move(session);
    throw Error(ErrorKind::BadUse, "there is no session " + std::to_string(id.value) +
                                       " in this collection; ringrule list session shows them");
}

std::vector<OnePhoto> photosOf(const Store& store, SessionId session) {
    std::vector<OnePhoto> all;
    for (StoredPhoto& photo : store.photos(session)) {
        auto stored = store.measuresOfPhoto(photo.id);
        all.push_back({std::move(photo), std::move(stored)});
    }
    return all;
}

/// Throws when somebody changed measures while the photos were measured.
void mustBeAsRead(const Store& store, const std::vector<OnePhoto>& photos) {
    for (const OnePhoto& one : photos) {
        const auto now = store.measuresOfPhoto(one.photo.id);
        const bool same = std::equal(
            now.begin(), now.end(), one.stored.begin(), one.stored.end(),
            [](const StoredMeasure& a, const StoredMeasure& b) { return a.id == b.id && a.version == b.version; });
        if (same) continue;
        throw ChangedMeanwhile(ErrorKind::BadStore,
                               "the measures of " + one.photo.originalName +
                                   " were changed by somebody while the session was measured; nothing was "
                                   "overwritten: do it again");
    }
}

/// The shapes of the cards' animals; a card whose measures were given to another animal means that one here.
std::map<int, Shape> shapesFor(const Store& store, const Cards& cards, const std::vector<OnePhoto>& photos) {
    std::map<AnimalId, Shape> shapes;
    for (const Animal& animal : store.animals())
        if (const auto shape = shapeFromName(animal.shape)) shapes[animal.id] = *shape;
    std::map<int, Shape> byCard = cards.shapes;
    for (const OnePhoto& one : photos) {
        for (const StoredMeasure& measure : one.stored) {
            const auto found = measure.animal ? shapes.find(*measure.animal) : shapes.end();
            if (measure.card && found != shapes.end()) byCard[*measure.card] = found->second;
        }
    }
    return byCard;
}

/// The only brood of which the session's measures without a card are a sample.
std::optional<BroodId> broodOf(const std::vector<OnePhoto>& photos) {
    std::optional<BroodId> brood;
    for (const OnePhoto& one : photos) {
        for (const StoredMeasure& measure : one.stored) {
            if (brood && measure.brood && *brood != *measure.brood) return std::nullopt;
            if (measure.brood) brood = measure.brood;
        }
    }
    return brood;
}

/// Makes what persons corrected again in the new readings.
void correctAgain(std::vector<PhotoResult>& results, const std::vector<OnePhoto>& photos, PhotoOptions options) {
    for (std::size_t i = 0; i < results.size(); ++i) {
        if (!results[i].reading || results[i].reading->refusal) continue;
        const auto& stored = photos[i].stored;
        const auto places = placesOf(stored, *results[i].reading);
        bool byHand = false;
        for (std::size_t k = 0; k < stored.size(); ++k)
            byHand |= correctedByHand(stored[k], places[k] ? &results[i].reading->animals[*places[k]] : nullptr);
        if (!byHand) continue;
        options.view = photos[i].photo.view;
        results[i].reading =
            withStoredCorrections(loadPhoto(results[i].task.path), *results[i].reading, stored, options);
    }
}

/// Throws unless an animal was measured: a box file that fits nothing would empty the session.
void mustMeasureOne(const std::vector<PhotoResult>& results, const std::vector<OnePhoto>& photos, const Box& box) {
    std::string why;
    for (std::size_t i = 0; i < results.size(); ++i) {
        if (!results[i].reading) {
            if (why.empty()) why = results[i].errorMessage;
            continue;
        }
        const PhotoReading& reading = *results[i].reading;
        for (const AnimalReading& animal : reading.animals) {
            if (animal.measurement.measured()) return;
            if (why.empty()) why = photos[i].photo.originalName + ": " + refusalSentence(animal.measurement);
        }
        if (why.empty() && reading.refusal) why = photos[i].photo.originalName + ": " + reading.refusal->sentence;
    }
    throw Error(ErrorKind::BadUse, "not one animal of this session can be measured with the box \"" + box.name +
                                       "\", nothing was changed" + (why.empty() ? "" : " (" + why + ")"));
}

/// Stores the new readings of a session's photos and counts them; runs inside one transaction.
class AgainWriter {
public:
    AgainWriter(Store& store, const Session& session, std::optional<BroodId> brood, const AgainOptions& options,
                AgainSummary& summary)
        : store_(store),
          session_(session),
          cards_(cardsOf(store)),
          brood_(brood),
          options_(options),
          summary_(summary) {}

    void write(const OnePhoto& one, const PhotoResult& result) {
        name_ = one.photo.originalName;
        ++summary_.session.photos;
        if (!result.reading || result.reading->contentHash != one.photo.contentHash) {
            ++summary_.session.refused;
            trouble("the original cannot be read and its measures were left (" +
                    (result.reading ? "it is not the file that was added" : result.errorMessage) + ")");
            return;
        }
        const PhotoReading& reading = *result.reading;
        if (reading.refusal) {
            ++summary_.session.refused;
            trouble(reading.refusal->sentence);
        }
        const auto places = placesOf(one.stored, reading);
        std::vector<bool> known(reading.animals.size(), false);
        const int leftBefore = summary_.left;
        for (std::size_t k = 0; k < one.stored.size(); ++k) {
            if (places[k]) known[*places[k]] = true;
            again(one.stored[k], places[k] ? &reading.animals[*places[k]] : nullptr, reading);
        }
        // Beside an outline drawn by hand another animal may be a part of it.
        if (summary_.left > leftBefore) return;
        for (std::size_t i = 0; i < known.size(); ++i)
            if (!known[i]) add(one.photo.id, reading, reading.animals[i]);
    }

private:
    void trouble(const std::string& sentence) {
        std::string line = name_ + ": " + sentence;
        auto& troubles = summary_.session.troubles;
        if (troubles.empty() || troubles.back() != line) troubles.push_back(std::move(line));
    }

    /// Whose a measure is: as it was, or else the animal of its card.
    std::optional<AnimalId> ownerOf(const StoredMeasure& measure) {
        if (!measure.card || measure.brood) return measure.animal;
        const auto owner = cards_.animals.find(*measure.card);
        if (owner == cards_.animals.end()) {
            if (!measure.animal) trouble(unknownCardSentence(*measure.card));
            return measure.animal;
        }
        if (measure.animal && *measure.animal != owner->second.id) {
            trouble("card " + std::to_string(*measure.card) + " is " + owner->second.code +
                    "'s now, the measure stays another animal's; to give it to " + owner->second.code +
                    ": ringrule change measure NUMBER animal=" + owner->second.code);
            return measure.animal;
        }
        return owner->second.id;
    }

    void again(StoredMeasure stored, const AnimalReading* animal, const PhotoReading& reading) {
        const std::optional<int> card = animal != nullptr && animal->card ? animal->card : stored.card;
        StoredMeasure now = stored;
        now.card = card;
        if (animal != nullptr) now.animal = ownerOf(now);
        if (now.animal != stored.animal) {
            store_.assignAnimal(stored.id, now.animal);
            ++summary_.given;
        }
        if (correctedByHand(stored, animal) && (!options_.correctedToo || animal == nullptr)) {
            ++summary_.left;
            return;
        }
        now = correctionOf(now, animal != nullptr ? *animal : AnimalReading{},
                           options_.keeper.empty() ? stored.keeper : options_.keeper);
        if (animal == nullptr) {
            now.animalIndex = stored.animalIndex;
            now.measurement = withoutFigures(stored, reading.refusal);
        }
        carryBrooding(stored, now.measurement);
        now.boxName = reading.boxName;
        now.accepted = countsAgain(stored, now.measurement);
        if (animal != nullptr) count(now);
        if (stored.boxName == now.boxName && stored.accepted == now.accepted &&
            sameFigures(stored.measurement, now.measurement)) {
            if (!seenNoMore(now)) ++summary_.same;
            return;
        }
        if (animal == nullptr && stored.accepted && !reading.refusal)
            trouble("measure " + std::to_string(stored.id.value) +
                    " is of an animal that is not seen now: it counts no more");
        store_.addMeasure(now);
        ++summary_.corrected;
    }

    void add(PhotoId photo, const PhotoReading& reading, const AnimalReading& animal) {
        StoredMeasure added =
            newMeasureOf(photo, reading, animal, options_.keeper.empty() ? session_.keeper : options_.keeper);
        added.animal = ownerOf(added);
        if (!added.card) added.brood = brood_;
        added.accepted = countsUnseen(added.measurement);
        count(added);
        store_.addMeasure(added);
        ++summary_.added;
    }

    /// That an animal was brooding is a person's word, and stays.
    static void carryBrooding(const StoredMeasure& stored, Measurement& now) {
        const auto& said = stored.measurement.remarks;
        if (std::find(said.begin(), said.end(), Remark::NotOnGirth) == said.end()) return;
        if (std::find(now.remarks.begin(), now.remarks.end(), Remark::NotOnGirth) == now.remarks.end())
            now.remarks.push_back(Remark::NotOnGirth);
    }

    void count(const StoredMeasure& now) {
        const Measurement& measurement = now.measurement;
        if (!measurement.measured()) {
            ++summary_.session.refused;
            trouble(refusalSentence(measurement));
            return;
        }
        ++summary_.session.measured;
        if (now.accepted) return;
        ++summary_.session.toLookAt;
        const auto doubts = doubtsOf(measurement);
        if (!doubts.empty()) trouble(std::string(remarkSentence(doubts.front())));
    }

    Store& store_;
    const Session& session_;
    const Cards cards_;
    const std::optional<BroodId> brood_;
    const AgainOptions& options_;
    AgainSummary& summary_;
    std::string name_;
};

void setBox(Store& store, const Session& session, const Box& box) {
    if (session.boxName == box.name) return;
    if (const auto record = store.record("session", session.id.value))
        store.changeRecord("session", record->id, record->version, {{"box_name", box.name}});
}

std::vector<PhotoResult> measureStored(const Store& store, SessionId session, const std::vector<OnePhoto>& photos,
                                       const Box& box, const AgainOptions& options, const Progress& progress) {
    PhotoOptions photoOptions;
    photoOptions.shapeByCard = shapesFor(store, cardsOf(store), photos);
    const auto emptyBox = emptyBoxPhotoKept(store.folder(), session);
    if (emptyBox) photoOptions.emptyBox = readEmptyBox(*emptyBox, box);
    std::vector<PhotoTask> tasks;
    for (const OnePhoto& one : photos) tasks.push_back({store.originalOf(one.photo), one.photo.view});
    auto results = measurePhotos(tasks, box, photoOptions, options.jobs, progress);
    mustMeasureOne(results, photos, box);
    if (options.correctedToo) correctAgain(results, photos, photoOptions);
    return results;
}

std::string wholeText(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

AgainSummary measureSessionAgain(Store& store, SessionId id, const Box& box, const AgainOptions& options,
                                 const Progress& progress) {
    const Session session = sessionOf(store, id);
    const std::vector<OnePhoto> photos = photosOf(store, id);
    const auto results = measureStored(store, id, photos, box, options, progress);
    AgainSummary summary;
    summary.session.session = id;
    summary.session.on = session.on;
    store.setKeeper(options.keeper);
    store.together([&] {
        mustBeAsRead(store, photos);
        const std::int64_t before = store.newestChange();
        AgainWriter writer(store, session, broodOf(photos), options, summary);
        for (std::size_t i = 0; i < photos.size(); ++i) writer.write(photos[i], results[i]);
        setBox(store, session, box);
        if (store.newestChange() == before) return;
        summary.firstChange = before + 1;
        summary.lastChange = store.newestChange();
    });
    return summary;
}

fs::path boxFileOf(const Store& store, SessionId id) {
    const Session session = sessionOf(store, id);
    std::vector<fs::path> files;
    std::error_code none;
    for (const auto& entry : fs::directory_iterator(store.folder() / "calibration", none)) {
        if (entry.path().extension() != ".json") continue;
        try {
            if (readBox(entry.path()).name == session.boxName) files.push_back(entry.path());
        } catch (const Error&) {
            // Other JSON may lie beside the boxes.
        }
    }
    std::sort(files.begin(), files.end());
    const std::string box = "the box \"" + session.boxName + "\" of session " + std::to_string(id.value);
    if (files.empty()) throw Error(ErrorKind::BadUse, "the collection keeps no file of " + box + ": say it with --box");
    for (const fs::path& file : files)
        if (wholeText(file) != wholeText(files.front()))
            throw Error(ErrorKind::BadUse, "the collection keeps several files of " + box + ": say which with --box " +
                                               files.front().string() + " or " + file.string());
    return files.front();
}

}  // namespace ringrule
