// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QTableView;

namespace ringrule {

/// Gives a table of rows the look and keys that all tables of the app share.
void styleTable(QTableView& table);

}  // namespace ringrule
