// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <vector>

#include "records/database.h"
#include "ringrule/records/box_check_record.h"

namespace ringrule {

/// The checks of every box of a collection, and what they say of a day.
class BoxStandings {
public:
    explicit BoxStandings(const Database& database);
    [[nodiscard]] BoxStanding on(const std::string& boxName, Date day) const;
    [[nodiscard]] const std::map<std::string, std::vector<BoxCheckRecord>>& checks() const { return checks_; }

private:
    std::map<std::string, std::vector<BoxCheckRecord>> checks_;
    int goodForDays_ = kBoxCheckGoodForDays;
};

}  // namespace ringrule
