// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <memory>

#include "app/collection.h"

namespace Ui {
class NewSessionDialog;
}

namespace ringrule {

/// Asks for the photos, day, keeper and box of a new session.
class NewSessionDialog : public QDialog {
    Q_OBJECT

public:
    NewSessionDialog(Collection& collection, const QString& keeper, QWidget* parent = nullptr);
    ~NewSessionDialog() override;

    [[nodiscard]] std::filesystem::path photoFolder() const;
    [[nodiscard]] Session session() const;
    [[nodiscard]] Box box() const { return boxes_[boxIndex()]; }

    void setPhotoFolder(const QString& folder);

private:
    [[nodiscard]] std::size_t boxIndex() const;
    void chooseFolder();
    void addBox();
    void fillBoxes(const std::string& selected);
    void check();

    std::unique_ptr<Ui::NewSessionDialog> ui_;
    Collection& collection_;
    std::vector<Box> boxes_;
};

}  // namespace ringrule
