// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/table_style.h"

#include <QHeaderView>
#include <QTableView>

namespace ringrule {

void styleTable(QTableView& table) {
    table.setWordWrap(false);
    table.verticalHeader()->hide();
    table.verticalHeader()->setDefaultSectionSize(table.fontMetrics().height() + 14);
    table.horizontalHeader()->setHighlightSections(false);
    table.horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    // A long list is as wide as its first rows: looking through a thousand takes longer than it shows.
    table.horizontalHeader()->setResizeContentsPrecision(50);
    // Tab goes on to the next control; the arrow keys walk through the rows.
    table.setTabKeyNavigation(false);
}

}  // namespace ringrule
