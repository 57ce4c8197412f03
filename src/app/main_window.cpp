// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDir>
#include <QFileDialog>
#include <QThread>
#include <algorithm>

#include "app/animals_page.h"
#include "app/box_page.h"
#include "app/broods_page.h"
#include "app/cautions.h"
#include "app/demo_files.h"
#include "app/diets_page.h"
#include "app/findings_page.h"
#include "app/growth_page.h"
#include "app/new_session_dialog.h"
#include "app/session_page.h"
#include "app/welcome_page.h"
#include "ringrule/error.h"
#include "ringrule/workflow/collection_review.h"
#include "ringrule/workflow/decision_outcome.h"
#include "ringrule/workflow/session_table.h"
#include "ui_main_window.h"

namespace ringrule {
namespace {
constexpr int kReviewDelayMs = 400;
constexpr std::size_t kMostTroubles = 4;
constexpr int kAnimalsPage = 1;
constexpr int kGrowthPage = 2;
constexpr int kFindingsPage = 3;
constexpr int kBoxPage = 6;
}  // namespace

MainWindow::MainWindow(Settings settings, QWidget* parent)
    : QMainWindow(parent), ui_(std::make_unique<Ui::MainWindow>()), settings_(std::move(settings)) {
    ui_->setupUi(this);
    addPages();
    connectPages();
    addMenus();
    addJobBar();
    reviewSoon_.setSingleShot(true);
    reviewSoon_.setInterval(kReviewDelayMs);
    connect(&reviewSoon_, &QTimer::timeout, this, &MainWindow::startReview);
    connect(&collection_, &Collection::opened, this, &MainWindow::collectionOpened);
    connect(&collection_, &Collection::measuresChanged, &reviewSoon_, qOverload<>(&QTimer::start));
    connect(&collection_, &Collection::reviewChanged, this, &MainWindow::showFindingCount);
    connect(&collection_, &Collection::decisionsChanged, this, &MainWindow::showFindingCount);
    connect(&collection_, &Collection::changedBack, this, &MainWindow::tellChangedBack);
    connect(&collection_, &Collection::problem, ui_->messageStrip, &MessageStrip::showProblem);
    collection_.setKeeper(settings_.keeper);
    setDayFormat(settings_.days);
    setAcceptDrops(true);
    connect(&review_, &JobRunner::failed, ui_->messageStrip, &MessageStrip::showProblem);
    if (!restoreGeometry(settings_.windowGeometry)) resize(1360, 860);
    welcome_->showRecent(settings_.recentCollections);
    ui_->pageList->hide();
    ui_->pages->setCurrentWidget(welcome_);
    fitPageList();
}

MainWindow::~MainWindow() = default;

void MainWindow::addPages() {
    welcome_ = new WelcomePage(this);
    sessionPage_ = new SessionPage(collection_, this);
    animalsPage_ = new AnimalsPage(collection_, this);
    growthPage_ = new GrowthPage(collection_, this);
    findingsPage_ = new FindingsPage(collection_, this);
    dietsPage_ = new DietsPage(collection_, this);
    broodsPage_ = new BroodsPage(collection_, this);
    boxPage_ = new BoxPage(collection_, job_, this);
    ui_->pages->addWidget(welcome_);
    const std::vector<std::pair<QString, QWidget*>> pages = {{tr("Photo session"), sessionPage_},
                                                             {tr("Animals"), animalsPage_},
                                                             {tr("Growth"), growthPage_},
                                                             {tr("Needs a look"), findingsPage_},
                                                             {tr("Diets"), dietsPage_},
                                                             {tr("Broods"), broodsPage_},
                                                             {tr("Box"), boxPage_}};
    for (const auto& [name, page] : pages) {
        ui_->pages->addWidget(page);
        ui_->pageList->addItem(name);
    }
    connect(ui_->pageList, &QListWidget::currentRowChanged, this, [this](int row) {
        if (row < 0) return;
        ui_->pages->setCurrentIndex(row + 1);
        sessionPage_->setInFront(row == 0);
        // What one page said does not belong to the next.
        ui_->messageStrip->hide();
    });
}

void MainWindow::fitPageList() {
    // Room for the longest name with its count, at every text size.
    constexpr int kRoundAbout = 62;
    const QFontMetrics metrics(QApplication::font());
    int wide = 0;
    for (int row = 0; row < ui_->pageList->count(); ++row)
        wide = std::max(wide, metrics.horizontalAdvance(ui_->pageList->item(row)->text()));
    ui_->pageList->setFixedWidth(
        std::max(196, wide + metrics.horizontalAdvance(QStringLiteral("  (99)")) + kRoundAbout));
}

void MainWindow::connectPages() {
    MessageStrip* strip = ui_->messageStrip;
    const auto cautions = [this] { showCautions(this); };
    connect(welcome_, &WelcomePage::openWanted, this, &MainWindow::askForCollection);
    connect(welcome_, &WelcomePage::createWanted, this, &MainWindow::askForNewCollection);
    connect(welcome_, &WelcomePage::demoWanted, this, &MainWindow::askForDemo);
    connect(welcome_, &WelcomePage::folderWanted, this,
            [this](const QString& folder) { openCollection(folder.toStdString()); });
    connect(welcome_, &WelcomePage::cautionsWanted, this, cautions);
    connect(sessionPage_, &SessionPage::newSessionWanted, this, &MainWindow::askForSession);
    connect(sessionPage_, &SessionPage::boxWanted, this, [this] { showPage(kBoxPage); });
    connect(sessionPage_, &SessionPage::animalsWanted, this, [this] { showPage(kAnimalsPage); });
    connect(sessionPage_, &SessionPage::problem, strip, &MessageStrip::showProblem);
    connect(sessionPage_, &SessionPage::news, strip, &MessageStrip::showNews);
    connect(sessionPage_, &SessionPage::cautionsWanted, this, cautions);
    connect(animalsPage_, &AnimalsPage::news, strip, &MessageStrip::showNews);
    connect(animalsPage_, &AnimalsPage::problem, strip, &MessageStrip::showProblem);
    connect(animalsPage_, &AnimalsPage::photoWanted, this, &MainWindow::showPhoto);
    connect(animalsPage_, &AnimalsPage::growthWanted, this, &MainWindow::showGrowthOf);
    connect(growthPage_, &GrowthPage::photoWanted, this, &MainWindow::showPhoto);
    connect(growthPage_, &GrowthPage::problem, strip, &MessageStrip::showProblem);
    connect(growthPage_, &GrowthPage::news, strip, &MessageStrip::showNews);
    connect(findingsPage_, &FindingsPage::growthWanted, this, &MainWindow::showGrowthOf);
    connect(findingsPage_, &FindingsPage::photosWanted, this, [this](AnimalId animal) {
        showPage(0);
        sessionPage_->showPhotoOf(animal);
    });
    connect(findingsPage_, &FindingsPage::photoWanted, this, &MainWindow::showPhoto);
    connect(findingsPage_, &FindingsPage::problem, strip, &MessageStrip::showProblem);
    connect(findingsPage_, &FindingsPage::dayWanted, this, [this](Date day) { reviewAsOf(day); });
    connect(findingsPage_, &FindingsPage::cautionsWanted, this, cautions);
    connect(dietsPage_, &DietsPage::cautionsWanted, this, cautions);
    connect(broodsPage_, &BroodsPage::problem, strip, &MessageStrip::showProblem);
    connect(boxPage_, &BoxPage::news, strip, &MessageStrip::showNews);
    connect(boxPage_, &BoxPage::problem, strip, &MessageStrip::showProblem);
}

void MainWindow::openCollection(const std::filesystem::path& folder) {
    try {
        collection_.open(folder);
        remember(folder);
    } catch (const Error& error) {
        ui_->messageStrip->showProblem(QString::fromStdString(error.what()));
    }
}

void MainWindow::createCollection(const std::filesystem::path& folder) {
    try {
        collection_.create(folder);
        remember(folder);
        ui_->messageStrip->showNews(tr("The collection is ready. Choose New session… to measure a folder of photos."));
    } catch (const Error& error) {
        ui_->messageStrip->showProblem(QString::fromStdString(error.what()));
    }
}

void MainWindow::remember(const std::filesystem::path& folder) {
    settings_ = withRecent(settings_, QDir(QString::fromStdString(folder.string())).absolutePath());
    welcome_->showRecent(settings_.recentCollections);
}

void MainWindow::collectionOpened() {
    setWindowTitle(tr("%1 – Ringrule").arg(QString::fromStdString(collection_.folder().filename().string())));
    ui_->messageStrip->hide();
    ui_->pageList->show();
    for (QAction* action : collectionActions_) action->setEnabled(true);
    ui_->pageList->setCurrentRow(0);
    ui_->pages->setCurrentIndex(1);
    asOf_.reset();
    startReview();
}

void MainWindow::reviewAsOf(std::optional<Date> day) {
    asOf_ = day;
    startReview();
}

void MainWindow::startReview() {
    if (!collection_.isOpen()) return;
    if (review_.running()) {
        reviewSoon_.start();
        return;
    }
    const std::filesystem::path folder = collection_.folder();
    struct Reviews {
        Review newest;
        std::optional<Review> lookBack;
    };
    review_.start<Reviews>(
        tr("Looking through the animals"),
        [folder, asOf = asOf_](const Progress&) {
            Reviews reviews{reviewOf(folder, std::nullopt), {}};
            if (asOf && asOf < reviews.newest.asOf) reviews.lookBack = reviewOf(folder, asOf);
            return reviews;
        },
        [this, folder](Reviews reviews) {
            if (folder == collection_.folder())
                collection_.setReviews(std::move(reviews.newest), std::move(reviews.lookBack));
        });
}

void MainWindow::showFindingCount() {
    const Review& review = collection_.review();
    const std::vector<Decision> decisions = collection_.store().decisions();
    const auto urgent = std::count_if(review.findings.begin(), review.findings.end(), [&](const Finding& finding) {
        return isFlag(finding) && finding.on == review.asOf && decisionOn(finding, decisions) == nullptr;
    });
    ui_->pageList->item(kFindingsPage)
        ->setText(urgent == 0 ? tr("Needs a look") : tr("Needs a look  (%1)").arg(urgent));
}

void MainWindow::measureSession(const std::filesystem::path& photos, const Session& session, const Box& box) {
    const std::filesystem::path folder = collection_.folder();
    const int jobs = std::max(1, QThread::idealThreadCount());
    job_.start<SessionSummary>(
        tr("Measuring photos"),
        [=](const Progress& progress) {
            // A connection belongs to its thread: the worker opens the collection for itself.
            Store store = Store::open(folder);
            return addSessionFolder(store, photos, session, box, jobs, progress);
        },
        [this](const SessionSummary& summary) {
            collection_.reload();
            sessionPage_->showSession(summary.session);
            tellSummary(summary);
        });
}

void MainWindow::tellSummary(const SessionSummary& summary) {
    QStringList lines{tr("%1 photos: %2 animals measured, %3 not measured, %4 to look at before they count.")
                          .arg(summary.photos)
                          .arg(summary.measured)
                          .arg(summary.refused)
                          .arg(summary.toLookAt)};
    for (std::size_t k = 0; k < std::min(kMostTroubles, summary.troubles.size()); ++k)
        lines << QString::fromStdString(summary.troubles[k]);
    if (summary.troubles.size() > kMostTroubles)
        lines << tr("And %1 more: see the list of photos.").arg(summary.troubles.size() - kMostTroubles);
    if (summary.troubles.empty())
        ui_->messageStrip->showNews(lines.join('\n'));
    else
        ui_->messageStrip->showProblem(lines.join('\n'));
}

void MainWindow::askForCollection() {
    const QString folder = QFileDialog::getExistingDirectory(this, tr("Open a collection"));
    if (!folder.isEmpty()) openCollection(folder.toStdString());
}

void MainWindow::askForNewCollection() {
    const QString folder = QFileDialog::getExistingDirectory(this, tr("An empty folder for the new collection"));
    if (!folder.isEmpty()) createCollection(folder.toStdString());
}

void MainWindow::askForDemo() {
    if (jobRuns()) return;
    if (!findDemoFiles()) {
        ui_->messageStrip->showProblem(
            tr("The demo's photos were not found beside the program. In a terminal, in the folder "
               "that holds sample_images, run: ringrule demo. Then open demo-out/collection."));
        return;
    }
    const QString folder = QFileDialog::getExistingDirectory(this, tr("A folder in which to put the demo collection"));
    if (!folder.isEmpty()) makeDemo(std::filesystem::path(folder.toStdString()) / "lantern-quay");
}

void MainWindow::makeDemo(const std::filesystem::path& folder) {
    const std::optional<DemoFiles> files = findDemoFiles();
    if (!files) return;
    const int jobs = std::max(1, QThread::idealThreadCount());
    job_.start<std::filesystem::path>(
        tr("Measuring the demo's photos"),
        [folder, files = *files, jobs](const Progress& progress) {
            checkHouse(files.house, files.calibration);
            Store store = Store::create(folder);
            addHouse(store, files.house, files.calibration, jobs, progress);
            return folder;
        },
        [this](const std::filesystem::path& made) { openCollection(made); });
}

bool MainWindow::jobRuns() {
    if (job_.running()) ui_->messageStrip->showNews(tr("A job is running. Wait for it, or stop it below."));
    return job_.running();
}

void MainWindow::askForSession() {
    askForSessionOf({});
}

void MainWindow::askForSessionOf(const QString& photoFolder) {
    if (jobRuns()) return;
    NewSessionDialog dialog(collection_, settings_.keeper, this);
    if (!photoFolder.isEmpty()) dialog.setPhotoFolder(photoFolder);
    if (dialog.exec() != QDialog::Accepted) return;
    settings_.keeper = QString::fromStdString(dialog.session().keeper);
    collection_.setKeeper(settings_.keeper);
    measureSession(dialog.photoFolder(), dialog.session(), dialog.box());
}

void MainWindow::showGrowthOf(AnimalId animal) {
    showPage(kGrowthPage);
    growthPage_->pickOut(animal);
}

void MainWindow::showPhoto(PhotoId photo) {
    showPage(0);
    sessionPage_->showPhoto(photo);
}

bool MainWindow::busy() const {
    return job_.running() || review_.running() || reviewSoon_.isActive() || sessionPage_->busy() ||
           findingsPage_->busy() || animalsPage_->busy() || growthPage_->busy();
}

int MainWindow::pageCount() const {
    return ui_->pageList->count();
}

void MainWindow::showPage(int page) {
    if (collection_.isOpen()) ui_->pageList->setCurrentRow(page);
}

QString MainWindow::pageName(int page) const {
    const QStringList names{QStringLiteral("photo-session"),
                            QStringLiteral("animals"),
                            QStringLiteral("growth"),
                            QStringLiteral("needs-a-look"),
                            QStringLiteral("diets"),
                            QStringLiteral("broods"),
                            QStringLiteral("box")};
    return names.value(page);
}

Settings MainWindow::settings() const {
    Settings settings = settings_;
    settings.windowGeometry = saveGeometry();
    return settings;
}

void MainWindow::closeEvent(QCloseEvent* event) {
    job_.stop();
    event->accept();
}

}  // namespace ringrule
