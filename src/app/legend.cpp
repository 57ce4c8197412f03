// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/legend.h"

#include <QColor>
#include <QStringList>
#include <utility>
#include <vector>

#include "ringrule/sheets/landmark_mark.h"

namespace ringrule {

QString legendOf(const Landmarks& landmarks) {
    const std::vector<std::pair<LandmarkName, const char*>> signs = {{LandmarkName::SnoutTip, "●"},
                                                                     {LandmarkName::Coronet, "▲"},
                                                                     {LandmarkName::HeadEnd, "■"},
                                                                     {LandmarkName::TrunkEnd, "◆"},
                                                                     {LandmarkName::TailEnd, "▼"}};
    QStringList entries;
    for (const auto& [name, sign] : signs) {
        if (!landmarkOf(landmarks, name)) continue;
        const QString words =
            QString::fromUtf8(landmarkWords(name).data(), static_cast<qsizetype>(landmarkWords(name).size()));
        entries << QStringLiteral("<span style=\"color:%1\">%2</span>&nbsp;%3")
                       .arg(QColor(landmarkColour(name)).name(), QString::fromUtf8(sign), words);
    }
    return entries.join(QStringLiteral("&nbsp;&nbsp;&nbsp; "));
}

}  // namespace ringrule
