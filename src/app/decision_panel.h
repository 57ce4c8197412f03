// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTimer>
#include <QWidget>
#include <memory>
#include <optional>
#include <string>

#include "app/collection.h"

namespace Ui {
class DecisionPanel;
}

namespace ringrule {

/// A decision in a keeper's words, e.g. "change the diet".
[[nodiscard]] QString decisionWords(const std::string& decision);

/// A decision in one line: day, finding, what was decided and why, and what became of it.
[[nodiscard]] QString decisionLine(const Decision& decision, const Review& review);

/// What a keeper decides on a finding: which of five ways, why, and when to look again. Below, earlier decisions on the
/// same animal with what became of them.
class DecisionPanel : public QWidget {
    Q_OBJECT

public:
    explicit DecisionPanel(Collection& collection, QWidget* parent = nullptr);
    ~DecisionPanel() override;

    void showFinding(const Finding& finding);

signals:
    void problem(const QString& sentence);

private:
    void showTyped();
    /// By what a half typed note is kept.
    [[nodiscard]] QString subject() const;
    void keepTyped();
    void showEarlier();
    void keep();
    void takeBack();
    /// Of the animal, newest first.
    [[nodiscard]] std::vector<Decision> earlier() const;
    [[nodiscard]] std::string chosen() const;

    std::unique_ptr<Ui::DecisionPanel> ui_;
    Collection& collection_;
    std::optional<Finding> finding_;
    QTimer keepSoon_;
};

}  // namespace ringrule
