// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>

#include "app/animal_choice_model.h"
#include "app/collection.h"

namespace Ui {
class GrowthPage;
}

namespace ringrule {

/// Growth of chosen animals against age or date.
class GrowthPage : public QWidget {
    Q_OBJECT

public:
    explicit GrowthPage(Collection& collection, QWidget* parent = nullptr);
    ~GrowthPage() override;

    /// Shows the animal's tank with the animal picked out.
    void pickOut(AnimalId animal);

public slots:
    void savePicture();
    void print();

signals:
    void photoWanted(ringrule::PhotoId photo);
    void problem(const QString& sentence);
    void news(const QString& sentence);

private:
    void fillTanks();
    void fillAnimals();
    void drawChart();
    /// The photo of a reading that was chosen on the chart.
    void openReading(const QString& code, double x);
    void openPhoto(AnimalId animal, Date on);

    std::unique_ptr<Ui::GrowthPage> ui_;
    Collection& collection_;
    AnimalChoiceModel choices_;
};

}  // namespace ringrule
