// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <map>
#include <memory>

#include "app/box_step_model.h"
#include "app/current_box.h"
#include "app/job_runner.h"

namespace Ui {
class BoxPage;
}

namespace ringrule {

class BoxPanel;

/// The measuring box, step by step: how each stands, what is wrong with it and how to mend it.
class BoxPage : public QWidget {
    Q_OBJECT

public:
    /// Long work runs in `job`, which shows its progress elsewhere.
    BoxPage(Collection& collection, JobRunner& job, QWidget* parent = nullptr);
    ~BoxPage() override;

    [[nodiscard]] CurrentBox& current() { return current_; }
    void showStep(SetupStepKind kind);

signals:
    void news(const QString& sentence);
    void problem(const QString& sentence);

private:
    void addPanels(JobRunner& job);
    void connectForm();
    void showCurrent();
    void stepChosen(int row);
    void goBy(int rows);
    void askForBox();
    void askForBoxFile();

    std::unique_ptr<Ui::BoxPage> ui_;
    CurrentBox current_;
    BoxStepModel steps_;
    std::map<SetupStepKind, BoxPanel*> panels_;
    int shown_ = -1;  ///< of the collection's boxes
};

}  // namespace ringrule
