// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/paper_choice.h"

#include <QComboBox>
#include <QLocale>

namespace ringrule {

void fillPapers(QComboBox& combo) {
    for (const Paper paper : {Paper::A4, Paper::Letter}) {
        const std::string_view name = paperName(paper);
        combo.addItem(QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())), static_cast<int>(paper));
    }
    const bool inches = QLocale::system().measurementSystem() == QLocale::ImperialUSSystem;
    combo.setCurrentIndex(combo.findData(static_cast<int>(inches ? Paper::Letter : Paper::A4)));
}

Paper chosenPaper(const QComboBox& combo) {
    return static_cast<Paper>(combo.currentData().toInt());
}

}  // namespace ringrule
