// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/calibrate_box.h"

#include "ringrule/error.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/optics/box_writer.h"

namespace ringrule {
namespace {

BoardView viewOf(const std::filesystem::path& path, const LensTask& task, const Box& box,
                 const std::optional<Lens>& lens) {
    try {
        const Photo photo = loadPhoto(path);
        return task.board ? viewChessboard(photo, *task.board) : viewPlate(photo, box, lens);
    } catch (const Error& error) {
        if (error.kind() != ErrorKind::BadPhoto) throw;
        BoardView view;
        view.path = path;
        view.notFound = error.what();
        return view;
    }
}

std::vector<BoardView> viewsOf(const LensTask& task, const Box& box, const std::optional<Lens>& lens,
                               const Progress& progress, double from, double to) {
    std::vector<BoardView> views;
    for (const auto& path : task.photos) {
        const double share = static_cast<double>(views.size()) / static_cast<double>(task.photos.size());
        if (progress && !progress(from + (to - from) * share, path.filename().string()))
            throw Error(ErrorKind::Stopped, "stopped; the box file is as it was");
        views.push_back(viewOf(path, task, box, lens));
    }
    return views;
}

}  // namespace

LensReport calibrateBoxLens(const LensTask& task, const Progress& progress) {
    const Box box = readBox(task.boxFile);
    // Edges of a plate's markers are bent by the lens that is sought: a first lens lets them be fitted straight.
    const double half = task.board ? 1.0 : 0.5;
    LensReport report = calibrateLens(viewsOf(task, box, std::nullopt, progress, 0.0, half), task.options);
    if (!task.board && report.fitted)
        report = calibrateLens(viewsOf(task, box, report.fitted->lens, progress, half, 1.0), task.options);
    if (report.fitted && task.write)
        writeLens(report.fitted->lens, report.fitted->origin, task.boxFile, report.fitted->covariance);
    return report;
}

}  // namespace ringrule
