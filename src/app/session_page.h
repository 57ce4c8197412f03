// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>
#include <memory>

#include "app/collection.h"
#include "app/cut_tool.h"
#include "app/measure_table_model.h"
#include "app/photo_desk.h"
#include "app/photo_list_model.h"
#include "app/pull_tool.h"
#include "app/trace_tool.h"

namespace Ui {
class SessionPage;
}

namespace ringrule {

class FirstSteps;

/// The photos of a session, one by one: look, correct, accept.
class SessionPage : public QWidget {
    Q_OBJECT

public:
    enum class Tool { Marks, Trace, Pull, Cut };

    explicit SessionPage(Collection& collection, QWidget* parent = nullptr);
    ~SessionPage() override;

    /// Undo and redo of the photo that is shown.
    [[nodiscard]] QUndoGroup& undoGroup() { return desk_.undoGroup(); }
    void setInFront(bool inFront) { desk_.setInFront(inFront); }
    [[nodiscard]] bool busy() const { return desk_.busy(); }
    [[nodiscard]] PhotoDraft* draft() const { return desk_.draft(); }
    [[nodiscard]] const PhotoListModel& photos() const { return photos_; }

    void showSession(SessionId session);
    /// The newest photo of an animal.
    void showPhotoOf(AnimalId animal);
    void showPhoto(PhotoId photo);
    void showRow(int row);

public slots:
    void accept();
    /// Notes with the animal that it is to be photographed again, and goes on.
    void askAgain();
    void next() { step(1); }
    void previous() { step(-1); }
    void fitPhoto();
    void zoomIn();
    void zoomOut();
    void chooseTool(ringrule::SessionPage::Tool tool);

signals:
    void newSessionWanted();
    void boxWanted();
    void animalsWanted();
    void cautionsWanted();
    void problem(const QString& sentence);
    void news(const QString& sentence);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void connectLists();
    void connectDesk();
    void connectTools();
    void connectButtons();
    /// Runs what may fail in the world; says what went wrong.
    void attempt(const std::function<void()>& action);
    void fillSessions();
    void sessionChosen(int index);
    void photoChosen(int row);
    void animalChosen(int index);
    void assignIdentity(int index);
    void step(int by);
    void goToNextUnaccepted();

    // session_page_animal.cpp: what is shown of the photo's animals.
    void refresh();
    void showAnimals();
    void showNumbers();
    void showLastTime();
    void showChoices();
    void showTool();
    void showLive(LandmarkName name, QPointF atPx);
    [[nodiscard]] const PhotoListModel::Row* row() const;
    /// The animal that is shown, or nothing.
    [[nodiscard]] const DeskAnimal* animal() const;

    std::unique_ptr<Ui::SessionPage> ui_;
    FirstSteps* firstSteps_ = nullptr;
    Collection& collection_;
    PhotoListModel photos_;
    MeasureTableModel measures_;
    PhotoDesk desk_;
    TraceTool trace_;
    PullTool pull_;
    CutTool cut_;
    Tool tool_ = Tool::Marks;
    int row_ = -1;
    std::size_t animal_ = 0;  ///< which of the desk's animals
};

}  // namespace ringrule
