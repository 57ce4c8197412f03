// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>
#include <optional>
#include <set>

#include "app/animal_choice_model.h"
#include "app/collection.h"
#include "app/growth_curve.h"
#include "app/job_runner.h"

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
    /// Whether a curve is still being fitted.
    [[nodiscard]] bool busy() const { return fit_.running() || fitWanted_; }

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
    [[nodiscard]] std::set<AnimalId> shownAnimals() const;
    [[nodiscard]] std::set<AnimalId> pickedAnimals() const;
    /// Fits the curve of the animals that are shown, off the window's thread, unless that was done.
    void wantCurve(const std::set<AnimalId>& shown);
    void fitCurve();
    void forgetCurve();
    /// The photo of a reading that was chosen on the chart.
    void openReading(const QString& code, double x);
    void openPhoto(AnimalId animal, Date on);

    std::unique_ptr<Ui::GrowthPage> ui_;
    Collection& collection_;
    AnimalChoiceModel choices_;
    JobRunner fit_;
    GrowthCurve curve_;
    std::optional<std::set<AnimalId>> curveOf_;  ///< whose curve it is, or is being fitted
    bool fitWanted_ = false;
};

}  // namespace ringrule
