// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "records/database.h"
#include "records/statement.h"
#include "ringrule/records/store.h"

namespace ringrule {

/// Writes measures, each a row with its landmarks; prepared once, run many times. Made and used inside one transaction
/// of the caller's, in which nobody else adds measures.
class MeasureWriter {
public:
    explicit MeasureWriter(const Database& database);
    MeasureId add(const StoredMeasure& measure);

private:
    Statement row_;
    Statement line_;
    Statement landmark_;
    std::int64_t next_;  ///< number of the next measure
};

/// The current measures (not those replaced by a correction) for which `condition` on `m` holds, with `value` bound to
/// its one question mark, in order of photo and place in it.
[[nodiscard]] std::vector<StoredMeasure> readMeasures(const Database& database, const std::string& condition,
                                                      std::int64_t value);
/// A measure that counts, with no more than what combining an animal's photos of a day needs.
struct DayMeasure {
    MeasureId id;
    Date on;
    PhotoId photo;
    AnimalId animal;
    int animalIndex = 0;
    Measurement measurement;
};

/// Reads such measures of sessions between two days; prepared once, run many times.
class DayReader {
public:
    explicit DayReader(const Database& database);
    ~DayReader();
    /// Adds them to `measures`, in no order.
    void read(Date from, Date to, std::vector<DayMeasure>& measures);

private:
    struct Tables;
    std::unique_ptr<Tables> tables_;
};

/// `readMeasures`, those replaced by a correction included.
[[nodiscard]] std::vector<StoredMeasure> readMeasuresEvenReplaced(const Database& database,
                                                                  const std::string& condition, std::int64_t value);

}  // namespace ringrule
