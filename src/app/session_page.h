// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QUndoGroup>
#include <QWidget>
#include <functional>
#include <map>
#include <memory>

#include "app/collection.h"
#include "app/measure_table_model.h"
#include "app/photo_draft.h"
#include "app/photo_list_model.h"
#include "app/photo_reader.h"

namespace Ui {
class SessionPage;
}

namespace ringrule {

struct ShownAnimal;

/// The photos of a session, one by one: look, correct, accept.
class SessionPage : public QWidget {
    Q_OBJECT

public:
    explicit SessionPage(Collection& collection, QWidget* parent = nullptr);
    ~SessionPage() override;

    /// Undo and redo of the photo that is shown.
    [[nodiscard]] QUndoGroup& undoGroup() { return undoGroup_; }
    [[nodiscard]] bool busy() const { return reader_.busy(); }
    [[nodiscard]] PhotoDraft* draft() const;
    [[nodiscard]] const PhotoListModel& photos() const { return photos_; }

    void showSession(SessionId session);
    /// The newest photo of an animal.
    void showPhotoOf(AnimalId animal);
    void showRow(int row);

public slots:
    void accept();
    void next() { step(1); }
    void previous() { step(-1); }
    void fitPhoto();
    void zoomIn();
    void zoomOut();

signals:
    void newSessionWanted();
    void cautionsWanted();
    void problem(const QString& sentence);

private:
    void connectForm();
    /// Runs what may fail in the world; says what went wrong.
    void attempt(const std::function<void()>& action);
    void fillSessions();
    void sessionChosen(int index);
    void photoChosen(int row);
    void requestPhoto();
    void takeAnswer(const PhotoAnswer& answer);
    void moveLandmark(LandmarkName name, QPointF atPx, bool byKey);
    void assignIdentity(int index);
    void step(int by);
    void goToNextUnaccepted();

    void refresh();
    void showAnimals();
    void showNumbers();
    void showChoices();
    [[nodiscard]] const PhotoListModel::Row* row() const;
    /// The stored measure of the animal that is shown, or nothing.
    [[nodiscard]] const StoredMeasure* stored() const;
    [[nodiscard]] const Measurement* shownMeasurement() const;
    /// The animal as the photo was read again to be corrected; null before that is done.
    [[nodiscard]] const AnimalReading* readingOf(const StoredMeasure& measure) const;
    /// Whether it was changed since and waits to be accepted.
    [[nodiscard]] bool edited(const StoredMeasure& measure) const;
    [[nodiscard]] ShownAnimal shown(const StoredMeasure& measure) const;

    std::unique_ptr<Ui::SessionPage> ui_;
    Collection& collection_;
    PhotoListModel photos_;
    MeasureTableModel measures_;
    PhotoReader reader_;
    std::map<PhotoId, std::unique_ptr<PhotoDraft>> drafts_;
    QUndoGroup undoGroup_;
    int row_ = -1;
    std::size_t animal_ = 0;  ///< which of the photo's measures
};

}  // namespace ringrule
