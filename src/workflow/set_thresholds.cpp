// SPDX-License-Identifier: GPL-3.0-or-later
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "ringrule/error.h"
#include "ringrule/workflow/species_file.h"

namespace ringrule {

void setThresholdsOfCollection(const std::filesystem::path& folder, const std::map<std::string, double>& values,
                               const std::string& source) {
    const auto own = folder / "species.json";
    // Read as a whole first: what is wrong in the file is said, not overwritten.
    (void)speciesOfCollection(folder);
    std::string text = shippedSpeciesText();
    if (std::filesystem::exists(own)) {
        std::ifstream in(own, std::ios::binary);
        text.assign(std::istreambuf_iterator<char>(in), {});
    }
    auto json = nlohmann::ordered_json::parse(text);
    auto& list = json["thresholds"];
    if (!list.is_array()) list = nlohmann::ordered_json::array();
    for (const auto& [name, value] : values) {
        JudgeOptions tried;
        if (const auto wrong = setThreshold(tried, name, value))
            throw Error(ErrorKind::BadData, "\"" + name + "\" " + *wrong);
        const nlohmann::ordered_json entry{{"name", name}, {"value", value}, {"source", source}};
        bool there = false;
        for (auto& each : list)
            if (each.value("name", "") == name) {
                each = entry;
                there = true;
            }
        if (!there) list.push_back(entry);
    }
    const auto fresh = folder / "species.json.new";
    std::ofstream out(fresh, std::ios::binary);
    out << json.dump(2) << '\n';
    out.close();
    std::error_code failed;
    if (out) std::filesystem::rename(fresh, own, failed);
    if (!out || failed)
        throw Error(ErrorKind::NoSpace, "the thresholds cannot be written; check the folder and the free space",
                    own.string());
}

}  // namespace ringrule
