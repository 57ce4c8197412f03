// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cerrno>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <system_error>

#include "ringrule/error.h"
#include "ringrule/workflow/collection_review.h"
#include "ringrule/workflow/empty_box_photo.h"
#include "workflow/session_rules.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

std::string nameOf(const PhotoResult& result, const fs::path& folder) {
    return result.task.path.lexically_relative(folder).string();
}

/// The day on which most photos say they were taken.
std::optional<Date> dayOfPhotos(const std::vector<PhotoResult>& results) {
    std::map<Date, int> days;
    for (const PhotoResult& result : results) {
        if (!result.reading || !result.reading->takenAt) continue;
        if (const auto day = parseDate(*result.reading->takenAt)) ++days[*day];
    }
    const auto most =
        std::max_element(days.begin(), days.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
    return most == days.end() ? std::nullopt : std::optional(most->first);
}

Session settled(Session session, const std::vector<PhotoResult>& results, const Box& box,
                std::vector<std::string>& troubles) {
    if (session.boxName.empty()) session.boxName = box.name;
    const auto day = dayOfPhotos(results);
    if (session.on == Date{} && !day) {
        throw Error(ErrorKind::BadUse, "no photo says when it was taken: say the session's day (--on 2031-01-06)",
                    session.folder);
    }
    if (day && session.on != Date{} && *day != session.on) {
        troubles.push_back("the photos say " + formatDate(*day) + ", the session was told as " +
                           formatDate(session.on) + ": the photos' day was kept; check the camera's clock");
    }
    if (day) session.on = *day;
    return session;
}

/// Stores one photo with its animals and counts them; runs inside the session's transaction.
class SessionWriter {
public:
    SessionWriter(Store& store, const Session& session, const Cards& cards, const fs::path& folder,
                  const SessionNotes& notes, SessionSummary& summary)
        : store_(store), session_(session), cards_(cards), folder_(folder), notes_(notes), summary_(summary) {}

    void add(const PhotoResult& result) {
        ++summary_.photos;
        if (!result.reading) {
            ++summary_.refused;
            summary_.troubles.push_back(result.errorMessage);
            return;
        }
        const PhotoReading& reading = *result.reading;
        name_ = nameOf(result, folder_);
        if (store_.photoWithHash(reading.contentHash)) {
            trouble("this photo is already in the collection and was not added again");
            return;
        }
        checkDay(reading);
        const PhotoId photo = store_.addPhoto(describe(reading), result.task.path);
        if (reading.refusal) {
            ++summary_.refused;
            trouble(reading.refusal->sentence);
            return;
        }
        addAnimals(reading, photo);
    }

private:
    void trouble(const std::string& sentence) {
        std::string line = name_ + ": " + sentence;
        // Several animals of one photo may share a trouble: said once.
        if (summary_.troubles.empty() || summary_.troubles.back() != line) summary_.troubles.push_back(std::move(line));
    }

    void checkDay(const PhotoReading& reading) {
        const auto day = reading.takenAt ? parseDate(*reading.takenAt) : std::nullopt;
        if (day && *day != session_.on) trouble("was taken on " + formatDate(*day) + ", not on the session's day");
    }

    [[nodiscard]] StoredPhoto describe(const PhotoReading& reading) const {
        StoredPhoto photo;
        photo.session = session_.id;
        photo.contentHash = reading.contentHash;
        photo.originalName = name_;
        photo.takenAt = reading.takenAt.value_or("");
        photo.widthPx = reading.widthPx;
        photo.heightPx = reading.heightPx;
        photo.view = reading.view;
        photo.fedBefore = notes_.fedBefore;
        return photo;
    }

    std::optional<AnimalId> ownerOf(std::optional<int> card) {
        if (!card) return std::nullopt;
        const auto owner = cards_.animals.find(*card);
        if (owner != cards_.animals.end()) return owner->second.id;
        trouble(unknownCardSentence(*card));
        return std::nullopt;
    }

    void addAnimals(const PhotoReading& reading, PhotoId photo) {
        std::vector<StoredMeasure> measures;
        for (const AnimalReading& animal : reading.animals) {
            StoredMeasure stored;
            stored.photo = photo;
            stored.animal = ownerOf(animal.card);
            if (!animal.card) stored.brood = notes_.brood;
            stored.animalIndex = animal.index;
            stored.card = animal.card;
            stored.boxName = reading.boxName;
            stored.softwareVersion = RINGRULE_VERSION;
            stored.keeper = session_.keeper;
            stored.measurement = animal.measurement;
            stored.landmarks = animal.anatomy.landmarks;
            stored.outlinePx = animal.outline.boundaryPx;
            stored.spinePx = animal.anatomy.midline.spinePx;
            stored.accepted = count(animal.measurement);
            measures.push_back(std::move(stored));
        }
        if (!measures.empty()) store_.addMeasures(measures);
    }

    /// Counts a measurement, says what is wrong with it, and whether it is accepted without a look.
    bool count(const Measurement& measurement) {
        const bool counts = countsUnseen(measurement);
        if (!measurement.measured()) {
            ++summary_.refused;
            trouble(refusalSentence(measurement));
            return counts;
        }
        ++summary_.measured;
        if (counts) return true;
        ++summary_.toLookAt;
        trouble(std::string(remarkSentence(doubtsOf(measurement).front())));
        return false;
    }

    Store& store_;
    const Session& session_;
    const Cards& cards_;
    const fs::path& folder_;
    const SessionNotes& notes_;
    SessionSummary& summary_;
    std::string name_;
};

/// Throws what is said of a folder whose photos are all in the collection, with the way to measure them anew.
[[noreturn]] void refuseKnown(const Store& store, const std::vector<PhotoResult>& results, const fs::path& folder) {
    std::set<SessionId> sessions;
    for (const PhotoResult& result : results) {
        if (!result.reading) continue;
        if (const auto known = store.photoWithHash(result.reading->contentHash)) sessions.insert(known->session);
    }
    std::string numbers;
    for (const SessionId session : sessions) numbers += (numbers.empty() ? "" : ", ") + std::to_string(session.value);
    throw Error(ErrorKind::BadUse,
                "every photo of this folder is already in the collection (session " + numbers +
                    "); to measure them again with the animals of now, or with another box file (--box FILE): "
                    "ringrule measure-again " +
                    std::to_string(sessions.begin()->value) + " --store " + store.folder().string(),
                folder.string());
}

std::string contentOf(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

[[noreturn]] void failKeeping(const std::error_code& error, const fs::path& path) {
    if (error == std::errc::no_space_on_device)
        throw Error(ErrorKind::NoSpace, "the disk is full: the box file was not kept; make room and try again",
                    path.string());
    throw Error(ErrorKind::BadStore, "the box file cannot be kept (" + error.message() + ")", path.string());
}

}  // namespace

SessionSummary addSessionFolder(Store& store, const fs::path& folder, const Session& session, const Box& box, int jobs,
                                const Progress& progress, const OnResult& onResult, const SessionNotes& notes) {
    const std::vector<PhotoTask> tasks = photosOfFolder(folder);
    const Cards cards = cardsOf(store);
    PhotoOptions options;
    options.shapeByCard = cards.shapes;
    const std::optional<fs::path> emptyBox = emptyBoxPhotoIn(folder);
    if (emptyBox) options.emptyBox = readEmptyBox(*emptyBox, box);
    const auto results = measurePhotos(tasks, box, options, jobs, progress, onResult);
    if (std::none_of(results.begin(), results.end(), [](const PhotoResult& r) { return r.reading.has_value(); })) {
        throw Error(ErrorKind::BadPhoto,
                    "not one photo of this folder can be read (" + results.front().errorMessage + ")", folder.string());
    }
    SessionSummary summary;
    store.together([&] {
        Session settledSession = settled(session, results, box, summary.troubles);
        summary.on = settledSession.on;
        settledSession.id = store.addSession(settledSession);
        summary.session = settledSession.id;
        SessionWriter writer(store, settledSession, cards, folder, notes, summary);
        for (const PhotoResult& result : results) writer.add(result);
        if (store.photos(summary.session).empty()) refuseKnown(store, results, folder);
        // Last: a session that is refused must not leave it to the next one of its number.
        if (emptyBox) keepEmptyBoxPhoto(store, summary.session, *emptyBox);
    });
    return summary;
}

void keepBoxFile(const Store& store, const fs::path& boxFile) {
    const fs::path folder = store.folder() / "calibration";
    std::error_code error;
    fs::create_directories(folder, error);
    if (error) failKeeping(error, folder);
    const std::string content = contentOf(boxFile);
    fs::path target = folder / boxFile.filename();
    for (int number = 2; fs::exists(target); ++number) {
        if (contentOf(target) == content) return;
        target = folder / (boxFile.stem().string() + "-" + std::to_string(number) + boxFile.extension().string());
    }
    // Written under another name first, so that a full disk leaves no half of it.
    fs::path part = target;
    part += ".part";
    errno = 0;
    std::ofstream out(part, std::ios::binary);
    out << content;
    out.close();
    if (!out) {
        error = std::error_code(errno, std::generic_category());
        fs::remove(part);
        failKeeping(error, target);
    }
    fs::rename(part, target, error);
    if (error) failKeeping(error, target);
}

}  // namespace ringrule
