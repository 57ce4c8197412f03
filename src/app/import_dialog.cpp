// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/import_dialog.h"

#include <QFileDialog>
#include <QPushButton>

#include "app/core_text.h"
#include "app/dialog_buttons.h"
#include "ringrule/error.h"
#include "ringrule/records/table_import.h"
#include "ui_import_dialog.h"

namespace ringrule {
namespace {

constexpr std::size_t kMostBadRows = 6;

QString cellText(const std::string& text) {
    return QString::fromStdString(text);
}

QString tableWords(const TableImport& table) {
    QStringList lines;
    for (const ColumnUse& use : table.columns)
        lines << QStringLiteral("%1  →  %2")
                     .arg(cellText(use.column),
                          use.field.empty() ? ImportDialog::tr("left out") : cellText(use.field).replace('_', ' '));
    lines << QString();
    for (std::size_t k = 0; k < std::min(kMostBadRows, table.bad.size()); ++k)
        lines << ImportDialog::tr("Line %1: %2").arg(table.bad[k].line).arg(cellText(table.bad[k].sentence));
    if (table.bad.size() > kMostBadRows)
        lines << ImportDialog::tr("And %1 more lines that are bad.").arg(table.bad.size() - kMostBadRows);
    lines << (table.bad.empty()
                  ? ImportDialog::tr("%1 rows give %2 entries.").arg(table.rows).arg(table.records)
                  : ImportDialog::tr("Nothing is read in while a line is bad: mend the table and choose it again."));
    return lines.join('\n');
}

}  // namespace

ImportDialog::ImportDialog(Collection& collection, QWidget* parent)
    : QDialog(parent), ui_(std::make_unique<Ui::ImportDialog>()), collection_(collection) {
    ui_->setupUi(this);
    nameButtons(*ui_->buttons);
    for (const char* kind : {"animal", "hand-measure", "feeding", "note", "stay", "diet-spell", "treatment", "water"})
        ui_->kindCombo->addItem(coreText(recordKind(kind).title), QString::fromUtf8(kind));
    ui_->orderCombo->addItem(tr("not told (2031-01-06 only)"), static_cast<int>(DayOrder::NotTold));
    ui_->orderCombo->addItem(tr("day first"), static_cast<int>(DayOrder::DayFirst));
    ui_->orderCombo->addItem(tr("month first"), static_cast<int>(DayOrder::MonthFirst));
    ui_->buttons->button(QDialogButtonBox::Ok)->setText(tr("Read in"));
    ui_->buttons->button(QDialogButtonBox::Ok)->setEnabled(false);
    connect(ui_->fileButton, &QPushButton::clicked, this, &ImportDialog::chooseFile);
    connect(ui_->fileEdit, &QLineEdit::textChanged, this, &ImportDialog::tryTable);
    connect(ui_->kindCombo, &QComboBox::currentIndexChanged, this, &ImportDialog::tryTable);
    connect(ui_->orderCombo, &QComboBox::currentIndexChanged, this, &ImportDialog::tryTable);
    connect(ui_->buttons, &QDialogButtonBox::accepted, this, &ImportDialog::accept);
    connect(ui_->buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

ImportDialog::~ImportDialog() = default;

void ImportDialog::setFile(const QString& path) {
    ui_->fileEdit->setText(path);
}

void ImportDialog::chooseFile() {
    const QString path = QFileDialog::getOpenFileName(this, tr("Table"), {}, tr("Tables (*.csv *.txt)"));
    if (!path.isEmpty()) setFile(path);
}

void ImportDialog::tryTable() {
    bool good = false;
    QString words = tr("Choose a table whose first line names its columns.");
    const std::filesystem::path file = ui_->fileEdit->text().trimmed().toStdString();
    if (!file.empty()) {
        try {
            const TableImport table =
                collection_.importTable(file, ui_->kindCombo->currentData().toString().toStdString(),
                                        static_cast<DayOrder>(ui_->orderCombo->currentData().toInt()), false);
            words = tableWords(table);
            good = table.bad.empty() && table.records > 0;
        } catch (const Error& error) {
            words = QString::fromStdString(error.what());
        }
    }
    ui_->previewLabel->setText(words);
    ui_->buttons->button(QDialogButtonBox::Ok)->setEnabled(good);
}

void ImportDialog::accept() {
    try {
        records_ = collection_
                       .importTable(ui_->fileEdit->text().trimmed().toStdString(),
                                    ui_->kindCombo->currentData().toString().toStdString(),
                                    static_cast<DayOrder>(ui_->orderCombo->currentData().toInt()), true)
                       .records;
    } catch (const Error& error) {
        ui_->previewLabel->setText(QString::fromStdString(error.what()));
        return;
    }
    QDialog::accept();
}

}  // namespace ringrule
