// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/record_dialog.h"

#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QJsonArray>
#include <QJsonDocument>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>

#include "app/core_text.h"
#include "app/day_text.h"
#include "app/dialog_buttons.h"
#include "app/natural_order.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

/// Stands for "not told" in a date field.
const QDate kNoDay(1900, 1, 1);

QString labelText(const std::string& text) {
    return QString::fromStdString(text);
}

QDateEdit* dayField(const RecordField& field, const QString& value, QWidget* parent) {
    auto* edit = new QDateEdit(parent);
    edit->setCalendarPopup(true);
    edit->setDisplayFormat(dayPattern());
    if (!field.required) {
        edit->setMinimumDate(kNoDay);
        edit->setSpecialValueText(RecordDialog::tr("not told"));
    }
    const QDate given = QDate::fromString(value, Qt::ISODate);
    edit->setDate(given.isValid() ? given : field.required ? QDate::currentDate() : kNoDay);
    return edit;
}

/// A JSON list of texts as words between commas, and back.
QString listedWords(const QString& json) {
    QStringList words;
    const QJsonArray list = QJsonDocument::fromJson(json.toUtf8()).array();
    for (const auto word : list) words << word.toString();
    return words.join(QStringLiteral(", "));
}

QString listOf(const QString& words) {
    QJsonArray list;
    for (const QString& word : words.split(',', Qt::SkipEmptyParts)) list.append(word.trimmed());
    return QString::fromUtf8(QJsonDocument(list).toJson(QJsonDocument::Compact));
}

/// Choices that are ids are said in the keeper's words.
QString choiceWords(const QString& id) {
    return coreText(id.toStdString()).replace('_', ' ').replace('-', ' ');
}

}  // namespace

RecordDialog::RecordDialog(const Collection& collection, const QString& title, const QString& lead,
                           const std::vector<RecordField>& fields, const RecordValues& values, Keep keep,
                           QWidget* parent)
    : QDialog(parent), collection_(collection), keep_(std::move(keep)) {
    setWindowTitle(title);
    setMinimumWidth(480);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(24, 24, 24, 24);
    column->setSpacing(12);
    auto* heading = new QLabel(title, this);
    heading->setProperty("role", "heading");
    column->addWidget(heading);
    auto* words = new QLabel(lead, this);
    words->setWordWrap(true);
    words->setProperty("role", "quiet");
    words->setVisible(!lead.isEmpty());
    column->addWidget(words);
    addFields(*column, fields, values);
    problem_ = new QLabel(this);
    problem_->setWordWrap(true);
    problem_->setProperty("role", "problem");
    column->addWidget(problem_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Save | QDialogButtonBox::Cancel, this);
    nameButtons(*buttons);
    save_ = buttons->button(QDialogButtonBox::Save);
    save_->setProperty("role", "primary");
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &RecordDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    check();
}

void RecordDialog::addFields(QVBoxLayout& column, const std::vector<RecordField>& fields, const RecordValues& values) {
    auto* grid = new QGridLayout;
    grid->setVerticalSpacing(10);
    grid->setHorizontalSpacing(14);
    grid->setColumnStretch(0, 2);
    grid->setColumnStretch(1, 3);
    column.addLayout(grid);
    for (const RecordField& field : fields) {
        const auto given = values.find(field.name);
        const std::string value = given == values.end() ? field.otherwise : given->second;
        const QString unit = field.unit.empty() ? QString() : QStringLiteral(", ") + labelText(field.unit);
        QString asked = coreText(field.title);
        // "…, a JSON list of texts" is for those who write programs.
        if (field.type == FieldType::Words) asked = asked.section(',', 0, 0);
        auto* caption = new QLabel(asked + unit, this);
        QWidget* editor = editorFor(field, labelText(value));
        editor->setObjectName(labelText(field.name));
        editor->setAccessibleName(caption->text());
        caption->setWordWrap(true);
        caption->setBuddy(editor);
        const int row = grid->rowCount();
        grid->addWidget(caption, row, 0);
        grid->addWidget(editor, row, 1);
        entries_.push_back({field, editor});
    }
}

QWidget* RecordDialog::editorFor(const RecordField& field, const QString& value) {
    if (field.type == FieldType::Day) return dayField(field, value, this);
    if (field.type == FieldType::Choice || field.type == FieldType::Link || field.type == FieldType::YesNo) {
        auto* combo = new QComboBox(this);
        if (!field.required) combo->addItem(tr("not told"), QString());
        if (field.type == FieldType::YesNo) {
            combo->addItem(tr("yes"), QStringLiteral("true"));
            combo->addItem(tr("no"), QStringLiteral("false"));
        } else if (field.type == FieldType::Choice) {
            for (const QString& id : labelText(field.of).split(' ', Qt::SkipEmptyParts))
                combo->addItem(choiceWords(id), id);
        } else {
            std::vector<std::string> codes;
            for (const Record& record : collection_.store().records(field.of)) codes.push_back(record.text("code"));
            std::sort(codes.begin(), codes.end(), naturalLess);
            for (const std::string& code : codes) combo->addItem(labelText(code), labelText(code));
            // A tank or a state may be a new one.
            combo->setEditable(field.of == "tank");
        }
        combo->setCurrentIndex(std::max(0, combo->findData(value)));
        if (combo->isEditable() && combo->findData(value) < 0) combo->setEditText(value);
        connect(combo, &QComboBox::currentTextChanged, this, &RecordDialog::check);
        return combo;
    }
    auto* line = new QLineEdit(field.type == FieldType::Words ? listedWords(value) : value, this);
    if (field.type == FieldType::Words) line->setPlaceholderText(tr("one, two, three"));
    connect(line, &QLineEdit::textChanged, this, &RecordDialog::check);
    return line;
}

QString RecordDialog::textIn(const Entry& entry) {
    if (const auto* day = qobject_cast<QDateEdit*>(entry.editor))
        return !entry.field.required && day->date() == kNoDay ? QString() : day->date().toString(Qt::ISODate);
    if (const auto* combo = qobject_cast<QComboBox*>(entry.editor))
        return combo->isEditable() ? combo->currentText().trimmed() : combo->currentData().toString();
    const QString text = qobject_cast<QLineEdit*>(entry.editor)->text().trimmed();
    if (entry.field.type == FieldType::Words) return listOf(text);
    // Keepers type decimal commas; the store reads points.
    return entry.field.type == FieldType::Number ? QString(text).replace(',', '.') : text;
}

RecordValues RecordDialog::values() const {
    RecordValues values;
    for (const Entry& entry : entries_) values[entry.field.name] = textIn(entry).toStdString();
    return values;
}

void RecordDialog::check() {
    if (save_ == nullptr) return;
    const auto missing = std::find_if(entries_.begin(), entries_.end(), [](const Entry& entry) {
        return entry.field.required && textIn(entry).isEmpty();
    });
    problem_->setText(missing == entries_.end() ? QString()
                                                : tr("Still needed: %1.").arg(coreText(missing->field.title)));
    save_->setEnabled(missing == entries_.end());
}

void RecordDialog::accept() {
    if (!save_->isEnabled()) return;
    try {
        keep_(values());
    } catch (const Error& error) {
        problem_->setText(QString::fromStdString(error.what()));
        return;
    }
    QDialog::accept();
}

}  // namespace ringrule
