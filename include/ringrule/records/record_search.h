// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "ringrule/records/store.h"

namespace ringrule {

/// Calls `each` with every record of a kind whose fields have these values (empty: the field is empty; no values: all),
/// in order of number, links written as codes where the other record has one. Needs no more memory than one record;
/// `each` must not ask the store anything. Throws `Error(BadData)` when the kind has no such field, a value is none of
/// its field's, or no record has such a code.
void eachRecordWith(const Store& store, const std::string& kind, const RecordValues& values,
                    const std::function<void(const Record&)>& each);

}  // namespace ringrule
