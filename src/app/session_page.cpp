// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/session_page.h"

#include <QAction>
#include <QHeaderView>
#include <QSignalBlocker>
#include <algorithm>

#include "app/cautions.h"
#include "app/photo_view.h"
#include "app/stored_correction.h"
#include "app/two_line_delegate.h"
#include "ringrule/error.h"
#include "ui_session_page.h"

namespace ringrule {

SessionPage::SessionPage(Collection& collection, QWidget* parent)
    : QWidget(parent), ui_(std::make_unique<Ui::SessionPage>()), collection_(collection), photos_(collection) {
    ui_->setupUi(this);
    ui_->photoList->setModel(&photos_);
    ui_->photoList->setItemDelegate(new TwoLineDelegate(this));
    ui_->measureTable->setModel(&measures_);
    ui_->measureTable->horizontalHeader()->hide();
    ui_->measureTable->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    ui_->measureTable->horizontalHeader()->setSectionResizeMode(1, QHeaderView::ResizeToContents);
    ui_->measureTable->verticalHeader()->hide();
    ui_->measureTable->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 9);
    ui_->measureTable->setSizeAdjustPolicy(QAbstractScrollArea::AdjustToContents);
    ui_->splitter->setSizes({210, 720, 300});
    ui_->splitter->setStretchFactor(1, 1);
    ui_->cautionLabel->setText(handlingCaution());
    connectForm();
    if (collection_.isOpen()) fillSessions();
}

SessionPage::~SessionPage() = default;

void SessionPage::connectForm() {
    connect(&collection_, &Collection::opened, this, [this] {
        drafts_.clear();
        fillSessions();
    });
    connect(&collection_, &Collection::reloaded, this, &SessionPage::fillSessions);
    connect(ui_->sessionCombo, &QComboBox::currentIndexChanged, this, &SessionPage::sessionChosen);
    connect(ui_->newSessionButton, &QPushButton::clicked, this, &SessionPage::newSessionWanted);
    connect(ui_->photoList->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& current) { photoChosen(current.row()); });
    connect(&photos_, &QAbstractItemModel::dataChanged, this, &SessionPage::refresh);
    connect(&reader_, &PhotoReader::answered, this, &SessionPage::takeAnswer);
    connect(&reader_, &PhotoReader::failed, this, [this](PhotoId, const QString& sentence) {
        ui_->photoView->showSentence(tr("The photo cannot be shown."));
        emit problem(sentence);
    });
    connect(ui_->photoView, &PhotoView::landmarkDropped, this, &SessionPage::moveLandmark, Qt::QueuedConnection);
    connect(
        ui_->photoView, &PhotoView::animalClicked, ui_->animalCombo,
        [this](std::size_t index) { ui_->animalCombo->setCurrentIndex(static_cast<int>(index)); },
        Qt::QueuedConnection);
    connect(ui_->zoomInButton, &QToolButton::clicked, this, &SessionPage::zoomIn);
    connect(ui_->zoomOutButton, &QToolButton::clicked, this, &SessionPage::zoomOut);
    connect(ui_->fitButton, &QToolButton::clicked, this, &SessionPage::fitPhoto);
    connect(ui_->animalCombo, &QComboBox::currentIndexChanged, this, [this](int index) {
        animal_ = static_cast<std::size_t>(std::max(0, index));
        showAnimals();
        showNumbers();
        showChoices();
    });
    connect(ui_->identityCombo, &QComboBox::activated, this, &SessionPage::assignIdentity);
    connect(ui_->acceptButton, &QPushButton::clicked, this, &SessionPage::accept);
    connect(ui_->nextButton, &QPushButton::clicked, this, &SessionPage::next);
    connect(ui_->previousButton, &QPushButton::clicked, this, &SessionPage::previous);
    connect(ui_->undoButton, &QPushButton::clicked, &undoGroup_, &QUndoGroup::undo);
    connect(ui_->redoButton, &QPushButton::clicked, &undoGroup_, &QUndoGroup::redo);
    connect(&undoGroup_, &QUndoGroup::canUndoChanged, ui_->undoButton, &QPushButton::setEnabled);
    connect(&undoGroup_, &QUndoGroup::canRedoChanged, ui_->redoButton, &QPushButton::setEnabled);
    connect(ui_->cautionLabel, &QLabel::linkActivated, this, &SessionPage::cautionsWanted);
    ui_->undoButton->setEnabled(false);
    ui_->redoButton->setEnabled(false);
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
    {
        const QSignalBlocker quiet(ui_->sessionCombo);
        ui_->sessionCombo->clear();
        for (const Session& session : collection_.sessions()) {
            QStringList words{QString::fromStdString(formatDate(session.on))};
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
        showRow(before ? std::max(0, photos_.rowOf(*before)) : 0);
        return;
    }
    photoChosen(-1);
    ui_->photoView->showSentence(session ? tr("This session has no photos.")
                                         : tr("No session yet. Choose New session… and a folder of photos."));
}

void SessionPage::showPhotoOf(AnimalId animal) {
    attempt([this, animal] {
        const std::vector<StoredMeasure> measures = collection_.store().measuresOfAnimal(animal);
        for (const Session& session : collection_.sessions())
            for (const StoredPhoto& photo : collection_.store().photos(session.id))
                for (const StoredMeasure& measure : measures)
                    if (measure.photo == photo.id) {
                        showSession(session.id);
                        showRow(photos_.rowOf(photo.id));
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

PhotoDraft* SessionPage::draft() const {
    if (row() == nullptr) return nullptr;
    const auto found = drafts_.find(row()->photo.id);
    return found == drafts_.end() ? nullptr : found->second.get();
}

void SessionPage::photoChosen(int newRow) {
    row_ = newRow;
    animal_ = 0;
    undoGroup_.setActiveStack(draft() != nullptr ? &draft()->undoStack() : nullptr);
    if (row() != nullptr) attempt([this] { requestPhoto(); });
    refresh();
}

void SessionPage::requestPhoto() {
    PhotoRequest request;
    request.photo = row()->photo.id;
    request.original = collection_.store().originalOf(row()->photo);
    request.options.view = row()->photo.view;
    request.stored = row()->measures;
    if (!row()->measures.empty()) {
        request.box = collection_.box(row()->measures.front().boxName);
        request.options.shape = row()->measures.front().measurement.shape;
    }
    ui_->photoView->showSentence(tr("Reading the photo…"));
    reader_.read(std::move(request));
}

void SessionPage::takeAnswer(const PhotoAnswer& answer) {
    if (row() == nullptr || row()->photo.id != answer.photo) return;
    ui_->photoView->showPhoto(answer.picture);
    if (answer.reading && answer.reading->scale && draft() == nullptr) {
        auto draft = std::make_unique<PhotoDraft>(*answer.reading);
        connect(draft.get(), &PhotoDraft::animalChanged, this, &SessionPage::refresh);
        undoGroup_.addStack(&draft->undoStack());
        undoGroup_.setActiveStack(&draft->undoStack());
        drafts_[answer.photo] = std::move(draft);
    }
    if (!answer.problem.isEmpty()) emit problem(answer.problem);
    refresh();
    ui_->photoView->fit();
}

}  // namespace ringrule
