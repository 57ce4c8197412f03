// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/paper_pages.h"

#include <QPageLayout>
#include <QPageSize>
#include <QSaveFile>
#include <memory>

#include "ringrule/error.h"
#include "ringrule/sheets/drawing_application.h"

namespace ringrule {
namespace {

constexpr int kDotsPerInch = 1200;
constexpr double kMmPerInch = 25.4;

QPageLayout layoutOf(Paper paper, bool landscape) {
    QPageLayout layout(QPageSize(paper == Paper::A4 ? QPageSize::A4 : QPageSize::Letter),
                       landscape ? QPageLayout::Landscape : QPageLayout::Portrait, QMarginsF(0, 0, 0, 0));
    layout.setMode(QPageLayout::FullPageMode);
    return layout;
}

}  // namespace

PaperPages::PaperPages(const QString& title) : buffer_(&bytes_), writer_((ensureDrawingApplication(), &buffer_)) {
    buffer_.open(QIODevice::WriteOnly);
    writer_.setTitle(title);
    writer_.setCreator(QStringLiteral("Ringrule " RINGRULE_VERSION));
    writer_.setResolution(kDotsPerInch);
}

void PaperPages::begin(Paper paper, bool landscape) {
    writer_.setPageLayout(layoutOf(paper, landscape));
    if (painter_.isActive())
        writer_.newPage();
    else
        painter_.begin(&writer_);
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.setTransform(QTransform::fromScale(kDotsPerInch / kMmPerInch, kDotsPerInch / kMmPerInch));
}

QByteArray PaperPages::finished() {
    painter_.end();
    buffer_.close();
    return bytes_;
}

void writeTogether(const std::vector<std::pair<std::filesystem::path, QByteArray>>& files) {
    const auto refuse = [](const std::filesystem::path& path, const QString& why) -> Error {
        return {ErrorKind::NoSpace,
                "the file cannot be written (" + why.toStdString() + "); check the folder and the free space",
                path.string()};
    };
    std::vector<std::unique_ptr<QSaveFile>> open;
    for (const auto& [path, content] : files) {
        open.push_back(std::make_unique<QSaveFile>(QString::fromStdString(path.string())));
        QSaveFile& file = *open.back();
        if (!file.open(QIODevice::WriteOnly) || file.write(content) != content.size() || !file.flush())
            throw refuse(path, file.errorString());
    }
    for (std::size_t i = 0; i < files.size(); ++i)
        if (!open[i]->commit()) throw refuse(files[i].first, open[i]->errorString());
}

}  // namespace ringrule
