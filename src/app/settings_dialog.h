// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "app/settings.h"
#include "ringrule/judge/judge_options.h"

class QDoubleSpinBox;

namespace Ui {
class SettingsDialog;
}

namespace ringrule {

/// What a keeper sets once: initials, days, language, colours, text size; and the thresholds of findings, which belong
/// to the open collection.
class SettingsDialog : public QDialog {
    Q_OBJECT

public:
    /// `thresholds`: those of the open collection; null: none is open.
    SettingsDialog(Settings settings, const JudgeOptions* thresholds, QWidget* parent = nullptr);
    ~SettingsDialog() override;

    [[nodiscard]] Settings settings() const;
    /// By name; only those that were changed.
    [[nodiscard]] std::map<std::string, double> changedThresholds() const;

private:
    void fillViews();
    void addThresholds(const JudgeOptions& thresholds);

    struct Entry {
        std::string name;
        double before = 0.0;
        QDoubleSpinBox* spin = nullptr;
    };

    std::unique_ptr<Ui::SettingsDialog> ui_;
    Settings settings_;
    std::vector<Entry> thresholds_;
};

}  // namespace ringrule
