// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/session_page.h"

#include <QHeaderView>
#include <QSignalBlocker>
#include <algorithm>

#include "app/cautions.h"
#include "app/day_text.h"
#include "app/first_steps.h"
#include "app/two_line_delegate.h"
#include "ringrule/error.h"
#include "ui_session_page.h"

namespace ringrule {

SessionPage::SessionPage(Collection& collection, QWidget* parent)
    : QWidget(parent),
      ui_(std::make_unique<Ui::SessionPage>()),
      collection_(collection),
      photos_(collection),
      desk_(collection, this) {
    ui_->setupUi(this);
    firstSteps_ = new FirstSteps(this);
    // Between the page's head and its foot, in the place of the photo and its numbers.
    qobject_cast<QVBoxLayout*>(layout())->insertWidget(layout()->indexOf(ui_->splitter), firstSteps_, 1);
    connect(firstSteps_, &FirstSteps::sessionWanted, this, &SessionPage::newSessionWanted);
    connect(firstSteps_, &FirstSteps::boxWanted, this, &SessionPage::boxWanted);
    connect(firstSteps_, &FirstSteps::animalsWanted, this, &SessionPage::animalsWanted);
    ui_->photoList->setModel(&photos_);
    ui_->photoList->setItemDelegate(new TwoLineDelegate(this));
    ui_->photoList->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    ui_->measureTable->setModel(&measures_);
    ui_->measureTable->horizontalHeader()->setHighlightSections(false);
    ui_->measureTable->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    ui_->measureTable->horizontalHeader()->setSectionResizeMode(MeasureTableModel::Name, QHeaderView::Stretch);
    ui_->measureTable->verticalHeader()->hide();
    ui_->measureTable->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 7);
    ui_->measureTable->setSizeAdjustPolicy(QAbstractScrollArea::AdjustToContents);
    // Names and numbers of the measures side by side; at a large text size the last time's only where there is room.
    const QFontMetrics metrics = fontMetrics();
    ui_->numberSide->setMinimumWidth(std::min(400, metrics.horizontalAdvance(QString(47, QLatin1Char('0')))));
    // Wheel, keys and menu zoom as well: a large text size needs the room.
    constexpr int kLargeTextPx = 18;
    for (QToolButton* button : {ui_->zoomInButton, ui_->zoomOutButton})
        button->setVisible(metrics.height() < kLargeTextPx);
    ui_->measureTable->viewport()->installEventFilter(this);
    ui_->splitter->setSizes({190, 676, 366});
    ui_->splitter->setStretchFactor(1, 1);
    ui_->cautionLabel->setText(handlingCaution());
    connectLists();
    connectDesk();
    connectTools();
    connectButtons();
    chooseTool(Tool::Marks);
    if (collection_.isOpen())
        fillSessions();
    else
        firstSteps_->hide();
}

SessionPage::~SessionPage() {
    // The view is gone after the tools, which are members.
    ui_->photoView->setTool(nullptr);
}

void SessionPage::connectLists() {
    connect(&collection_, &Collection::opened, this, [this] {
        desk_.forgetAll();
        fillSessions();
    });
    connect(&collection_, &Collection::reloaded, this, &SessionPage::fillSessions);
    connect(ui_->sessionCombo, &QComboBox::currentIndexChanged, this, &SessionPage::sessionChosen);
    connect(ui_->newSessionButton, &QPushButton::clicked, this, &SessionPage::newSessionWanted);
    connect(ui_->photoList->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& current) { photoChosen(current.row()); });
    connect(&photos_, &QAbstractItemModel::dataChanged, this, [this] {
        if (row() != nullptr) desk_.update(*row());
    });
    connect(ui_->animalCombo, &QComboBox::currentIndexChanged, this, &SessionPage::animalChosen);
    connect(ui_->identityCombo, &QComboBox::activated, this, &SessionPage::assignIdentity);
    connect(ui_->cautionLabel, &QLabel::linkActivated, this, &SessionPage::cautionsWanted);
}

void SessionPage::connectDesk() {
    connect(&desk_, &PhotoDesk::changed, this, &SessionPage::refresh);
    connect(&desk_, &PhotoDesk::refused, this, &SessionPage::problem);
    connect(&desk_, &PhotoDesk::news, this, &SessionPage::news);
    connect(&desk_, &PhotoDesk::pictureRead, this, [this](const PhotoPicture& picture) {
        ui_->photoView->showPhoto(picture);
        showAnimals();
        ui_->photoView->fit();
    });
    connect(&desk_, &PhotoDesk::pictureFailed, this, [this](const QString& sentence) {
        ui_->photoView->showSentence(tr("The photo cannot be shown."));
        emit problem(sentence);
    });
    // Queued: the item whose event led here is replaced when the photo's animals are drawn anew.
    connect(
        ui_->photoView, &PhotoView::landmarkDropped, this,
        [this](LandmarkName name, QPointF at, bool byKey) { desk_.moveLandmark(animal_, name, at, byKey); },
        Qt::QueuedConnection);
    connect(ui_->photoView, &PhotoView::landmarkDragged, this, &SessionPage::showLive);
    connect(
        ui_->photoView, &PhotoView::animalClicked, ui_->animalCombo,
        [this](std::size_t index) { ui_->animalCombo->setCurrentIndex(static_cast<int>(index)); },
        Qt::QueuedConnection);
}

void SessionPage::connectTools() {
    const std::vector<std::pair<QToolButton*, Tool>> buttons = {{ui_->marksButton, Tool::Marks},
                                                                {ui_->traceButton, Tool::Trace},
                                                                {ui_->pullButton, Tool::Pull},
                                                                {ui_->cutButton, Tool::Cut}};
    for (const auto& [button, tool] : buttons)
        connect(button, &QToolButton::clicked, this, [this, chosen = tool] { chooseTool(chosen); });
    connect(&trace_, &TraceTool::traced, this, [this](const std::vector<PixelPoint>& clicks, bool closed) {
        constexpr double kNearViewPx = 24.0;
        desk_.trace(animal_, clicks, closed, kNearViewPx / ui_->photoView->transform().m11());
    });
    connect(&pull_, &PullTool::pulled, this, [this](const Outline& outline) { desk_.pull(animal_, outline); });
    connect(&pull_, &PullTool::refused, this, &SessionPage::problem);
    connect(&cut_, &CutTool::cut, this, [this](const std::vector<PixelPoint>& line) { desk_.cut(animal_, line); });
    connect(ui_->tailCheck, &QCheckBox::clicked, this, [this](bool on) { desk_.setTailClosed(animal_, on); });
    connect(ui_->broodingCheck, &QCheckBox::clicked, this, [this](bool on) { desk_.setBrooding(animal_, on); });
}

void SessionPage::connectButtons() {
    connect(ui_->zoomInButton, &QToolButton::clicked, this, &SessionPage::zoomIn);
    connect(ui_->zoomOutButton, &QToolButton::clicked, this, &SessionPage::zoomOut);
    connect(ui_->fitButton, &QToolButton::clicked, this, &SessionPage::fitPhoto);
    connect(ui_->acceptButton, &QPushButton::clicked, this, &SessionPage::accept);
    connect(ui_->againButton, &QPushButton::clicked, this, &SessionPage::askAgain);
    connect(ui_->nextButton, &QPushButton::clicked, this, &SessionPage::next);
    connect(ui_->previousButton, &QPushButton::clicked, this, &SessionPage::previous);
    QUndoGroup& undo = desk_.undoGroup();
    connect(ui_->undoButton, &QPushButton::clicked, &undo, &QUndoGroup::undo);
    connect(ui_->redoButton, &QPushButton::clicked, &undo, &QUndoGroup::redo);
    connect(&undo, &QUndoGroup::canUndoChanged, ui_->undoButton, &QPushButton::setEnabled);
    connect(&undo, &QUndoGroup::canRedoChanged, ui_->redoButton, &QPushButton::setEnabled);
    connect(&undo, &QUndoGroup::undoTextChanged, ui_->undoButton, &QPushButton::setToolTip);
    connect(&undo, &QUndoGroup::redoTextChanged, ui_->redoButton, &QPushButton::setToolTip);
    ui_->undoButton->setEnabled(false);
    ui_->redoButton->setEnabled(false);
}

bool SessionPage::eventFilter(QObject* watched, QEvent* event) {
    if (watched == ui_->measureTable->viewport() && event->type() == QEvent::Resize) {
        const int needed = fontMetrics().horizontalAdvance(QString(40, QLatin1Char('0')));
        ui_->measureTable->setColumnHidden(MeasureTableModel::Before, ui_->measureTable->viewport()->width() < needed);
    }
    return QWidget::eventFilter(watched, event);
}

void SessionPage::attempt(const std::function<void()>& action) {
    try {
        action();
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
}

void SessionPage::fillSessions() {
    const QVariant before = ui_->sessionCombo->currentData();
    const bool none = collection_.sessions().empty();
    firstSteps_->setVisible(none);
    firstSteps_->showState(collection_);
    ui_->splitter->setVisible(!none);
    ui_->sessionCombo->setVisible(!none);
    {
        const QSignalBlocker quiet(ui_->sessionCombo);
        ui_->sessionCombo->clear();
        for (const Session& session : collection_.sessions()) {
            QStringList words{dayText(session.on)};
            if (!session.keeper.empty()) words << QString::fromStdString(session.keeper);
            if (!session.boxName.empty()) words << QString::fromStdString(session.boxName);
            ui_->sessionCombo->addItem(words.join(QStringLiteral("  ·  ")), QVariant::fromValue(session.id.value));
        }
        ui_->sessionCombo->setCurrentIndex(std::max(0, ui_->sessionCombo->findData(before)));
    }
    sessionChosen(ui_->sessionCombo->currentIndex());
}

void SessionPage::showSession(SessionId session) {
    ui_->sessionCombo->setCurrentIndex(ui_->sessionCombo->findData(QVariant::fromValue(session.value)));
}

void SessionPage::sessionChosen(int index) {
    std::optional<SessionId> session;
    if (index >= 0) session = SessionId{ui_->sessionCombo->itemData(index).toLongLong()};
    const std::optional<PhotoId> before = row() == nullptr ? std::nullopt : std::optional(row()->photo.id);
    attempt([&] { photos_.showSession(session); });
    if (photos_.rowCount() > 0) {
        // A session that is taken up again goes on where it was left.
        const int again = before ? photos_.rowOf(*before) : -1;
        showRow(again >= 0 ? again : std::max(0, photos_.firstOf(PhotoState::Measured)));
        return;
    }
    photoChosen(-1);
    ui_->photoView->showSentence(session ? tr("This session has no photos.")
                                         : tr("No session yet. Drop a folder of photos or a camera card here."));
}

void SessionPage::showPhotoOf(AnimalId animal) {
    attempt([this, animal] {
        const std::vector<StoredMeasure> measures = collection_.store().measuresOfAnimal(animal);
        const auto newest =
            std::max_element(measures.begin(), measures.end(),
                             [](const StoredMeasure& a, const StoredMeasure& b) { return a.sessionOn < b.sessionOn; });
        if (newest != measures.end()) showPhoto(newest->photo);
    });
}

void SessionPage::showPhoto(PhotoId photo) {
    attempt([this, photo] {
        for (const Session& session : collection_.sessions())
            for (const StoredPhoto& each : collection_.store().photos(session.id))
                if (each.id == photo) {
                    showSession(session.id);
                    showRow(photos_.rowOf(photo));
                    return;
                }
    });
}

void SessionPage::showRow(int row) {
    ui_->photoList->setCurrentIndex(photos_.index(row));
}

const PhotoListModel::Row* SessionPage::row() const {
    return row_ >= 0 && row_ < photos_.rowCount() ? &photos_.row(row_) : nullptr;
}

void SessionPage::photoChosen(int newRow) {
    row_ = newRow;
    animal_ = 0;
    trace_.setPhoto(nullptr);
    if (row() == nullptr) {
        desk_.clear();
        return;
    }
    ui_->photoView->showSentence(tr("Reading the photo…"));
    std::vector<StoredPhoto> next;
    for (const int near : {row_ + 1, row_ - 1})
        if (near >= 0 && near < photos_.rowCount()) next.push_back(photos_.row(near).photo);
    attempt([this, &next] { desk_.show(*row(), next); });
}

void SessionPage::animalChosen(int index) {
    animal_ = static_cast<std::size_t>(std::max(0, index));
    refresh();
}

void SessionPage::assignIdentity(int index) {
    if (animal() == nullptr || !animal()->stored) return;
    const MeasureId measure = animal()->stored->id;
    const AnimalId chosen{ui_->identityCombo->itemData(index).toLongLong()};
    attempt(
        [&] { collection_.assign(row()->photo, measure, chosen.value == 0 ? std::nullopt : std::optional(chosen)); });
}

void SessionPage::accept() {
    if (row() == nullptr || !ui_->acceptButton->isEnabled()) return;
    try {
        desk_.accept();
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
        return;
    }
    goToNextUnaccepted();
}

void SessionPage::askAgain() {
    if (row() == nullptr || animal() == nullptr || !animal()->stored || !animal()->stored->animal) return;
    const AnimalId again = *animal()->stored->animal;
    attempt([&] {
        collection_.addRecord(
            "note",
            {{"animal", collection_.animalCode(again).toStdString()},
             {"on_day", formatDate(animal()->stored->sessionOn)},
             {"text",
              tr("Photograph again: %1").arg(QString::fromStdString(row()->photo.originalName)).toStdString()}});
        emit news(tr("Noted with %1: photograph it again.").arg(collection_.animalCode(again)));
        goToNextUnaccepted();
    });
}

void SessionPage::goToNextUnaccepted() {
    for (int row = row_ + 1; row < photos_.rowCount(); ++row)
        if (photos_.row(row).state == PhotoState::Measured) {
            showRow(row);
            return;
        }
    refresh();
}

void SessionPage::step(int by) {
    const int to = row_ + by;
    if (to >= 0 && to < photos_.rowCount()) showRow(to);
}

void SessionPage::fitPhoto() {
    ui_->photoView->fit();
}

void SessionPage::zoomIn() {
    ui_->photoView->zoomIn();
}

void SessionPage::zoomOut() {
    ui_->photoView->zoomOut();
}

}  // namespace ringrule
