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

/// Which animals need a look: why, on what evidence, what else may explain it and what to do next.
class FindingsPage : public QWidget {
    Q_OBJECT

public:
    explicit FindingsPage(Collection& collection, QWidget* parent = nullptr);
    ~FindingsPage() override;

signals:
    /// Findings as they were told after the session of this day.
    void dayWanted(ringrule::Date day);
    void growthWanted(ringrule::AnimalId animal);
    void photosWanted(ringrule::AnimalId animal);
    void cautionsWanted();

private:
    void showReview();
    void showFinding(int row);

    std::unique_ptr<Ui::FindingsPage> ui_;
    Collection& collection_;
    FindingListModel findings_;
};

}  // namespace ringrule
