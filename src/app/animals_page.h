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

/// Animals in the order of a column: text as a person counts, "A2" before "A10".
class AnimalOrder : public QSortFilterProxyModel {
    Q_OBJECT

public:
    using QSortFilterProxyModel::QSortFilterProxyModel;

protected:
    [[nodiscard]] bool lessThan(const QModelIndex& left, const QModelIndex& right) const override;
};

/// Every animal, and the sessions of the one that is selected.
class AnimalsPage : public QWidget {
    Q_OBJECT

public:
    explicit AnimalsPage(Collection& collection, QWidget* parent = nullptr);
    ~AnimalsPage() override;

    void select(AnimalId animal);
    /// Whether photos are still being read.
    [[nodiscard]] bool busy() const;

signals:
    void growthWanted(ringrule::AnimalId animal);
    void photoWanted(ringrule::PhotoId photo);
    void problem(const QString& sentence);
    void news(const QString& sentence);

private:
    void askForAnimal();
    void saveSheet();
    void showHistory();
    void showPhotos();
    [[nodiscard]] std::optional<AnimalId> selected() const;

    std::unique_ptr<Ui::AnimalsPage> ui_;
    Collection& collection_;
    AnimalTableModel animals_;
    AnimalOrder sorted_;
    std::optional<AnimalId> photosOf_;  ///< whose photos are shown
    HistoryTableModel history_;
    std::optional<AnimalId> wanted_;
};

}  // namespace ringrule
