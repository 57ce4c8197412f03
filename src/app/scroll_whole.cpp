// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/scroll_whole.h"

#include <QScrollArea>
#include <QVBoxLayout>

namespace ringrule {

void scrollWhole(QWidget& page) {
    auto* inner = new QWidget;
    inner->setLayout(page.layout());
    auto* area = new QScrollArea(&page);
    area->setProperty("role", "page");
    area->setFrameShape(QFrame::NoFrame);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidget(inner);
    auto* outer = new QVBoxLayout(&page);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->addWidget(area);
}

}  // namespace ringrule
