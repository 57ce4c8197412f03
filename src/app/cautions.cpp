// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cautions.h"

#include <QCoreApplication>
#include <QDialog>

#include "app/dialog_buttons.h"
#include "ui_cautions_dialog.h"

namespace ringrule {
QString handlingCaution() {
    return QCoreApplication::translate(
        "Cautions",
        "Welfare first: stop if the animal darts, gasps, floats or goes pale; never lift it into air; wear wet gloves. "
        "<a href=\"cautions\">All cautions</a>");
}

QString judgingCaution() {
    return QCoreApplication::translate(
        "Cautions",
        "Measures, not diagnoses: a thin, listless or refusing animal goes to the veterinarian. "
        "<a href=\"cautions\">All cautions</a>");
}

QString allCautions() {
    return QCoreApplication::translate(
        "Cautions",
        "<h4>The animal</h4>"
        "<p>Stop if it darts, gasps, floats or goes pale. It stays under water the whole time, a minute or two in the "
        "box. Lead it with a soft net or a cup and wet gloved hands. Never uncurl a tail by force. Do not handle sick "
        "or newborn animals. Photograph brooding males and animals that carry eggs only if it must be; they are never "
        "judged on girth. Anaesthesia only as a veterinarian directs.</p>"
        "<h4>You</h4>"
        "<p>Wear gloves and cover cuts: water and fish can carry <i>Mycobacterium marinum</i> and other infections. "
        "Lamps and cameras near salt water: low voltage or a residual-current device.</p>"
        "<h4>What the numbers are</h4>"
        "<p>Ringrule shows measures, not diagnoses. A thin, listless or refusing animal goes to the veterinarian, "
        "whatever its numbers say. A flag says what was seen, against whom and by how much, and what else may explain "
        "it; an improvement after a change does not prove the cause.</p>"
        "<h4>The law</h4>"
        "<p>Local rules on handling, record keeping and protected species come before anything here. Seahorses are "
        "listed in CITES Appendix II.</p>");
}

void showCautions(QWidget* parent) {
    auto* dialog = new QDialog(parent);
    Ui::CautionsDialog ui;
    ui.setupUi(dialog);
    nameButtons(*ui.buttons);
    ui.text->document()->setDocumentMargin(14);
    ui.text->setHtml(allCautions());
    QObject::connect(ui.buttons, &QDialogButtonBox::rejected, dialog, &QDialog::close);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->show();
}

}  // namespace ringrule
