// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/keeper_questions.h"

#include <algorithm>
#include <map>

#include "records/collection_file.h"
#include "records/statement.h"

namespace ringrule {
namespace {

constexpr const char* kHere =
    " (a.gone_on IS NULL OR a.gone_on > ?) AND NOT (EXISTS (SELECT 1 FROM stay WHERE animal = a.id) AND NOT EXISTS "
    "(SELECT 1 FROM stay WHERE animal = a.id AND (to_day IS NULL OR to_day >= ?))) ";

std::string daysAgo(Date on, Date then) {
    const auto days = (on - then).count();
    return std::to_string(days) + (days == 1 ? " day ago" : " days ago");
}

/// Measures that a question is about, and what else may tell a day.
struct LastDay {
    std::string condition;  ///< SQL on the measure `m`, beginning with AND
    std::string other;      ///< SQL for days `d` of the animal `a.id` that are no photo's, or empty
    std::string what;
};

/// The last day of an animal as a scalar query with one question mark for the day asked about. `seen.last`, when it is
/// there, is the last one of the year before that day; only who was not seen then is looked up in all years.
std::string lastDaySql(const LastDay& ask) {
    const std::string ever =
        "SELECT coalesce(seen.last, (SELECT max(s.on_day) FROM measure m JOIN photo p ON p.id = m.photo JOIN session s "
        "ON s.id = p.session WHERE m.animal = a.id AND s.on_day <= ?" +
        ask.condition + ")) AS d";
    return "(SELECT max(d) FROM (" + ever + (ask.other.empty() ? "" : " UNION ALL " + ask.other) + ") days)";
}

/// Animals here on `on` whose last day lies `days` back or more.
std::vector<KeeperAnswer> lastDayBefore(const Store& store, Date on, int days, const LastDay& ask) {
    Statement rows(CollectionFile::of(store),
                   "WITH seen AS (SELECT m.animal AS animal, max(s.on_day) AS last FROM session s JOIN photo p ON "
                   "p.session = s.id JOIN measure m ON m.photo = p.id WHERE s.on_day BETWEEN ? AND ? AND m.animal IS "
                   "NOT NULL" +
                       ask.condition + " GROUP BY m.animal) SELECT a.code, a.name, " + lastDaySql(ask) +
                       " AS last FROM animal a LEFT JOIN seen ON seen.animal = a.id WHERE" + kHere +
                       "AND (seen.last IS NULL OR seen.last < ?) ORDER BY last NULLS FIRST, a.code");
    rows.bind(on - std::chrono::days(std::max(days, 365))).bind(on).bind(on);
    if (!ask.other.empty()) rows.bind(on);
    rows.bind(on).bind(on).bind(on - std::chrono::days(days)).run();
    std::vector<KeeperAnswer> answers;
    while (rows.next()) {
        const std::string code = rows.text();
        const std::string name = rows.text();
        const auto last = rows.dateOrNone();
        if (last && (on - *last).count() <= days) continue;
        answers.push_back({code, name,
                           last ? "last " + ask.what + " on " + formatDate(*last) + ", " + daysAgo(on, *last)
                                : "never " + ask.what});
    }
    return answers;
}

/// What was noted of a day's food.
struct Meal {
    bool taken = false;
    bool refused = false;
};

/// The length of the run of refused days that ends with the last day noted.
int refusedRun(const std::map<Date, Meal>& meals, Date on) {
    int run = 0;
    std::optional<Date> later;
    for (auto day = meals.rbegin(); day != meals.rend(); ++day) {
        if (day->first > on) continue;
        if (!later && (on - day->first).count() > 7) return 0;
        if (later && (*later - day->first).count() > 1) break;
        if (!day->second.refused || day->second.taken) break;
        ++run;
        later = day->first;
    }
    return run;
}

}  // namespace

std::vector<KeeperAnswer> whoIsDue(const Store& store, Date on, int everyDays) {
    return lastDayBefore(store, on, everyDays - 1, {"", "", "photographed"});
}

std::vector<KeeperAnswer> whoIsUnmeasured(const Store& store, Date on, int days) {
    return lastDayBefore(store, on, days,
                         {" AND m.accepted = 1 AND m.standard_length_mm IS NOT NULL",
                          "SELECT h.on_day FROM hand_measure h WHERE h.animal = a.id AND h.on_day <= ? AND h.measure IN "
                          "('standard_length_mm', 'height_mm')",
                          "measured"});
}

std::vector<KeeperAnswer> whoRefuses(const Store& store, Date on, int days) {
    Statement rows(CollectionFile::of(store),
                   "SELECT coalesce(a.code, 'tank ' || t.code), coalesce(a.name, t.name), f.on_day, f.outcome, f.food "
                   "FROM feeding_note f LEFT JOIN animal a ON a.id = f.animal LEFT JOIN tank t ON t.id = f.tank WHERE "
                   "f.on_day <= ? AND (a.id IS NULL OR a.gone_on IS NULL OR a.gone_on > ?) ORDER BY f.on_day, f.id");
    rows.bind(on).bind(on).run();
    struct Eater {
        std::string name;
        std::string lastFood;
        std::map<Date, Meal> meals;
    };
    std::map<std::string, Eater> eaters;
    while (rows.next()) {
        Eater& eater = eaters[rows.text()];
        eater.name = rows.text();
        Meal& meal = eater.meals[rows.date()];
        const std::string outcome = rows.text();
        meal.taken = meal.taken || outcome == "taken";
        meal.refused = meal.refused || outcome == "refused";
        if (outcome == "refused") eater.lastFood = rows.text();
    }
    std::vector<KeeperAnswer> answers;
    for (const auto& [code, eater] : eaters) {
        const int run = refusedRun(eater.meals, on);
        if (run >= days)
            answers.push_back(
                {code, eater.name, "refused on " + std::to_string(run) + " days running, last " + eater.lastFood});
    }
    return answers;
}

std::vector<KeeperAnswer> whoIsOfUnknownSex(const Store& store, Date on, int days) {
    Statement rows(CollectionFile::of(store),
                   std::string("SELECT a.code, a.name, a.hatched_on, a.arrived_on FROM animal a WHERE a.sex = "
                               "'unknown' AND") +
                       kHere + "ORDER BY a.code");
    rows.bind(on).bind(on).run();
    std::vector<KeeperAnswer> answers;
    while (rows.next()) {
        const std::string code = rows.text();
        const std::string name = rows.text();
        const auto hatched = rows.dateOrNone();
        const auto arrived = rows.dateOrNone();
        const auto since = hatched ? hatched : arrived;
        if (!since || (on - *since).count() < days) continue;
        answers.push_back(
            {code, name,
             std::string(hatched ? "hatched " : "arrived ") + formatDate(*since) + ", " + daysAgo(on, *since)});
    }
    return answers;
}

std::vector<KeeperAnswer> whoIsToFollowUp(const Store& store, Date on) {
    Statement rows(CollectionFile::of(store),
                   "SELECT coalesce(a.code, 'tank ' || t.code), coalesce(a.name, t.name), d.finding, d.decision, "
                   "d.on_day, d.follow_up_on, d.note FROM finding_decision d LEFT JOIN animal a ON a.id = d.animal "
                   "LEFT JOIN tank t ON t.id = d.tank WHERE d.follow_up_on <= ? AND d.on_day <= ? AND (a.id IS NULL OR "
                   "a.gone_on IS NULL OR a.gone_on > ?) AND NOT EXISTS (SELECT 1 FROM finding_decision later WHERE "
                   "later.finding = d.finding AND (later.animal = d.animal OR later.tank = d.tank) AND later.on_day <= "
                   "? AND (later.on_day > d.on_day OR (later.on_day = d.on_day AND later.id > d.id))) "
                   "ORDER BY d.follow_up_on, d.id");
    rows.bind(on).bind(on).bind(on).bind(on).run();
    std::vector<KeeperAnswer> answers;
    while (rows.next()) {
        KeeperAnswer answer{rows.text(), rows.text(), {}};
        const std::string finding = rows.text();
        const std::string decision = rows.text();
        const std::string decidedOn = rows.text();
        const Date due = rows.date();
        const std::string note = rows.text();
        answer.why = "look again on " + formatDate(due) + (due < on ? " (" + daysAgo(on, due) + ")" : "") + ": " +
                     finding + ", " + decision + " on " + decidedOn + (note.empty() ? "" : ", " + note);
        answers.push_back(std::move(answer));
    }
    return answers;
}

}  // namespace ringrule
