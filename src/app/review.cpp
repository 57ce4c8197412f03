// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/review.h"

#include <algorithm>
#include <functional>

#include "app/natural_order.h"
#include "ringrule/judge/condition_index.h"
#include "ringrule/records/store.h"
#include "ringrule/workflow/collection_review.h"
#include "ringrule/workflow/species_file.h"

namespace ringrule {
namespace {

std::vector<BroodRecord> broodRecordsOf(const Store& store) {
    std::vector<BroodRecord> records;
    for (const Brood& brood : store.broods()) records.push_back({brood, store.broodEvents(brood.id)});
    return records;
}

}  // namespace

Review reviewOf(const std::filesystem::path& folder, std::optional<Date> asOf) {
    Review review;
    const Store store = Store::open(folder);
    review.histories = historiesFromStore(store);
    std::stable_sort(
        review.histories.begin(), review.histories.end(),
        [](const AnimalHistory& a, const AnimalHistory& b) { return naturalLess(a.animal.code, b.animal.code); });
    for (const AnimalHistory& history : review.histories)
        for (const Observation& observation : history.observations) review.days.push_back(observation.on);
    std::sort(review.days.begin(), review.days.end(), std::greater<>());
    review.days.erase(std::unique(review.days.begin(), review.days.end()), review.days.end());
    for (const Date day : review.days)
        if (!review.asOf && (!asOf || day <= *asOf)) review.asOf = day;
    review.broodRecords = broodRecordsOf(store);
    review.broods = broodGroups(review.histories, review.broodRecords, review.asOf.value_or(Date::max()));
    if (!review.asOf) return review;
    review.rules = speciesOfCollection(folder).rules;
    review.findings = reviewCollection(store, review.histories, *review.asOf, review.rules);
    review.conditions = conditionIndices(review.histories, *review.asOf);
    for (std::size_t k = 0; k < review.histories.size(); ++k)
        if (const auto change =
                dietChange(review.histories, k, *review.asOf, review.rules.of(review.histories[k].animal.species)))
            review.dietChanges.push_back(change.value());
    return review;
}

}  // namespace ringrule
