// SPDX-License-Identifier: GPL-3.0-or-later
#include "demo_set.h"

#include <fstream>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace render {

namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kHatched = "2030-11-15";
constexpr const char* kMoved = "2030-12-20";  // from the nursery to Bay 3
constexpr const char* kDietChange = "2031-06-16";

Json animalsJson() {
    // Bought as young adults: their age is a guess of the supplier.
    const std::array<const char*, 5> seahorseDates{"2029-08-01", "2029-06-15", "2029-09-01", "2029-07-01",
                                                   "2029-09-01"};
    Json list = Json::array();
    for (const Animal& animal : demoAnimals()) {
        const bool pipefish = animal.shape == Shape::Pipefish;
        list.push_back({{"code", animal.code},
                        {"species", animal.species},
                        {"shape", pipefish ? "pipefish" : "seahorse"},
                        {"sex", animal.sex},
                        {"hatched_on", pipefish ? kHatched : seahorseDates[static_cast<std::size_t>(animal.card - 11)]},
                        {"hatched_exact", pipefish},
                        {"card", animal.card}});
    }
    return list;
}

Json staysJson() {
    Json list = Json::array();
    for (const Animal& animal : demoAnimals()) {
        if (animal.shape == Shape::Pipefish) {
            list.push_back({{"animal", animal.code}, {"tank", "nursery"}, {"from", kHatched}, {"to", kMoved}});
            list.push_back({{"animal", animal.code}, {"tank", "bay-3"}, {"from", kMoved}, {"to", nullptr}});
        } else {
            list.push_back({{"animal", animal.code}, {"tank", "bay-5"}, {"from", "2030-10-02"}, {"to", nullptr}});
        }
    }
    return list;
}

Json dietsJson() {
    return {{{"code", "mysid-frozen"},
             {"name", "Frozen mysids and copepods"},
             {"foods", {"frozen mysids", "frozen copepods"}},
             {"feeds_per_day", 3}},
            {{"code", "mixed"},
             {"name", "Live and frozen, mixed"},
             {"foods", {"live enriched brine shrimp", "frozen mysids", "frozen copepods"}},
             {"feeds_per_day", 3}},
            {{"code", "brine-live"},
             {"name", "Live brine shrimp only"},
             {"foods", {"live brine shrimp"}},
             {"feeds_per_day", 4}}};
}

Json dietSpellsJson() {
    Json list = Json::array();
    const auto add = [&list](const std::string& animal, const char* diet, const char* from, Json to) {
        list.push_back({{"animal", animal}, {"diet", diet}, {"from", from}, {"to", std::move(to)}});
    };
    for (const char* animal : {"P1", "P2", "P3"}) {
        add(animal, "mysid-frozen", kMoved, nullptr);
    }
    add("P4", "brine-live", kMoved, kDietChange);
    add("P4", "mixed", kDietChange, nullptr);
    for (const char* animal : {"P5", "P6", "P7"}) {
        add(animal, "mixed", kMoved, nullptr);
    }
    for (const char* animal : {"H1", "H2", "H3", "H4", "H5"}) {
        add(animal, "mysid-frozen", "2030-10-02", nullptr);
    }
    return list;
}

Json notesJson() {
    return {{{"animal", "P4"}, {"on", "2031-02-20"}, {"text", "Picks live brine shrimp only."}},
            {{"animal", "P4"}, {"on", "2031-04-10"}, {"text", "Leaves everything frozen."}},
            {{"animal", "P4"}, {"on", "2031-05-19"}, {"text", "Frozen mysids offered twice, untouched."}},
            {{"animal", "H4"}, {"on", "2031-05-02"}, {"text", "Pouch full and round since yesterday."}},
            {{"animal", "P4"}, {"on", kDietChange}, {"text", "Diet changed: live mysids, thawed ones among them."}},
            {{"animal", "P4"}, {"on", "2031-06-24"}, {"text", "Takes the first thawed mysids."}},
            {{"animal", "P4"}, {"on", "2031-07-20"}, {"text", "Eats thawed mysids at every feed."}},
            {{"animal", "H3"}, {"on", "2031-03-03"}, {"text", "Would not let go of its tail; left alone."}}};
}

Json sessionsJson() {
    Json list = Json::array();
    for (std::size_t i = 0; i < demoSessions().size(); ++i) {
        const std::string& day = demoSessions()[i].on;
        list.push_back({{"on", day}, {"keeper", i % 3 == 2 ? "K2" : "K1"}, {"folder", day}, {"box", "bench-box.json"}});
    }
    list.back()["to_look_at"] = "bay-5";
    return list;
}

}  // namespace

void writeHouse(const std::filesystem::path& file) {
    const Json house = {
        {"format", "ringrule-house/1"},
        {"house", "Lantern Quay Fish House"},
        {"keepers", {"K1", "K2"}},
        {"tanks",
         {{{"code", "bay-3"}, {"name", "Bay 3"}},
          {{"code", "bay-5"}, {"name", "Bay 5"}},
          {{"code", "nursery"}, {"name", "Nursery"}}}},
        {"diets", dietsJson()},
        {"animals", animalsJson()},
        {"stays", staysJson()},
        {"diet_spells", dietSpellsJson()},
        {"states",
         Json::array({{{"animal", "H4"}, {"state", "brooding"}, {"from", "2031-05-01"}, {"to", "2031-05-16"}}})},
        {"notes", notesJson()},
        {"sessions", sessionsJson()}};
    std::ofstream stream(file);
    stream << house.dump(1) << '\n';
    if (!stream) {
        throw std::runtime_error("cannot write " + file.string());
    }
}

}  // namespace render
