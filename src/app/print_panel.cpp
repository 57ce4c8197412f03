// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print_panel.h"

#include <QFileDialog>

#include "app/paper_choice.h"
#include "ringrule/sheets/card_sheet.h"
#include "ui_print_panel.h"

namespace ringrule {

PrintPanel::PrintPanel(CurrentBox& current, QWidget* parent)
    : BoxPanel(current, parent), ui_(std::make_unique<Ui::PrintPanel>()) {
    ui_->setupUi(this);
    fillPapers(*ui_->paperCombo);
    connect(ui_->numbersEdit, &QLineEdit::textChanged, this,
            [this](const QString& text) { ui_->cardsButton->setEnabled(!text.trimmed().isEmpty()); });
    connect(ui_->cardsButton, &QPushButton::clicked, this, &PrintPanel::saveCards);
    ui_->cardsButton->setEnabled(false);
}

PrintPanel::~PrintPanel() = default;

void PrintPanel::showBox() {
    ui_->plateLabel->setText(tr("Box file: %1").arg(QString::fromStdString(current_.file().string())));
    ui_->numbersEdit->setText(QString::fromStdString(current_.cardNumbers()));
}

void PrintPanel::saveCards() {
    const QString path = QFileDialog::getSaveFileName(this, tr("Save the animal cards"), QStringLiteral("cards.pdf"),
                                                      tr("Pages (*.pdf)"));
    if (path.isEmpty()) return;
    attempt([&] {
        const std::vector<int> numbers = cardNumbersIn(ui_->numbersEdit->text().trimmed().toStdString());
        CardSheetOptions options;
        options.paper = chosenPaper(*ui_->paperCombo);
        options.markerMm = ui_->markerSpin->value();
        options.names = current_.cardNames();
        const int sheets = writeCards(numbers, path.toStdString(), options);
        emit news(tr("%1 cards on %2 sheets were saved in %3. Print them at 100 %.")
                      .arg(numbers.size())
                      .arg(sheets)
                      .arg(path));
    });
}

}  // namespace ringrule
