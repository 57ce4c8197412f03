// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <map>

#include <nlohmann/json.hpp>

#include "../scratch_folder.h"
#include "either_store.h"
#include "records/csv_text.h"
#include "ringrule/records/archive.h"
#include "ringrule/records/backup.h"
#include "ringrule/records/package.h"
#include "ringrule/records/verify.h"
#include "sample_records.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

/// A collection with a record of every kind, and texts that trip a careless writer.
Store fullStore(const ScratchFolder& scratch, const std::string& name = "house") {
    Store store = newCollection(scratch / name);
    store.setKeeper("K1");
    const TankId tank = store.addTank({{}, "=B3", "Bay \"3\", left"});
    const DietId diet = store.addDiet({{}, "D1", "live\nonly", {"brine, live", "@mysid"}, 2.5, "oil"});
    const AnimalId animal = store.addAnimal(sample::animal());
    Animal young = sample::animal("-young", 15);
    young.mother = animal;
    young.brood = store.addBrood({{}, "R2", "Hippocampus reidi", animal, {}, tank, Date{2031y / 1 / 1}, "'quoted"});
    store.addAnimal(young);
    store.addBroodEvent({*young.brood, Date{2031y / 1 / 1}, "birth", 200, ""});
    store.addStay({animal, tank, Date{2030y / 12 / 1}, Date{2031y / 12 / 1}});
    store.addDietSpell({animal, diet, Date{2030y / 12 / 1}, std::nullopt});
    store.addTankDietSpell({tank, diet, Date{2030y / 12 / 1}, std::nullopt});
    store.addState({animal, "brooding", Date{2031y / 2 / 1}, std::nullopt});
    store.addNote({animal, Date{2031y / 2 / 3}, "+left the frozen food — twice\r\nthen ate"});
    store.addRecord("note", {{"tank", "=B3"}, {"on_day", "2031-02-04"}, {"text", "-pump off"}, {"keeper", "K2"}});
    store.addFeedingNote({animal, {}, Date{2031y / 2 / 3}, "=1+1", "refused", "K2", ""});
    store.addWaterReading({tank, Date{2031y / 2 / 3}, 24.1, 32.05, "K1", ""});
    store.addTreatment({animal, {}, Date{2031y / 2 / 3}, {}, "dip", "", "Dr V", ""});
    store.addDecision({animal, Date{2031y / 2 / 3}, "thin", "watch", "K1", ""});
    store.addHandMeasure({animal, Date{2029y / 2 / 3}, "standard_length_mm", 88.1, 0.5, "ruler", "K1", ""});
    BoxCheckRecord check;
    check.at = "2031-01-06T09:00:00";
    check.boxName = "bench box";
    check.verdict = BoxVerdict::Holds;
    check.readMm = 100.0 / 3.0;  // needs all its digits
    store.addBoxCheck(check);
    StoredPhoto photo;
    photo.session = store.addSession(sample::session());
    photo.widthPx = 4000;
    photo.heightPx = 3000;
    photo.fedBefore = false;
    const PhotoId id = store.addPhoto(photo, scratch.write(name + "-a.jpg", "pixels of " + name));
    store.addRecord("note", {{"photo", "1"}, {"on_day", "2031-02-04"}, {"text", "blurred"}});
    const MeasureId first = store.addMeasure(sample::stored(id, animal, 100.0 / 7.0));
    StoredMeasure corrected = sample::stored(id, animal, 15.0);
    corrected.replaces = first;
    store.addMeasure(corrected);
    StoredMeasure refused = sample::stored(id, std::nullopt);
    refused.measurement = {};
    refused.measurement.refusal = Refusal{"tail-closed", "Closed."};
    store.addMeasure(refused);
    scratch.write(name + "/calibration/bench-box.json", "{}");
    return store;
}

std::map<std::string, std::string> contentsOf(const std::filesystem::path& folder) {
    std::map<std::string, std::string> contents;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
        if (entry.is_regular_file())
            contents[entry.path().lexically_relative(folder).string()] = contentOf(entry.path());
    return contents;
}

template <class Body>
std::string messageOf(Body&& body) {
    try {
        body();
    } catch (const Error& error) {
        return error.what();
    }
    return {};
}

}  // namespace

TEST_CASE("an exported package imports as the same collection", "[either]") {
    const ScratchFolder scratch;
    const Store store = fullStore(scratch);
    exportPackage(store, scratch / "package");
    const PackageReport report = importPackage(scratch / "package", scratch / "again");
    CHECK(report.photosLacking == 0);
    exportPackage(Store::open(scratch / "again"), scratch / "package-2");
    const auto first = contentsOf(scratch / "package");
    const auto second = contentsOf(scratch / "package-2");
    REQUIRE(first.size() == recordKinds().size() + 3);  // tables, datapackage.json, a photo, a box file
    for (const auto& [name, content] : first) {
        INFO(name);
        CHECK(second.at(name) == content);
        CHECK_FALSE(content.empty());
    }
    Store again = Store::open(scratch / "again");
    CHECK(again.measuresOfAnimal(again.animals().at(0).id).at(0).outlinePx == sample::stored({}, {}).outlinePx);
    again.undo(again.changes().back().id);  // the log came along whole
    CHECK(again.measuresOfAnimal(again.animals().at(0).id).at(0).measurement.standardLengthMm.value == 100.0 / 7.0);
}

TEST_CASE("every kind of record has rows in the round trip", "[either]") {
    const ScratchFolder scratch;
    const Store store = fullStore(scratch);
    for (const RecordKind& kind : recordKinds()) {
        INFO(kind.name);
        CHECK_FALSE(store.records(kind.name).empty());
    }
}

TEST_CASE("no cell of an exported table is run by a spreadsheet", "[either]") {
    const ScratchFolder scratch;
    exportPackage(fullStore(scratch), scratch / "package");
    for (const RecordKind& kind : recordKinds()) {
        CsvReader reader(contentOf(scratch / ("package/" + kind.name + ".csv")), ',');
        const auto head = reader.next();
        while (const auto cells = reader.next()) {
            REQUIRE(cells->size() == head->size());
            for (std::size_t i = 0; i < cells->size(); ++i) {
                const std::string& cell = (*cells)[i];
                INFO(kind.name << " " << (*head)[i] << ": " << cell);
                if (cell.empty()) continue;
                char* end = nullptr;
                static_cast<void>(std::strtod(cell.c_str(), &end));
                const bool number = *end == '\0';
                CHECK((number || std::string("=+-@\t\r").find(cell[0]) == std::string::npos));
            }
        }
    }
    for (const std::string text : {"", "=1", "'=1", "''", "'", "plain", "it's", "-5", "\t=1"})
        CHECK(unguarded(guarded(text)) == text);
}

TEST_CASE("the package's description names types, units, missing values and keys", "[either]") {
    const ScratchFolder scratch;
    exportPackage(fullStore(scratch), scratch / "package", {.photos = false});
    CHECK_FALSE(std::filesystem::exists(scratch / "package/photos"));
    const auto json = nlohmann::json::parse(contentOf(scratch / "package/datapackage.json"));
    for (const auto& resource : json["resources"]) {
        CsvReader reader(contentOf(scratch / ("package/" + resource["path"].get<std::string>())), ',');
        const auto head = reader.next();
        const auto& fields = resource["schema"]["fields"];
        REQUIRE(head->size() == fields.size());
        for (std::size_t i = 0; i < fields.size(); ++i) CHECK(fields[i]["name"] == (*head)[i]);
        CHECK(resource["schema"]["missingValues"] == nlohmann::json::array({""}));
    }
    CHECK(importPackage(scratch / "package", scratch / "again").photosLacking == 1);
    CHECK(verifyCollection(scratch / "again").troubles.size() == 1);
}

TEST_CASE("the package's description is the one that a library not ours found no fault with") {
    // Checked by datapackage (npm, 1.1.10) with every row and key; script/check-package does so again and writes it
    // anew.
    const ScratchFolder scratch;
    exportPackage(fullStore(scratch), scratch / "package");
    const auto stored =
        contentOf(std::filesystem::path(RINGRULE_SOURCE_DIR) / "tests/records/data/datapackage-resources.json");
    const auto now = nlohmann::json::parse(contentOf(scratch / "package/datapackage.json"));
    CHECK(now.at("resources") == nlohmann::json::parse(stored));
}

TEST_CASE("a package of an older version, with fewer tables and columns, is imported", "[either]") {
    const ScratchFolder scratch;
    exportPackage(fullStore(scratch), scratch / "package");
    // As version 3 of the schema wrote notes; and a table that an older version did not have at all.
    scratch.write("package/note.csv", "id,row_version,animal,on_day,text\r\n4,2,P4,2031-02-03,ate\r\n");
    std::filesystem::remove(scratch / "package/water.csv");
    auto json = nlohmann::json::parse(contentOf(scratch / "package/datapackage.json"));
    auto& resources = json["resources"];
    for (auto table = resources.begin(); table != resources.end();) {
        if ((*table)["name"] == "note")
            (*table)["schema"]["fields"] = nlohmann::json::parse(
                R"([{"name": "id"}, {"name": "row_version"}, {"name": "animal"}, {"name": "on_day"}, {"name": "text"}])");
        table = (*table)["name"] == "water" ? resources.erase(table) : table + 1;
    }
    scratch.write("package/datapackage.json", json.dump());
    importPackage(scratch / "package", scratch / "again");
    const Store again = Store::open(scratch / "again");
    REQUIRE(again.records("note").size() == 1);
    CHECK(again.records("note")[0].values == RecordValues{{"animal", "P4"}, {"on_day", "2031-02-03"}, {"text", "ate"}});
    CHECK(again.records("note")[0].version == 2);
    CHECK(again.records("water").empty());
    CHECK(again.records("feeding").size() == 1);
}

TEST_CASE("a spoiled package is refused with file and line, and nothing is left", "[either]") {
    const ScratchFolder scratch;
    exportPackage(fullStore(scratch), scratch / "package");
    const std::string stays = contentOf(scratch / "package/stay.csv");
    const auto refusal = [&] { return messageOf([&] { importPackage(scratch / "package", scratch / "again"); }); };
    scratch.write("package/stay.csv", stays + "2,1,P9,'=B3,2030-12-01,\r\n");
    CHECK(refusal().find("stay.csv: line 3: there is no animal \"P9\"") != std::string::npos);
    scratch.write("package/stay.csv", stays + "2,1,P4,'=B3,yesterday,\r\n");
    CHECK(refusal().find("line 3: \"from_day\" must be a day") != std::string::npos);
    scratch.write("package/stay.csv", "id,animal\r\n");
    CHECK(refusal().find("columns") != std::string::npos);
    scratch.write("package/stay.csv", stays);
    for (const auto& photo : std::filesystem::directory_iterator(scratch / "package/photos")) {
        std::filesystem::permissions(photo.path(), std::filesystem::perms::owner_all);
        std::ofstream(photo.path()) << "other pixels";
    }
    CHECK_FALSE(refusal().empty());
    CHECK_FALSE(std::filesystem::exists(scratch / "again"));
    CHECK(filesIn(scratch.path()) == 3);  // house, its photo, package: no half folder
    scratch.write("plain/datapackage.json", "{}");
    CHECK_FALSE(messageOf([&] { importPackage(scratch / "plain", scratch / "again"); }).empty());
}

TEST_CASE("Darwin Core: an occurrence for each animal and day, its measures with unit and accuracy", "[either]") {
    const ScratchFolder scratch;
    exportDarwinCore(fullStore(scratch), scratch / "dwc");
    CsvReader occurrences(contentOf(scratch / "dwc/occurrence.csv"), ',');
    CHECK(occurrences.next()->front() == "occurrenceID");
    const auto hand = occurrences.next();
    CHECK(hand->at(0) == "P4/2029-02-03");
    CHECK(hand->at(1) == "LivingSpecimen");
    CHECK(occurrences.next()->at(0) == "P4/2031-01-06");
    CHECK_FALSE(occurrences.next().has_value());
    const std::string measures = contentOf(scratch / "dwc/measurement.csv");
    CHECK(measures.find("P4/2031-01-06,photo-2-standard_length_mm,standard_length_mm,15,") != std::string::npos);
    CHECK(measures.find("photo-1-") == std::string::npos);  // replaced by a correction
    CHECK(measures.find("P4/2029-02-03,hand-1,standard_length_mm,88.1,0.5,mm,ruler,K1") != std::string::npos);
    CHECK(contentOf(scratch / "dwc/meta.xml").find("http://rs.tdwg.org/dwc/terms/MeasurementOrFact") !=
          std::string::npos);
}

TEST_CASE("an archive is one file that another place opens as the same collection", "[either]") {
    const ScratchFolder scratch;
    const Store store = fullStore(scratch);
    writeArchive(store, scratch / "house.zip");
    openArchive(scratch / "house.zip", scratch / "again");
    exportPackage(store, scratch / "one");
    exportPackage(Store::open(scratch / "again"), scratch / "two");
    CHECK(contentsOf(scratch / "one") == contentsOf(scratch / "two"));
    CHECK(verifyCollection(scratch / "again").whole());
    CHECK_THROWS_AS(openArchive(scratch / "house.zip", scratch / "again"), Error);  // the place is taken
}

TEST_CASE("a cut, altered or foreign archive is refused and nothing is left", "[either]") {
    const ScratchFolder scratch;
    {
        const Store store = fullStore(scratch);
        writeArchive(store, scratch / "house.zip");
    }
    const std::string whole = contentOf(scratch / "house.zip");
    const std::size_t files = filesIn(scratch.path());
    const auto refused = [&](const std::string& bytes) {
        scratch.write("house.zip", bytes);
        CHECK_THROWS_AS(openArchive(scratch / "house.zip", scratch / "again"), Error);
        CHECK(filesIn(scratch.path()) == files);
    };
    refused(whole.substr(0, whole.size() / 2));
    refused("no archive");
    refused("");
    std::string altered = whole;
    const std::size_t photo = altered.find("pixels of house");
    REQUIRE(photo != std::string::npos);  // photos are stored as they are
    altered[photo] = 'P';
    refused(altered);
    CHECK_THROWS_AS(openArchive(scratch / "nowhere.zip", scratch / "again"), Error);
}

TEST_CASE("a missing or altered original is found, and is not archived in silence", "[either]") {
    const ScratchFolder scratch;
    const Store store = fullStore(scratch);
    CHECK(verifyCollection(scratch / "house").whole());
    const auto photo = store.originalOf(store.photos(store.sessions().at(0).id).at(0));
    std::filesystem::permissions(photo, std::filesystem::perms::owner_all);
    std::ofstream(photo) << "retouched";
    auto found = verifyCollection(scratch / "house");
    REQUIRE(found.troubles.size() == 1);
    CHECK(found.troubles[0].find("altered") != std::string::npos);
    CHECK_THROWS_AS(writeArchive(store, scratch / "house.zip"), Error);
    CHECK_FALSE(std::filesystem::exists(scratch / "house.zip"));
    std::filesystem::remove(photo);
    scratch.write("house/photos/stray.jpg", "x");
    found = verifyCollection(scratch / "house");
    CHECK(found.troubles.at(0).find("missing") != std::string::npos);
    CHECK(found.notes.size() == 1);
}
