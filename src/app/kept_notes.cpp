// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/kept_notes.h"

#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSaveFile>

namespace ringrule {
namespace {

QJsonObject notesIn(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QJsonDocument::fromJson(file.readAll()).object() : QJsonObject();
}

}  // namespace

QString KeptNotes::file() const {
    return QString::fromStdString((folder_ / "notes.json").string());
}

void KeptNotes::keep(const QString& subject, const QString& text) const {
    QJsonObject notes = notesIn(file());
    if (notes[subject].toString() == text) return;
    if (text.isEmpty())
        notes.remove(subject);
    else
        notes[subject] = text;
    if (notes.isEmpty()) {
        QFile::remove(file());
        return;
    }
    std::error_code error;
    std::filesystem::create_directories(folder_, error);
    QSaveFile out(file());
    if (!out.open(QIODevice::WriteOnly)) return;
    out.write(QJsonDocument(notes).toJson(QJsonDocument::Compact));
    out.commit();
}

QString KeptNotes::of(const QString& subject) const {
    return notesIn(file())[subject].toString();
}

}  // namespace ringrule
