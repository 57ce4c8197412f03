// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QPointF>
#include <QString>

class QPainter;

namespace ringrule {

/// What the pointer does on the photo while a correction is made. All places are pixels of the photo.
class PhotoTool : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    virtual void press(QPointF atPx) = 0;
    /// The pointer moved, pressed or not. `photoPxPerViewPx` says how coarse the view is.
    virtual void move(QPointF atPx, double photoPxPerViewPx) = 0;
    virtual void release(QPointF atPx) = 0;
    /// Enter, or a double click.
    virtual void finish() {}
    /// Backspace: takes the last step back.
    virtual void stepBack() {}
    /// Esc: what was begun is given up.
    virtual void cancel() = 0;
    /// Whether something was begun.
    [[nodiscard]] virtual bool begun() const = 0;
    /// Whether the keyboard presses and lets go in two steps; else a step is a click.
    [[nodiscard]] virtual bool drags() const { return true; }
    /// What to do with mouse and keyboard, for a keeper.
    [[nodiscard]] virtual QString hint() const = 0;
    /// Draws what was begun, in pixels of the photo.
    virtual void paint(QPainter& painter, double photoPxPerViewPx) const = 0;

signals:
    /// To be painted anew.
    void changed();
};

}  // namespace ringrule
