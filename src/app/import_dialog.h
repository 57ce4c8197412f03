// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <filesystem>
#include <memory>

#include "app/collection.h"

namespace Ui {
class ImportDialog;
}

namespace ringrule {

/// Reads a CSV table into the collection: shows first what becomes of each column and which rows are bad.
class ImportDialog : public QDialog {
    Q_OBJECT

public:
    explicit ImportDialog(Collection& collection, QWidget* parent = nullptr);
    ~ImportDialog() override;

    void setFile(const QString& path);
    /// How many records were read in.
    [[nodiscard]] int records() const { return records_; }

public slots:
    void accept() override;

private:
    void chooseFile();
    /// Tries the table and keeps nothing.
    void tryTable();

    std::unique_ptr<Ui::ImportDialog> ui_;
    Collection& collection_;
    int records_ = 0;
};

}  // namespace ringrule
