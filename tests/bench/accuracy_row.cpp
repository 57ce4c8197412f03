// SPDX-License-Identifier: GPL-3.0-or-later
#include "accuracy_row.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <sstream>

#include "body.h"
#include "ringrule/measure/repeats.h"
#include "sight.h"
#include "truth.h"

namespace bench {
namespace {

/// Remarks that tell a keeper to doubt the numbers; the others say how they were taken.
bool tellsDoubt(ringrule::Remark remark) {
    using ringrule::Remark;
    constexpr std::array kDoubts{
        Remark::Blurred, Remark::SmallInFrame,    Remark::Glare,          Remark::BadExposure,  Remark::CutOff,
        Remark::TooBent, Remark::OutlineDoubtful, Remark::HeadEndGuessed, Remark::ShapeGuessed, Remark::TailClosed};
    return std::find(kDoubts.begin(), kDoubts.end(), remark) != kDoubts.end();
}

double away(cv::Point2d a, ringrule::PixelPoint b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

void addRow(PhotoScore& score, const char* name, double truth, const ringrule::Estimate* estimate,
            bool relative = true) {
    if (!std::isfinite(truth)) return;
    Row row{name, relative, truth, {}, {}};
    if (estimate != nullptr && estimate->known()) row.value = estimate->value, row.u95 = estimate->u95();
    score.rows.push_back(row);
}

void addRows(PhotoScore& score, const render::Truth& truth, const ringrule::Measurement* found) {
    const auto field = [found](ringrule::Estimate ringrule::Measurement::*which) {
        return found == nullptr ? nullptr : &(found->*which);
    };
    using M = ringrule::Measurement;
    if (score.view == render::View::Side) {
        addRow(score, "standard length", truth.standardLengthMm, field(&M::standardLengthMm));
        addRow(score, "trunk depth", truth.trunkDepthMm, field(&M::trunkDepthMm));
        addRow(score, "head length", truth.headLengthMm, field(&M::headLengthMm));
        addRow(score, "trunk length", truth.trunkLengthMm, field(&M::trunkLengthMm));
        addRow(score, "tail length", truth.tailLengthMm, field(&M::tailLengthMm));
        if (truth.heightMm) addRow(score, "height", *truth.heightMm, field(&M::heightMm));
        addRow(score, "girth, one view", truth.girthMm, field(&M::girthMm));
        addRow(score, "belly hollow", truth.bellyHollowPercent.value_or(std::nan("")), field(&M::bellyHollowPercent),
               false);
        return;
    }
    addRow(score, "trunk width", truth.trunkWidthMm, field(&M::trunkWidthMm));
    if (score.view == render::View::Above)
        addRow(score, "standard length", truth.standardLengthMm, field(&M::standardLengthMm));
}

bool headTailSwapped(const render::Landmarks& truth, const render::Sight& sight, const ringrule::Landmarks& found) {
    if (!truth.snoutTip || !truth.tailEnd || !found.snoutTip) return false;
    const auto at = found.snoutTip->atPx;
    return away(sight.pxFromBody(*truth.tailEnd), at) < away(sight.pxFromBody(*truth.snoutTip), at);
}

std::string remarksOf(const std::vector<ringrule::Remark>& remarks) {
    std::string text;
    for (const ringrule::Remark remark : remarks)
        text += std::string(text.empty() ? "" : ",") + std::string(remarkId(remark));
    return text;
}

}  // namespace

bool PhotoScore::closedTail() const {
    return shape == render::Shape::Seahorse && view == render::View::Side && tail == render::Tail::Closed;
}

double PhotoScore::worstPercent() const {
    double worst = 0.0;
    for (const Row& row : rows) {
        const bool main =
            row.measure == "standard length" || row.measure == "trunk depth" || row.measure == "trunk width";
        if (main && row.value) worst = std::max(worst, 100.0 * std::abs(*row.value / row.truth - 1.0));
    }
    return worst;
}

std::string PhotoScore::kind() const {
    const std::string name = shape == render::Shape::Pipefish ? "pipefish" : "seahorse";
    if (view == render::View::Above) return name + ", above";
    if (view == render::View::Front) return name + ", front";
    if (shape == render::Shape::Pipefish) return name + ", side";
    return name + (tail == render::Tail::Open         ? ", side, tail open"
                   : tail == render::Tail::HalfCurled ? ", side, tail half curled"
                                                      : ", side, tail closed");
}

std::string PhotoScore::lines() const {
    std::ostringstream out;
    for (const Row& row : rows) {
        out << seed << '\t' << (stand == Stand::Loose ? "loose" : "stated") << '\t' << kind() << '\t' << lens << '\t'
            << large << '\t' << megapixels << '\t' << lengthMm << '\t' << pxPerMm << '\t' << row.measure << '\t'
            << row.truth << '\t';
        if (row.value)
            out << *row.value << '\t' << *row.u95;
        else
            out << "-\t-";
        out << '\t' << (refusal.empty() ? "-" : refusal) << '\t' << (remarks.empty() ? "-" : remarks) << '\n';
    }
    return out.str();
}

PhotoScore scoreOf(const AccuracyScene& drawn, std::uint64_t seed, Stand stand, const ringrule::PhotoReading& reading) {
    const render::Scene& scene = drawn.scene;
    const render::Body body = render::bodyOf(scene.animal, scene.posture, scene.view);
    const render::Truth truth = render::truthOf(scene, body, 40);
    const render::Sight sight(scene, body);
    PhotoScore score;
    score.seed = seed, score.stand = stand, score.shape = scene.animal.shape, score.view = scene.view;
    score.tail = scene.posture.tail, score.lens = drawn.lensTold;
    score.megapixels = 1e-6 * scene.sensor.widthPx * scene.sensor.heightPx;
    score.lengthMm = truth.standardLengthMm;
    const cv::Point2d middle = render::middleOf(body);
    const double reach = 0.1 * truth.standardLengthMm;
    score.pxPerMm = cv::norm(sight.pxFromBody(middle + cv::Point2d(reach, 0.0)) - sight.pxFromBody(middle)) / reach;
    const double across = scene.view == render::View::Side ? truth.trunkDepthMm : truth.trunkWidthMm;
    score.large = score.lengthMm * score.pxPerMm >= 400.0 && across * score.pxPerMm >= 40.0;
    score.refusal = reading.refusal ? reading.refusal->reason : "";
    const bool found = !reading.animals.empty();
    if (found) {
        // Print that was taken for a second animal is smaller, and is counted by its remark.
        const ringrule::AnimalReading& animal =
            *std::max_element(reading.animals.begin(), reading.animals.end(),
                              [](const auto& a, const auto& b) { return a.outline.areaPx2 < b.outline.areaPx2; });
        const ringrule::Measurement& m = animal.measurement;
        score.measurement = m;
        score.measured = m.measured();
        if (m.refusal) score.refusal = m.refusal->reason;
        score.remarks = remarksOf(m.remarks);
        score.doubtSaid = std::any_of(m.remarks.begin(), m.remarks.end(), tellsDoubt);
        score.swapped = headTailSwapped(body.landmarks, sight, animal.anatomy.landmarks);
        score.shapeWrong = (m.shape == ringrule::Shape::Pipefish) != (score.shape == render::Shape::Pipefish);
        score.animals = static_cast<int>(reading.animals.size());
        if (reading.animals.size() > 1) score.remarks += ",(" + std::to_string(reading.animals.size()) + " animals)";
    }
    addRows(score, truth, found ? &score.measurement : nullptr);
    return score;
}

void addGirthFromTwoViews(const PhotoScore& side, PhotoScore& second) {
    const double depth = side.rows[1].truth;
    const double width = second.rows[0].truth;
    const std::array photos{side.measurement, second.measurement};
    const ringrule::SessionMeasure session = ringrule::combineRepeats(photos);
    const bool both = session.trunkDepthMm.known() && session.trunkWidthMm.known();
    addRow(second, "girth, two views", render::ellipsePerimeter(depth, width), both ? &session.girthMm : nullptr);
    second.large = second.large && side.large;
}

}  // namespace bench
