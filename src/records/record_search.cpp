// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/record_search.h"

#include "records/collection_file.h"
#include "records/record_rows.h"
#include "records/record_values.h"

namespace ringrule {

void eachRecordWith(const Store& store, const std::string& kindName, const RecordValues& values,
                    const std::function<void(const Record&)>& each) {
    const RecordKind& kind = recordKind(kindName);
    RecordValues normal;
    for (const auto& [name, value] : values) normal[name] = normalValue(fieldOf(kind, name), value);
    const Database& database = CollectionFile::of(store);
    eachRecordWith(database, kind, withNumbers(database, kind, normal), [&](const Record& record) { each(record); });
}

}  // namespace ringrule
