// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>

#include "app/collection.h"
#include "app/finding_list_model.h"

namespace Ui {
class FindingsPage;
}

namespace ringrule {

class DecisionPanel;

/// Which animals need a look: why, on what evidence, what else may explain it and what to do next.
class FindingsPage : public QWidget {
    Q_OBJECT

public:
    explicit FindingsPage(Collection& collection, QWidget* parent = nullptr);
    ~FindingsPage() override;

    /// Whether photos are still being read.
    [[nodiscard]] bool busy() const;

signals:
    /// Findings as they were told after the session of this day.
    void dayWanted(ringrule::Date day);
    void growthWanted(ringrule::AnimalId animal);
    void photosWanted(ringrule::AnimalId animal);
    void photoWanted(ringrule::PhotoId photo);
    void cautionsWanted();
    void problem(const QString& sentence);

private:
    void fillList();
    /// The last decisions with what became of them, for a day on which nothing is told.
    [[nodiscard]] QString decidedBefore() const;
    void showDecisions();
    void showReview();
    void showFinding(int row);

    std::unique_ptr<Ui::FindingsPage> ui_;
    Collection& collection_;
    FindingListModel findings_;
    DecisionPanel* decisionPanel_ = nullptr;
};

}  // namespace ringrule
