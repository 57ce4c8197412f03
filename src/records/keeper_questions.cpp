// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/keeper_questions.h"

#include <algorithm>
#include <map>
#include <tuple>

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

using LastDays = std::map<AnimalId, Date>;

void addLastDays(Statement& rows, LastDays& days) {
    rows.run();
    while (rows.next()) {
        const AnimalId animal = rows.id<AnimalId>();
        const Date day = rows.date();
        const auto [at, fresh] = days.try_emplace(animal, day);
        if (!fresh) at->second = std::max(at->second, day);
    }
}

/// The last day up to `on` of each animal that has a measure with `condition` (SQL on `m`, beginning with AND) in the
/// year before; who was not seen then is looked up one by one, in all years.
class LastPhotos {
public:
    LastPhotos(const Database& database, Date on, const std::string& condition)
        : on_(on),
          ever_(database,
                "SELECT max(s.on_day) FROM measure m JOIN photo p ON p.id = m.photo JOIN session s ON s.id = p.session "
                "WHERE m.animal = ? AND s.on_day <= ?" +
                    condition) {
        Statement rows(
            database,
            "SELECT m.animal + 0, max(s.on_day) FROM session s JOIN photo p ON p.session = s.id JOIN measure m "
            "ON m.photo = p.id WHERE s.on_day BETWEEN ? AND ? AND m.animal IS NOT NULL" +
                condition + " GROUP BY m.animal + 0");  // or SQLite would walk the animals' index, all years of it
        rows.bind(on - std::chrono::days(365)).bind(on);
        addLastDays(rows, ofYear_);
    }

    [[nodiscard]] std::optional<Date> of(AnimalId animal) {
        if (const auto found = ofYear_.find(animal); found != ofYear_.end()) return found->second;
        ever_.bind(animal).bind(on_).run();
        return ever_.next() ? ever_.dateOrNone() : std::nullopt;
    }

private:
    Date on_;
    Statement ever_;
    LastDays ofYear_;
};

/// Animals here on `on` whose last day lies more than `days` back: of a photo with `condition`, or one in `others`.
std::vector<KeeperAnswer> lastDayBefore(const Store& store, Date on, int days, const std::string& condition,
                                        const LastDays& others, const std::string& what) {
    const Database& database = CollectionFile::of(store);
    LastPhotos photos(database, on, condition);
    std::vector<std::pair<std::optional<Date>, KeeperAnswer>> found;
    Statement rows(database, std::string("SELECT a.id, a.code, a.name FROM animal a WHERE") + kHere);
    rows.bind(on).bind(on).run();
    while (rows.next()) {
        const AnimalId animal = rows.id<AnimalId>();
        KeeperAnswer answer{rows.text(), rows.text(), "never " + what};
        std::optional<Date> last = photos.of(animal);
        if (const auto other = others.find(animal); other != others.end())
            last = std::max(last.value_or(other->second), other->second);
        if (last && (on - *last).count() <= days) continue;
        if (last) answer.why = "last " + what + " on " + formatDate(*last) + ", " + daysAgo(on, *last);
        found.emplace_back(last, std::move(answer));
    }
    std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
        return std::tie(a.first, a.second.code) < std::tie(b.first, b.second.code);  // no day at all comes first
    });
    std::vector<KeeperAnswer> answers;
    for (auto& [last, answer] : found) answers.push_back(std::move(answer));
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
    return lastDayBefore(store, on, everyDays - 1, "", {}, "photographed");
}

std::vector<KeeperAnswer> whoIsUnmeasured(const Store& store, Date on, int days) {
    Statement rows(CollectionFile::of(store),
                   "SELECT animal, max(on_day) FROM hand_measure WHERE on_day <= ? AND measure IN "
                   "('standard_length_mm', 'height_mm') GROUP BY animal");
    rows.bind(on);
    LastDays byHand;
    addLastDays(rows, byHand);
    return lastDayBefore(store, on, days, " AND m.accepted = 1 AND m.standard_length_mm IS NOT NULL", byHand,
                         "measured");
}

std::vector<KeeperAnswer> whoRefuses(const Store& store, Date on, int days) {
    Statement rows(
        CollectionFile::of(store),
        "SELECT coalesce(a.code, 'tank ' || t.code), coalesce(a.name, t.name), f.on_day, f.outcome, f.food "
        "FROM feeding_note f LEFT JOIN animal a ON a.id = f.animal LEFT JOIN tank t ON t.id = f.tank WHERE "
        "f.on_day BETWEEN ? AND ? AND (a.id IS NULL OR a.gone_on IS NULL OR a.gone_on > ?) ORDER BY f.on_day, "
        "f.id");
    rows.bind(on - std::chrono::days(std::max(365, days + 8))).bind(on).bind(on).run();  // no run is longer than a year
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
