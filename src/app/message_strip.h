// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

class QLabel;

namespace ringrule {

/// A line above the page that says what went wrong or was done, and what to do next. Nothing waits for it.
class MessageStrip : public QFrame {
    Q_OBJECT

public:
    explicit MessageStrip(QWidget* parent = nullptr);
    [[nodiscard]] QString text() const;

public slots:
    void showProblem(const QString& sentence) { say(sentence, true); }
    void showNews(const QString& sentence) { say(sentence, false); }

private:
    void say(const QString& sentence, bool problem);
    QLabel* label_;
};

}  // namespace ringrule
