// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "records/store_state.h"

namespace ringrule {

/// The database behind a store, for what reads or writes whole tables.
class CollectionFile {
public:
    [[nodiscard]] static Database& of(const Store& store) { return store.state_->database; }
};

}  // namespace ringrule
