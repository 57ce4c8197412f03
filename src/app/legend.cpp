// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/legend.h"

#include <QApplication>
#include <QColor>
#include <QStringList>
#include <utility>
#include <vector>

#include "app/core_text.h"
#include "ringrule/sheets/landmark_mark.h"

namespace ringrule {
namespace {

/// The mark's colour, lighter where the ground is dark.
QColor glyphInk(LandmarkName name) {
    const QColor ink(landmarkColour(name));
    return QApplication::palette().color(QPalette::Window).lightness() < 128 ? ink.lighter(145) : ink;
}

}  // namespace

QString legendOf(const Landmarks& landmarks) {
    const std::vector<std::pair<LandmarkName, const char*>> signs = {{LandmarkName::SnoutTip, "●"},
                                                                     {LandmarkName::Coronet, "▲"},
                                                                     {LandmarkName::HeadEnd, "■"},
                                                                     {LandmarkName::TrunkEnd, "◆"},
                                                                     {LandmarkName::TailEnd, "▼"}};
    QStringList entries;
    for (const auto& [name, sign] : signs) {
        if (!landmarkOf(landmarks, name)) continue;
        // A name stays in one line with its sign.
        const QString words = coreText(landmarkWords(name)).replace(' ', QStringLiteral("&nbsp;"));
        entries << QStringLiteral("<span style=\"color:%1\">%2</span>&nbsp;%3")
                       .arg(glyphInk(name).name(), QString::fromUtf8(sign), words);
    }
    return entries.join(QStringLiteral("&nbsp;&nbsp;&nbsp; "));
}

}  // namespace ringrule
