// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>

#include "app/collection.h"

namespace Ui {
class FirstSteps;
}

namespace ringrule {

/// What to do in a collection without a session: the box, the animals, the first folder of photos. What is done is
/// ticked.
class FirstSteps : public QWidget {
    Q_OBJECT

public:
    explicit FirstSteps(QWidget* parent = nullptr);
    ~FirstSteps() override;

    void showState(const Collection& collection);

signals:
    void boxWanted();
    void animalsWanted();
    void sessionWanted();

private:
    std::unique_ptr<Ui::FirstSteps> ui_;
};

}  // namespace ringrule
