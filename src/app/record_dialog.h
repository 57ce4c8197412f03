// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <functional>
#include <vector>

#include "app/collection.h"

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace ringrule {

/// A form for one record, made from its fields: text, choice, day, number, or another record by its code. What cannot
/// be kept is said in the form, and what was typed stays.
class RecordDialog : public QDialog {
    Q_OBJECT

public:
    /// Keeps what was typed; throws `Error` with a sentence for the keeper.
    using Keep = std::function<void(const RecordValues&)>;

    /// `values`: what the fields say at first. Fields without a place in the form keep what they said.
    RecordDialog(const Collection& collection, const QString& title, const QString& lead,
                 const std::vector<RecordField>& fields, const RecordValues& values, Keep keep,
                 QWidget* parent = nullptr);

    [[nodiscard]] RecordValues values() const;

public slots:
    void accept() override;

private:
    struct Entry {
        RecordField field;
        QWidget* editor = nullptr;
    };

    void addFields(QVBoxLayout& column, const std::vector<RecordField>& fields, const RecordValues& values);
    [[nodiscard]] QWidget* editorFor(const RecordField& field, const QString& value);
    [[nodiscard]] static QString textIn(const Entry& entry);
    void check();

    const Collection& collection_;
    Keep keep_;
    std::vector<Entry> entries_;
    QLabel* problem_ = nullptr;
    QPushButton* save_ = nullptr;
};

}  // namespace ringrule
