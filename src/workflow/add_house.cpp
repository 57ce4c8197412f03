// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>

#include "ringrule/error.h"
#include "ringrule/workflow/collection_review.h"
#include "workflow/house_file.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

fs::path boxPath(const fs::path& calibrationFolder, const std::string& box) {
    const fs::path file = calibrationFolder / box;
    return file.has_extension() ? file : fs::path(file.string() + ".json");
}

/// Puts everything but the sessions into the store: all of it, or nothing.
void addRecords(Store& store, const House& house) {
    store.together([&] {
        std::map<std::string, TankId> tanks;
        std::map<std::string, DietId> diets;
        std::map<std::string, AnimalId> animals;
        for (const Tank& tank : house.tanks) tanks[tank.code] = store.addTank(tank);
        for (const Diet& diet : house.diets) diets[diet.code] = store.addDiet(diet);
        for (const Animal& animal : house.animals) animals[animal.code] = store.addAnimal(animal);
        for (const House::Spell& stay : house.stays) {
            store.addStay({animals.at(stay.animal), tanks.at(stay.of), stay.from, stay.to});
        }
        for (const House::Spell& spell : house.dietSpells) {
            store.addDietSpell({animals.at(spell.animal), diets.at(spell.of), spell.from, spell.to});
        }
        for (const House::Spell& spell : house.states) {
            store.addState({animals.at(spell.animal), spell.of, spell.from, spell.to});
        }
        for (const House::NoteLine& note : house.notes) store.addNote({animals.at(note.animal), note.on, note.text});
    });
}

/// The part of the whole run that one session is.
Progress partOf(const Progress& whole, std::size_t done, std::size_t all, const std::string& name) {
    if (!whole) return {};
    return [&whole, done, all, name](double fraction, std::string_view stage) {
        const double through = (static_cast<double>(done) + fraction) / static_cast<double>(all);
        return whole(through, name + ": " + std::string(stage));
    };
}

/// The boxes of a house's sessions by their names there; their folders are looked at too.
std::map<std::string, Box> boxesOf(const House& house, const fs::path& calibrationFolder) {
    std::map<std::string, Box> boxes;
    for (const House::SessionLine& session : house.sessions) {
        if (!boxes.contains(session.box)) boxes[session.box] = readBox(boxPath(calibrationFolder, session.box));
        static_cast<void>(photosOfFolder(session.folder));
    }
    return boxes;
}

/// Leaves the measures of a tank's animals in a session to be looked at, as a keeper finds them in the middle of the
/// work.
void leaveToLookAt(Store& store, SessionId session, Date on, const std::string& tankCode) {
    const auto tanks = store.tanks();
    const auto tank = std::find_if(tanks.begin(), tanks.end(), [&](const Tank& t) { return t.code == tankCode; });
    const auto stays = store.stays();
    for (const StoredMeasure& measure : store.measuresOfSession(session)) {
        const bool lives = std::any_of(stays.begin(), stays.end(), [&](const Stay& stay) {
            return measure.animal == stay.animal && stay.tank == tank->id && stay.from <= on &&
                   (!stay.to || on <= *stay.to);
        });
        if (lives && measure.accepted) store.setAccepted(measure.id, false);
    }
}

}  // namespace

void checkHouse(const fs::path& houseFile, const fs::path& calibrationFolder) {
    static_cast<void>(boxesOf(readHouse(houseFile), calibrationFolder));
}

std::vector<SessionSummary> addHouse(Store& store, const fs::path& houseFile, const fs::path& calibrationFolder,
                                     int jobs, const Progress& progress, const OnResult& onResult) {
    if (!store.animals().empty() || !store.sessions().empty()) {
        throw Error(ErrorKind::BadUse, "a house file fills an empty collection only; create a new one",
                    store.folder().string());
    }
    const House house = readHouse(houseFile);
    const std::map<std::string, Box> boxes = boxesOf(house, calibrationFolder);
    addRecords(store, house);
    for (const auto& [box, read] : boxes) keepBoxFile(store, boxPath(calibrationFolder, box));
    std::vector<SessionSummary> summaries;
    for (const House::SessionLine& line : house.sessions) {
        Session session;
        session.on = line.on;
        session.keeper = line.keeper;
        session.folder = line.folder.filename().string();
        const Progress part = partOf(progress, summaries.size(), house.sessions.size(), formatDate(line.on));
        summaries.push_back(addSessionFolder(store, line.folder, session, boxes.at(line.box), jobs, part, onResult));
        if (!line.toLookAt.empty()) leaveToLookAt(store, summaries.back().session, line.on, line.toLookAt);
    }
    return summaries;
}

}  // namespace ringrule
