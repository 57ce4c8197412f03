// SPDX-License-Identifier: GPL-3.0-or-later
#include "accuracy_tables.h"

#include <cmath>
#include <map>

#include "score.h"

namespace bench {
namespace {

enum class Unit { Percent, Pixels };

bool refusedRightly(const PhotoScore& photo, const Row& row) {
    return photo.closedTail() &&
           (row.measure == "standard length" || row.measure == "tail length" || row.measure == "height");
}

using Scores = std::map<std::string, Score>;

void add(Scores& scores, const std::string& label, const PhotoScore& photo, const Row& row, Unit unit) {
    if (refusedRightly(photo, row) && !row.value) return;
    Score& score = scores[label];
    if (!row.value) {
        ++score.refused;
        return;
    }
    const double factor = unit == Unit::Pixels ? photo.pxPerMm : row.relative ? 100.0 / row.truth : 1.0;
    const bool inDoubt = photo.remarks.find("outline-doubtful") != std::string::npos;
    score.answers.push_back({(*row.value - row.truth) * factor, *row.u95 * factor, inDoubt});
}

std::string errorTable(std::span<const PhotoScore> photos, bool large) {
    Scores scores;
    for (const PhotoScore& photo : photos) {
        if (photo.large != large) continue;
        for (const Row& row : photo.rows) {
            if (!large && !row.relative) continue;
            add(scores, row.measure + " (" + photo.kind() + ")", photo, row, large ? Unit::Percent : Unit::Pixels);
        }
    }
    std::string table = errorHead(large ? "% of truth" : "px") + "\n";
    for (const auto& [label, score] : scores) table += errorRow(label, score) + "\n";
    return table;
}

std::string coverageTable(std::span<const PhotoScore> photos) {
    Scores scores;
    for (const PhotoScore& photo : photos) {
        if (!photo.large) continue;
        for (const Row& row : photo.rows) {
            if (photo.closedTail() && refusedRightly(photo, row)) continue;
            const std::string shape = photo.shape == render::Shape::Pipefish ? "pipefish" : "seahorse";
            const std::string view = photo.view == render::View::Side    ? ", side"
                                     : photo.view == render::View::Above ? ", above"
                                                                         : ", front";
            add(scores, row.measure + ": all", photo, row, Unit::Percent);
            add(scores, row.measure + ": " + shape + view, photo, row, Unit::Percent);
            add(scores, row.measure + (photo.lens ? ": with lens" : ": without lens"), photo, row, Unit::Percent);
        }
    }
    std::string table = coverageHead() + "\n";
    for (const auto& [label, score] : scores) table += coverageRow(label, score) + "\n";
    return table;
}

struct Mistakes {
    int photos = 0, large = 0, refused = 0, silent = 0, swapped = 0, shapeWrong = 0, closed = 0, closedMeasured = 0,
        several = 0;
    std::string list;
};

Mistakes mistakesOf(std::span<const PhotoScore> photos) {
    Mistakes mistakes;
    for (const PhotoScore& photo : photos) {
        ++mistakes.photos;
        if (photo.animals > 1) ++mistakes.several;
        std::string what;
        if (photo.closedTail()) {
            ++mistakes.closed;
            if (photo.measured) ++mistakes.closedMeasured, what += " closed tail measured;";
        } else if (photo.large) {
            ++mistakes.large;
            if (!photo.measured) ++mistakes.refused, what += " refused: " + photo.refusal + ";";
        }
        if (photo.worstPercent() > 5.0 && !photo.doubtSaid) {
            ++mistakes.silent;
            what += " off by " + std::to_string(photo.worstPercent()).substr(0, 4) + " % in silence;";
        }
        if (photo.swapped) ++mistakes.swapped, what += photo.doubtSaid ? " swapped;" : " swapped in silence;";
        if (photo.measured && photo.shapeWrong) ++mistakes.shapeWrong, what += " other shape;";
        if (!what.empty())
            mistakes.list +=
                "- seed " + std::to_string(photo.seed) + " (" + photo.kind() + "):" + what + " " + photo.remarks + "\n";
    }
    return mistakes;
}

std::string percent(int count, int of) {
    char text[48];
    std::snprintf(text, sizeof text, "%d of %d (%.1f %%)", count, of, of > 0 ? 100.0 * count / of : 0.0);
    return text;
}

std::string mistakesTable(const Mistakes& m) {
    return "| what | photos |\n|---|---|\n| large animals, tail not closed, refused | " + percent(m.refused, m.large) +
           " |\n| length, depth or width off by over 5 % and no remark that says so | " + percent(m.silent, m.photos) +
           " |\n| head and tail swapped | " + percent(m.swapped, m.photos) + " |\n| taken for another shape | " +
           percent(m.shapeWrong, m.photos) + " |\n| closed tails given a length | " +
           percent(m.closedMeasured, m.closed) + " |\n| something else taken for a second animal | " +
           percent(m.several, m.photos) + " |\n";
}

}  // namespace

std::string tablesOf(std::span<const PhotoScore> stated, std::span<const PhotoScore> loose) {
    const Mistakes first = mistakesOf(stated);
    const Mistakes second = mistakesOf(loose);
    return "In the stated plane, 400 px long and 40 px deep or more:\n\n" + errorTable(stated, true) +
           "\nIn the stated plane, smaller:\n\n" + errorTable(stated, false) + "\n" + mistakesTable(first) +
           first.list + "\nDepth drawn from its tolerance, pitch from N(0, 4°):\n\n" + coverageTable(loose) + "\n" +
           mistakesTable(second) + second.list;
}

}  // namespace bench
