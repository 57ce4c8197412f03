// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>

#include "app/current_box.h"

namespace ringrule {

/// One step of setting a box up: what is typed and done there. The page around it says how the step stands.
class BoxPanel : public QWidget {
    Q_OBJECT

public:
    /// Shows what the box file says now. Called when another box is chosen or its file has changed.
    virtual void showBox() = 0;

signals:
    void news(const QString& sentence);
    void problem(const QString& sentence);

protected:
    explicit BoxPanel(CurrentBox& current, QWidget* parent) : QWidget(parent), current_(current) {}
    /// Runs what may fail in the world; says what went wrong. Whether it went well.
    bool attempt(const std::function<void()>& action);

    CurrentBox& current_;
};

}  // namespace ringrule
