// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>

#include "app/box_check_model.h"
#include "app/box_panel.h"
#include "app/job_runner.h"
#include "ringrule/records/box_check_record.h"

namespace Ui {
class CheckPanel;
}

namespace ringrule {

/// Whether the box still measures true: a photo of the plate or of a rod, and what earlier ones said.
class CheckPanel : public BoxPanel {
    Q_OBJECT

public:
    CheckPanel(CurrentBox& current, JobRunner& job, QWidget* parent = nullptr);
    ~CheckPanel() override;
    void showBox() override;
    /// Checks the box by this photo, off the window's thread, and keeps what it said.
    void check(const QString& photo);

private:
    void choosePhoto();
    void take(const BoxCheck& check, const BoxCheckRecord& kept);

    std::unique_ptr<Ui::CheckPanel> ui_;
    JobRunner& job_;
    BoxCheckModel history_;
    std::filesystem::path checkedFile_;
};

}  // namespace ringrule
