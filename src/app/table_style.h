// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QTableView;

namespace ringrule {

/// Gives a table of rows the look and keys that all tables of the app share.
void styleTable(QTableView& table);

/// The last column takes what is left of the width, but is never narrower than its words: then the table scrolls
/// sideways. Precondition: the table has its model.
void fillLastColumn(QTableView& table);

}  // namespace ringrule
