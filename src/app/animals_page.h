// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSortFilterProxyModel>
#include <QWidget>
#include <memory>
#include <optional>

#include "app/animal_table_model.h"
#include "app/history_table_model.h"

namespace Ui {
class AnimalsPage;
}

namespace ringrule {

/// Every animal, and the sessions of the one that is selected.
class AnimalsPage : public QWidget {
    Q_OBJECT

public:
    explicit AnimalsPage(Collection& collection, QWidget* parent = nullptr);
    ~AnimalsPage() override;

    void select(AnimalId animal);

signals:
    void growthWanted(ringrule::AnimalId animal);
    void problem(const QString& sentence);
    void news(const QString& sentence);

private:
    void askForAnimal();
    void saveSheet();
    void showHistory();
    [[nodiscard]] std::optional<AnimalId> selected() const;

    std::unique_ptr<Ui::AnimalsPage> ui_;
    Collection& collection_;
    AnimalTableModel animals_;
    QSortFilterProxyModel sorted_;
    HistoryTableModel history_;
    std::optional<AnimalId> wanted_;
};

}  // namespace ringrule
