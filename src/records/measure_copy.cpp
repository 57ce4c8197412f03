// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/measure_copy.h"

#include "records/measure_rows.h"
#include "records/statement.h"
#include "ringrule/error.h"

namespace ringrule {

std::int64_t addCopyOfReplaced(const Database& database, std::int64_t measure, const std::string& keeper) {
    Statement later(database, "SELECT 1 FROM measure WHERE replaces = ?");
    if (later.bind(measure).run().next())
        throw Error(ErrorKind::BadData,
                    "measure " + std::to_string(measure) + " was corrected again; take that correction back first");
    auto first = readMeasuresEvenReplaced(database, "m.id = (SELECT replaces FROM measure WHERE id = ?)", measure);
    if (first.empty())
        throw Error(ErrorKind::BadData, "measure " + std::to_string(measure) + " corrects no other measure");
    StoredMeasure again = std::move(first.front());
    again.replaces = MeasureId{measure};
    if (!keeper.empty()) again.keeper = keeper;
    return MeasureWriter(database).add(again).value;
}

}  // namespace ringrule
