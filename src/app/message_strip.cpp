// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/message_strip.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QStyle>
#include <QToolButton>

namespace ringrule {

MessageStrip::MessageStrip(QWidget* parent) : QFrame(parent), label_(new QLabel(this)) {
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(24, 8, 12, 8);
    label_->setWordWrap(true);
    label_->setTextFormat(Qt::PlainText);
    label_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    layout->addWidget(label_, 1);
    auto* close = new QToolButton(this);
    close->setText(QStringLiteral("✕"));
    close->setAutoRaise(true);
    close->setToolTip(tr("Put this message away"));
    close->setAccessibleName(close->toolTip());
    connect(close, &QToolButton::clicked, this, &QWidget::hide);
    layout->addWidget(close);
    setAccessibleName(tr("Message"));
    hide();
}

QString MessageStrip::text() const {
    return label_->text();
}

void MessageStrip::say(const QString& sentence, bool problem) {
    label_->setText((problem ? QStringLiteral("⚠  ") : QString()) + sentence);
    setAccessibleDescription(sentence);
    setProperty("kind", problem ? "problem" : "news");
    style()->unpolish(this);
    style()->polish(this);
    setVisible(true);
}

}  // namespace ringrule
