// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSortFilterProxyModel>
#include <QWidget>
#include <functional>
#include <memory>
#include <optional>

#include "app/animal_events_model.h"
#include "app/animal_pictures.h"
#include "app/animal_table_model.h"
#include "app/history_table_model.h"

namespace Ui {
class AnimalsPage;
}

namespace ringrule {

/// Animals in the order of a column: text as a person counts, "A2" before "A10"; of one tank, or those that need a
/// look.
class AnimalOrder : public QSortFilterProxyModel {
    Q_OBJECT

public:
    using QSortFilterProxyModel::QSortFilterProxyModel;

    void showOnly(const QString& tank, bool needsLook);

protected:
    [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override;
    [[nodiscard]] bool lessThan(const QModelIndex& left, const QModelIndex& right) const override;

private:
    QString tank_;  ///< empty: every tank
    bool needsLook_ = false;
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
    void connectList();
    void connectAnimal();
    void fillTanks();
    void filter();
    void saveSheet();
    void showHistory();
    /// Photos or events, when their tab is in front.
    void showTab();
    void showPhotos();
    void showEvents();

    // animals_page_changes.cpp: what a keeper changes of an animal.
    void addMenus();
    void askForAnimal();
    void askForFacts();
    void askForMove();
    void askForMerge();
    void askForSplit();
    void askForEvent(const std::string& kind);
    void editEvent(int row);
    void takeOutEvent(int row);
    /// Runs what may fail in the world; says what went wrong.
    void attempt(const std::function<void()>& action);
    [[nodiscard]] std::optional<AnimalId> selected() const;

    std::unique_ptr<Ui::AnimalsPage> ui_;
    Collection& collection_;
    AnimalTableModel animals_;
    AnimalOrder sorted_;
    AnimalPictures pictures_;
    std::optional<AnimalId> photosOf_;  ///< whose photos are shown
    HistoryTableModel history_;
    AnimalEventsModel events_;
    std::optional<AnimalId> wanted_;
};

}  // namespace ringrule
