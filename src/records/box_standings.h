// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "records/database.h"
#include "ringrule/husbandry/date.h"
#include "ringrule/optics/box_judgement.h"
#include "ringrule/records/box_check_record.h"

namespace ringrule {

struct PastBoxCheck;

/// The checks of every box of a collection, and what they say of a day.
class BoxStandings {
public:
    explicit BoxStandings(const Database& database);
    ~BoxStandings();

    /// What `judgeBox` says of photos taken with the box on that day. Each is judged once, however many measures ask.
    [[nodiscard]] const BoxJudgement& on(const std::string& boxName, Date day) const;
    [[nodiscard]] const std::map<std::string, std::vector<BoxCheckRecord>>& checks() const { return checks_; }

private:
    std::map<std::string, std::vector<BoxCheckRecord>> checks_;
    std::map<std::string, std::vector<PastBoxCheck>> histories_;
    mutable std::map<std::pair<std::string, Date>, BoxJudgement> told_;
    BoxJudgementOptions options_;
};

}  // namespace ringrule
