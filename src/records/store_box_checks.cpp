// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <charconv>

#include "records/box_standings.h"
#include "records/record_rows.h"
#include "records/row_history.h"
#include "records/store_state.h"
#include "records/typed_records.h"
#include "ringrule/error.h"

namespace ringrule {

BoxStandings::BoxStandings(const Database& database) {
    eachRecord(database, recordKind("box-check"), Links::AsNumbers, {}, [&](const Record& record) {
        BoxCheckRecord check = structOf<BoxCheckRecord>(record);
        check.withRod = record.text("kind") == "rod";
        checks_[check.boxName].push_back(std::move(check));
    });
    for (auto& [box, checks] : checks_) {
        std::stable_sort(checks.begin(), checks.end(),
                         [](const BoxCheckRecord& a, const BoxCheckRecord& b) { return a.at < b.at; });
    }
    const std::string days = database.textOf("SELECT value FROM meta WHERE key = 'box_check_days'");
    int given = 0;
    std::from_chars(days.data(), days.data() + days.size(), given);
    if (given > 0) goodForDays_ = given;
}

BoxStanding BoxStandings::on(const std::string& boxName, Date day) const {
    const auto found = checks_.find(boxName);
    return found == checks_.end() ? BoxStanding::NeverChecked : boxStanding(found->second, day, goodForDays_);
}

void Store::addBoxCheck(const BoxCheckRecord& check) {
    Record record = recordOf(check);
    record.values["kind"] = check.withRod ? "rod" : "plate";
    addRow("box-check", record.values);
}

std::vector<BoxCheckRecord> Store::boxChecks(const std::string& boxName) const {
    const BoxStandings standings(state_->database);
    std::vector<BoxCheckRecord> all;
    for (const auto& [box, checks] : standings.checks()) {
        if (boxName.empty() || box == boxName) all.insert(all.end(), checks.begin(), checks.end());
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const BoxCheckRecord& a, const BoxCheckRecord& b) { return a.at < b.at; });
    return all;
}

BoxStanding Store::boxStandingOn(const std::string& boxName, Date on) const {
    return BoxStandings(state_->database).on(boxName, on);
}

}  // namespace ringrule
