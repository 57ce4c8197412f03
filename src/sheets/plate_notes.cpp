// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/plate_notes.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "sheets/plate_ruler.h"

namespace ringrule {
namespace {

QString fileOf(const PlateSheetOptions& options) {
    return QString::fromStdString(options.boxFile).toHtmlEscaped();
}

// The longest stretch between two numbers of a scale.
QString stretch(const PlateLayout& plate, PlateScale scale) {
    const std::vector<int> numbers = numbersOn(plate, scale);
    if (numbers.size() < 2) return QStringLiteral("every ten millimetres must be 10 mm");
    return QStringLiteral("from %1 to %2 it must be %3 mm")
        .arg(numbers.front())
        .arg(numbers.back())
        .arg(numbers.back() - numbers.front());
}

// The numbers of a scale nearest to 50 mm before and behind a cut: far enough to set a rule to, near enough for a gap
// to show.
std::pair<int, int> numbersAbout(double cutMm, const std::vector<int>& numbers) {
    const auto nearest = [&numbers](double wanted) {
        return *std::min_element(numbers.begin(), numbers.end(),
                                 [wanted](int a, int b) { return std::abs(a - wanted) < std::abs(b - wanted); });
    };
    return {nearest(cutMm - 50.0), nearest(cutMm + 50.0)};
}

QString joinNotes(const PlateLayout& plate, const PlateTiles& tiles) {
    QString places;
    const auto add = [&](const std::vector<double>& cuts, PlateScale scale, const QString& words) {
        const std::vector<int> numbers = numbersOn(plate, scale);
        for (std::size_t k = 1; k + 1 < cuts.size() && !numbers.empty(); ++k) {
            const auto [from, to] = numbersAbout(cuts[k], numbers);
            places += QStringLiteral("<li>%1: from %2 to %3 it must be %4 mm.</li>")
                          .arg(words)
                          .arg(from)
                          .arg(to)
                          .arg(to - from);
        }
    };
    add(tiles.cutsXMm, PlateScale::Lower, QStringLiteral("lower scale"));
    add(tiles.cutsYMm, PlateScale::Left, QStringLiteral("left scale"));
    return QStringLiteral(
               "<h2>Join the %1 sheets</h2>"
               "<p>Each sheet but the first has a grey tab: it goes <b>under</b> its neighbour. Cut the neighbour "
               "along "
               "the straight line through its two ring marks, against a steel rule. Lay its cut edge on the line "
               "between "
               "the ring marks of the sheet with the tab, so that both rings are whole again and the scale runs on "
               "straight. Fix with a thin, even film of glue; no wet paste, which stretches paper.</p>"
               "<p><b>Check each join with a steel rule before laminating</b> (where the bar of 200 mm is 199 mm long, "
               "100 mm are 99.5 mm):</p><ul>%2</ul>"
               "<p>If one is off by more than 0.2 mm, lift the sheet and set it again: the box file describes a plate "
               "without gaps, and a gap is an error in every animal that lies across it.</p>")
        .arg(tiles.sheets())
        .arg(places);
}

QString toneNote(PlateTone tone) {
    if (tone == PlateTone::Pale) return {};
    return QStringLiteral(
        "<h2>A dark plate</h2><p>It is for pale and transparent animals. Ringrule measures an animal before it when it is "
        "clearly paler than the ground, with a less certain depth, and refuses any other: for animals that show on both, "
        "use the pale one.</p>");
}

}  // namespace

QString barNote(double acrossMm, double downMm, const PlateSheetOptions& options) {
    const QString down = downMm > 0.0 ? QStringLiteral(" --down-stated %1 --down-measured …").arg(downMm) : QString();
    return QStringLiteral(
               "<p><b>Print at 100 %</b> (“actual size”, never “fit to page”). Measure the black bars from end to end "
               "with a "
               "steel rule, to 0.1 mm. If they are not as long as they say, type what you read:<br/>"
               "<b>ringrule box rescale --box %1 --bar-stated %2 --bar-measured …%3</b></p>")
        .arg(fileOf(options))
        .arg(acrossMm)
        .arg(down);
}

QString makingNotes(const Box& box, const PlateTiles& tiles, const PlateSheetOptions& options) {
    const PlateLayout& plate = box.plate;
    const QString join = tiles.sheets() > 1 ? joinNotes(plate, tiles) : QString();
    return QStringLiteral(
               "<h2>Print</h2>"
               "<p>Heavy matt white paper, or white polyester film for laser printers, which water does not swell. "
               "Black "
               "ink or toner, best quality, 100 %. Let ink dry for an hour, then measure the bars.</p>"
               "%1"
               "<h2>Cut and laminate</h2>"
               "<p>Cut along the thin grey outline. Laminate in a <b>matt</b> pouch: a glossy one mirrors lamps and "
               "window, "
               "and a reflection hides markers and the animal's edge. Let the film stand over by 4 mm on every side "
               "and "
               "press that rim well: it keeps the water out. Round the corners, so that they cannot hurt an animal.</p>"
               "<h2>Mount it flat</h2>"
               "<p>Fix it on a rigid sheet of acrylic or PVC of 3 mm or more with aquarium silicone that has cured for "
               "as "
               "long as its maker says; nothing of metal, no tape under water. It must lie flat to half a millimetre, "
               "upright as the numbers read, parallel to the front pane. Soak it for a day in clean tank water and "
               "rinse "
               "it before the first animal.</p>"
               "<h2>Check what you have made</h2>"
               "<p>Laminating and water can stretch paper. Lay the steel rule along the plate's own scales now, and "
               "again "
               "every three months: along the lower edge %2, along the left edge %3, each as the print had it. If not, "
               "correct the box file with these numbers in place of the bars'.</p>"
               "<h2>Then</h2>"
               "<p>The box file %4 knows the plate only. <b>animal_plane</b> in it is a wide guess (%5 ± %5 mm before "
               "the "
               "plate): measure your box and write down what it is; add <b>media</b> (window, water) and the "
               "<b>lens</b>. "
               "Each makes every interval narrower. Change the plate when the film lifts, clouds or gets scratched.</p>"
               "%6")
        .arg(join, stretch(plate, PlateScale::Lower), stretch(plate, PlateScale::Left), fileOf(options))
        .arg(box.animalPlane.distanceFromPlateMm)
        .arg(toneNote(options.tone));
}

}  // namespace ringrule
