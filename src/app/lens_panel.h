// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>

#include "app/box_panel.h"
#include "app/job_runner.h"
#include "app/lens_photo_model.h"
#include "ringrule/workflow/calibrate_box.h"

namespace Ui {
class LensPanel;
}

namespace ringrule {

/// The lens told from photos of the plate or a chessboard, looked at before it is kept.
class LensPanel : public BoxPanel {
    Q_OBJECT

public:
    LensPanel(CurrentBox& current, JobRunner& job, QWidget* parent = nullptr);
    ~LensPanel() override;
    void showBox() override;
    /// Calibrates by these photos, off the window's thread.
    void calibrate(const QStringList& photos);
    [[nodiscard]] const std::optional<LensReport>& report() const { return report_; }

private:
    void choosePhotos();
    void take(LensReport report);
    void showReport();

    std::unique_ptr<Ui::LensPanel> ui_;
    JobRunner& job_;
    LensPhotoModel photos_;
    std::optional<LensReport> report_;
    std::filesystem::path reportOf_;  ///< the box file that the report is about
};

}  // namespace ringrule
