// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/measured_days.h"

#include <algorithm>
#include <tuple>

#include "records/collection_file.h"
#include "records/measure_rows.h"
#include "records/statement.h"

namespace ringrule {
namespace {

/// Days of sessions that are read at a time.
constexpr std::size_t kDaysAtATime = 4;

std::vector<Date> sessionDays(const Database& database, Date from, Date to) {
    Statement rows(database, "SELECT DISTINCT on_day FROM session WHERE on_day BETWEEN ? AND ? ORDER BY on_day");
    rows.bind(from).bind(to).run();
    std::vector<Date> days;
    while (rows.next()) days.push_back(rows.date());
    return days;
}

}  // namespace

void eachMeasuredDay(const Store& store, Date from, Date to,
                     const std::function<void(AnimalId, Date, std::span<const Measurement>)>& each) {
    const Database& database = CollectionFile::of(store);
    const std::vector<Date> days = sessionDays(database, from, to);
    DayReader reader(database);
    std::vector<DayMeasure> read;
    std::vector<Measurement> photos;
    for (std::size_t first = 0; first < days.size(); first += kDaysAtATime) {
        read.clear();
        reader.read(days[first], days[std::min(first + kDaysAtATime, days.size()) - 1], read);
        std::vector<DayMeasure*> sorted;
        for (DayMeasure& one : read) sorted.push_back(&one);
        const auto place = [](const DayMeasure* one) {
            return std::tie(one->on, one->animal, one->photo, one->animalIndex, one->id);
        };
        std::sort(sorted.begin(), sorted.end(), [&](const auto* a, const auto* b) { return place(a) < place(b); });
        for (auto at = sorted.begin(); at != sorted.end();) {
            const DayMeasure& head = **at;
            photos.clear();
            for (; at != sorted.end() && (*at)->on == head.on && (*at)->animal == head.animal; ++at)
                photos.push_back(std::move((*at)->measurement));
            each(head.animal, head.on, photos);
        }
    }
}

}  // namespace ringrule
