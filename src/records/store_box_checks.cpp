// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <charconv>

#include "records/box_standings.h"
#include "records/record_rows.h"
#include "records/row_history.h"
#include "records/store_state.h"
#include "records/typed_records.h"
#include "ringrule/error.h"
#include "ringrule/records/box_check_history.h"

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
    for (const auto& [box, checks] : checks_) {
        for (const BoxCheckRecord& check : checks) histories_[box].push_back(pastBoxCheck(check));
    }
    const std::string days = database.textOf("SELECT value FROM meta WHERE key = 'box_check_days'");
    int given = 0;
    std::from_chars(days.data(), days.data() + days.size(), given);
    if (given > 0) options_.mostRodAgeDays = given;
}

BoxStandings::~BoxStandings() = default;

const BoxJudgement& BoxStandings::on(const std::string& boxName, Date day) const {
    const auto [told, fresh] = told_.try_emplace({boxName, day});
    const auto history = histories_.find(boxName);
    const std::vector<PastBoxCheck> none;
    if (fresh)
        told->second =
            judgeBox({}, history == histories_.end() ? none : history->second, formatDate(day), {}, options_);
    return told->second;
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

BoxJudgement Store::boxJudgementOn(const std::string& boxName, Date on) const {
    return BoxStandings(state_->database).on(boxName, on);
}

}  // namespace ringrule
