// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMainWindow>
#include <QTimer>
#include <memory>
#include <optional>

#include "app/collection.h"
#include "app/job_runner.h"
#include "app/settings.h"

class QAction;
class QProgressBar;
class QLabel;
class QPushButton;

namespace Ui {
class MainWindow;
}

namespace ringrule {

class AnimalsPage;
class BoxPage;
class BroodsPage;
class DietsPage;
class FindingsPage;
class GrowthPage;
class SessionPage;
struct SessionSummary;
class WelcomePage;

/// The window: the list of pages, the menus, the running job and the message strip.
class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    explicit MainWindow(Settings settings, QWidget* parent = nullptr);
    ~MainWindow() override;

    /// Opens a collection; what goes wrong is said in the message strip.
    void openCollection(const std::filesystem::path& folder);
    void createCollection(const std::filesystem::path& folder);
    /// Measures a folder of photos into the collection, off the window's thread.
    void measureSession(const std::filesystem::path& photos, const Session& session, const Box& box);

    /// Measures the invented demo house into a new collection there and opens it, off the window's thread.
    void makeDemo(const std::filesystem::path& folder);

    [[nodiscard]] Settings settings() const;
    [[nodiscard]] Collection& collection() { return collection_; }
    [[nodiscard]] JobRunner& job() { return job_; }
    [[nodiscard]] bool busy() const;
    [[nodiscard]] int pageCount() const;
    void showPage(int page);
    [[nodiscard]] QString pageName(int page) const;
    /// Findings as told after the session of this day; absent: after the newest.
    void reviewAsOf(std::optional<Date> day);

protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void addPages();
    void connectPages();
    void fitPageList();
    void addMenus();
    void addJobBar();
    void addFileMenu();
    void addPhotoMenu();
    void addGoMenu();
    void addColoursMenu(QMenu& view);
    void addTextSizeMenu(QMenu& view);
    void addLanguageMenu(QMenu& view);
    /// Ticks in the menus what the settings say.
    void tickView();
    void collectionOpened();
    void showFindingCount();
    /// Whether a job runs already; says so.
    bool jobRuns();
    void askForCollection();
    void askForNewCollection();
    void askForDemo();
    void askForSession();
    void askForSessionOf(const QString& photoFolder);
    // main_window_settings.cpp
    void askForSettings();
    void askForImport();
    void takeSettings(const Settings& settings);
    /// Takes what was dropped on the window: photos, a collection or a box file.
    void take(const QString& path);
    void tellChangedBack(const QString& words, std::optional<PhotoId> photo);
    void startReview();
    void tellSummary(const SessionSummary& summary);
    void remember(const std::filesystem::path& folder);
    void showAbout();
    void showGrowthOf(AnimalId animal);
    void showPhoto(PhotoId photo);

    std::unique_ptr<Ui::MainWindow> ui_;
    Settings settings_;
    Collection collection_;
    JobRunner job_;     ///< long jobs that a keeper starts
    JobRunner review_;  ///< histories and findings
    QTimer reviewSoon_;
    std::optional<Date> asOf_;
    WelcomePage* welcome_ = nullptr;
    SessionPage* sessionPage_ = nullptr;
    AnimalsPage* animalsPage_ = nullptr;
    GrowthPage* growthPage_ = nullptr;
    FindingsPage* findingsPage_ = nullptr;
    DietsPage* dietsPage_ = nullptr;
    BroodsPage* broodsPage_ = nullptr;
    BoxPage* boxPage_ = nullptr;
    QProgressBar* progress_ = nullptr;
    QLabel* stage_ = nullptr;
    QPushButton* stop_ = nullptr;
    std::vector<QAction*> colourActions_, textActions_, languageActions_;
    std::vector<QAction*> collectionActions_;  ///< need an open collection
};

}  // namespace ringrule
