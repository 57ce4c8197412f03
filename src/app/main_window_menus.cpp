// SPDX-License-Identifier: GPL-3.0-or-later
// The main window's menus and the bar of the running job.
#include <QActionGroup>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QProgressBar>
#include <QPushButton>
#include <QStatusBar>
#include <tuple>
#include <vector>

#include "app/animals_page.h"
#include "app/appearance.h"
#include "app/cautions.h"
#include "app/growth_page.h"
#include "app/language.h"
#include "app/main_window.h"
#include "app/session_page.h"
#include "ui_main_window.h"

namespace ringrule {

void MainWindow::addMenus() {
    addFileMenu();
    QMenu* edit = menuBar()->addMenu(tr("&Edit"));
    QAction* undo = sessionPage_->undoGroup().createUndoAction(this, tr("Undo"));
    undo->setShortcut(QKeySequence::Undo);
    QAction* redo = sessionPage_->undoGroup().createRedoAction(this, tr("Redo"));
    redo->setShortcut(QKeySequence::Redo);
    edit->addActions({undo, redo});
    addPhotoMenu();
    addGoMenu();
    QMenu* view = menuBar()->addMenu(tr("&View"));
    addColoursMenu(*view);
    addTextSizeMenu(*view);
    addLanguageMenu(*view);
    tickView();
    QMenu* help = menuBar()->addMenu(tr("&Help"));
    help->addAction(tr("&Cautions"), QKeySequence::HelpContents, this, [this] { showCautions(this); });
    help->addAction(tr("&About Ringrule"), this, &MainWindow::showAbout);
    for (QAction* action : collectionActions_) action->setEnabled(false);
}

void MainWindow::addFileMenu() {
    QMenu* file = menuBar()->addMenu(tr("&File"));
    file->addAction(tr("&Open collection…"), QKeySequence::Open, this, &MainWindow::askForCollection);
    file->addAction(tr("New &collection…"), QKeySequence(tr("Ctrl+Shift+N")), this, &MainWindow::askForNewCollection);
    file->addAction(tr("Try the &demo…"), this, &MainWindow::askForDemo);
    file->addSeparator();
    collectionActions_.push_back(
        file->addAction(tr("&New photo session…"), QKeySequence::New, this, &MainWindow::askForSession));
    file->addSeparator();
    collectionActions_.push_back(
        file->addAction(tr("&Save the growth chart…"), QKeySequence::Save, growthPage_, &GrowthPage::savePicture));
    collectionActions_.push_back(
        file->addAction(tr("&Print the growth chart…"), QKeySequence::Print, growthPage_, &GrowthPage::print));
    collectionActions_.push_back(file->addAction(tr("&Import a table…"), this, &MainWindow::askForImport));
    file->addAction(tr("Se&ttings…"), QKeySequence(tr("Ctrl+,")), this, &MainWindow::askForSettings);
    file->addSeparator();
    file->addAction(tr("&Quit"), QKeySequence::Quit, this, &QWidget::close);
}

void MainWindow::addPhotoMenu() {
    QMenu* photo = menuBar()->addMenu(tr("&Photo"));
    SessionPage* page = sessionPage_;
    collectionActions_.push_back(
        photo->addAction(tr("&Accept"), QKeySequence(tr("Ctrl+Return")), page, &SessionPage::accept));
    collectionActions_.push_back(
        photo->addAction(tr("Take a&gain"), QKeySequence(tr("Ctrl+R")), page, &SessionPage::askAgain));
    collectionActions_.push_back(
        photo->addAction(tr("&Next photo"), QKeySequence(tr("Ctrl+Down")), page, &SessionPage::next));
    collectionActions_.push_back(
        photo->addAction(tr("&Previous photo"), QKeySequence(tr("Ctrl+Up")), page, &SessionPage::previous));
    photo->addSeparator();
    const std::vector<std::tuple<QString, QString, SessionPage::Tool>> tools = {
        {tr("&Move landmarks"), tr("Ctrl+M"), SessionPage::Tool::Marks},
        {tr("&Trace along the edge"), tr("Ctrl+T"), SessionPage::Tool::Trace},
        {tr("P&ull the outline"), tr("Ctrl+L"), SessionPage::Tool::Pull},
        {tr("&Cut two animals apart"), tr("Ctrl+K"), SessionPage::Tool::Cut}};
    for (const auto& [name, keys, tool] : tools)
        collectionActions_.push_back(
            photo->addAction(name, QKeySequence(keys), page, [page, chosen = tool] { page->chooseTool(chosen); }));
    photo->addSeparator();
    collectionActions_.push_back(
        photo->addAction(tr("Zoom &in"), QKeySequence(tr("Ctrl++")), page, &SessionPage::zoomIn));
    collectionActions_.push_back(
        photo->addAction(tr("Zoom &out"), QKeySequence(tr("Ctrl+-")), page, &SessionPage::zoomOut));
    collectionActions_.push_back(
        photo->addAction(tr("&Fit the animal"), QKeySequence(tr("Ctrl+0")), page, &SessionPage::fitPhoto));
}

void MainWindow::addGoMenu() {
    QMenu* go = menuBar()->addMenu(tr("&Go to"));
    for (int page = 0; page < pageCount(); ++page)
        collectionActions_.push_back(go->addAction(ui_->pageList->item(page)->text(),
                                                   QKeySequence(tr("Ctrl+%1").arg(page + 1)), this,
                                                   [this, page] { showPage(page); }));
}

void MainWindow::addColoursMenu(QMenu& view) {
    auto* group = new QActionGroup(this);
    const std::vector<std::pair<QString, Colours>> choices = {{tr("Colours as the &system"), Colours::AsSystem},
                                                              {tr("&Light colours"), Colours::Light},
                                                              {tr("&Dark colours"), Colours::Dark}};
    for (const auto& [name, colours] : choices) {
        QAction* action = view.addAction(name, this, [this, chosen = colours] {
            settings_.colours = chosen;
            setAppearance(chosen, settings_.textPercent);
        });
        action->setCheckable(true);
        action->setData(static_cast<int>(colours));
        colourActions_.push_back(action);
        group->addAction(action);
    }
}

void MainWindow::addTextSizeMenu(QMenu& view) {
    view.addSeparator();
    QMenu* sizes = view.addMenu(tr("&Text size"));
    auto* group = new QActionGroup(this);
    for (const int percent : kTextPercents) {
        QAction* action = sizes->addAction(tr("%1 %").arg(percent), this, [this, percent] {
            settings_.textPercent = percent;
            setAppearance(settings_.colours, percent);
            fitPageList();
        });
        action->setCheckable(true);
        action->setData(percent);
        textActions_.push_back(action);
        group->addAction(action);
    }
}

void MainWindow::addLanguageMenu(QMenu& view) {
    QMenu* languages = view.addMenu(tr("&Language"));
    auto* group = new QActionGroup(this);
    QStringList codes{QString()};
    codes << shippedLanguages();
    for (const QString& code : codes) {
        const QString name = code.isEmpty() ? tr("As the system") : languageName(code);
        QAction* action = languages->addAction(name, this, [this, code] {
            settings_.language = code;
            ui_->messageStrip->showNews(tr("The language changes when Ringrule is started again."));
        });
        action->setCheckable(true);
        action->setData(code);
        languageActions_.push_back(action);
        group->addAction(action);
    }
}

void MainWindow::tickView() {
    for (QAction* action : colourActions_) action->setChecked(action->data() == static_cast<int>(settings_.colours));
    for (QAction* action : textActions_) action->setChecked(action->data() == settings_.textPercent);
    for (QAction* action : languageActions_) action->setChecked(action->data() == settings_.language);
}

void MainWindow::addJobBar() {
    stage_ = new QLabel(this);
    progress_ = new QProgressBar(this);
    progress_->setRange(0, 1000);
    progress_->setTextVisible(false);
    progress_->setMaximumWidth(260);
    progress_->setAccessibleName(tr("Progress of the running job"));
    stop_ = new QPushButton(tr("Stop"), this);
    stop_->setAccessibleName(tr("Stop the running job"));
    statusBar()->addWidget(stage_, 1);
    statusBar()->addPermanentWidget(progress_);
    statusBar()->addPermanentWidget(stop_);
    connect(stop_, &QPushButton::clicked, this, [this] {
        job_.stop();
        stop_->setEnabled(false);
        stage_->setText(tr("Stopping…"));
    });
    connect(&job_, &JobRunner::started, this, [this](const QString& title) {
        stage_->setText(title);
        progress_->setValue(0);
        stop_->setEnabled(true);
        statusBar()->show();
    });
    connect(&job_, &JobRunner::progressed, this, [this](double fraction, const QString& stage) {
        progress_->setValue(qRound(1000.0 * fraction));
        if (stop_->isEnabled()) stage_->setText(job_.title() + QStringLiteral("  ·  ") + stage);
    });
    connect(&job_, &JobRunner::finished, statusBar(), &QWidget::hide);
    connect(&job_, &JobRunner::failed, this, [this](const QString& sentence, bool stopped) {
        if (stopped)
            ui_->messageStrip->showNews(tr("Stopped. The collection is as it was before."));
        else
            ui_->messageStrip->showProblem(sentence);
    });
    statusBar()->hide();
}

void MainWindow::showAbout() {
    QMessageBox::about(
        this, tr("About Ringrule"),
        tr("<h3>Ringrule %1</h3><p>Measures seahorses and pipefish from photographs.</p>"
           "<p>Free software under the GNU General Public License, version 3 or later, without any warranty.</p>")
            .arg(QStringLiteral(RINGRULE_VERSION)));
}

}  // namespace ringrule
