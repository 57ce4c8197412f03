// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/table_style.h"

#include <QEvent>
#include <QHeaderView>
#include <QTableView>
#include <algorithm>

namespace ringrule {
namespace {

class LastColumnFill : public QObject {
public:
    explicit LastColumnFill(QTableView& table) : QObject(&table), table_(table) {
        table.viewport()->installEventFilter(this);
        connect(table.model(), &QAbstractItemModel::modelReset, this, [this] { fill(); });
        connect(table.model(), &QAbstractItemModel::headerDataChanged, this, [this] { fill(); });
    }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->type() == QEvent::Resize) fill();
        return QObject::eventFilter(watched, event);
    }

private:
    void fill() {
        QHeaderView& header = *table_.horizontalHeader();
        if (header.count() == 0) return;
        const QAbstractItemView& view = table_;
        int wanted = 0;
        for (int column = 0; column < header.count(); ++column)
            wanted += std::max(view.sizeHintForColumn(column), header.sectionSizeHint(column));
        const auto mode = wanted <= table_.viewport()->width() ? QHeaderView::Stretch : QHeaderView::ResizeToContents;
        if (header.sectionResizeMode(header.count() - 1) != mode) header.setSectionResizeMode(header.count() - 1, mode);
    }

    QTableView& table_;
};

}  // namespace

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

void fillLastColumn(QTableView& table) {
    table.setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    new LastColumnFill(table);
}

}  // namespace ringrule
