// SPDX-License-Identifier: GPL-3.0-or-later
// The corrections that a keeper makes on the photo's desk.
#include <algorithm>

#include "app/core_text.h"
#include "app/photo_desk.h"
#include "app/tool_ink.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/geometry/polyline.h"
#include "ringrule/outline/edit_outline.h"
#include "ringrule/outline/trace.h"

namespace ringrule {
namespace {

using Loop = std::span<const PixelPoint>;

/// Distance from a closed boundary.
double fromBoundary(const std::vector<PixelPoint>& boundary, PixelPoint at) {
    if (boundary.size() < 2) return std::numeric_limits<double>::infinity();
    const double open = project(Loop(boundary), at).distance;
    const std::array closing{boundary.back(), boundary.front()};
    return std::min(open, project(Loop(closing), at).distance);
}

/// Whether an outline goes round the same animal as another: one holds the middle of the other's points.
bool sameAnimal(const Outline& a, const Outline& b) {
    if (a.boundaryPx.size() < 3 || b.boundaryPx.size() < 3) return false;
    const auto share = [](const Outline& round, const Outline& of) {
        const auto inside = std::count_if(of.boundaryPx.begin(), of.boundaryPx.end(),
                                          [&](PixelPoint p) { return contains(Loop(round.boundaryPx), p); });
        return static_cast<double>(inside) / static_cast<double>(of.boundaryPx.size());
    };
    return share(a, b) > 0.2 || share(b, a) > 0.2;
}

}  // namespace

std::optional<std::size_t> PhotoDesk::editable(std::size_t animal) const {
    if (draft() == nullptr || !pixels_ || animal >= animals_.size()) return std::nullopt;
    return animals_[animal].place;
}

void PhotoDesk::moveLandmark(std::size_t animal, LandmarkName name, QPointF atPx, bool byKey) {
    if (draft() == nullptr || animal >= animals_.size() || !animals_[animal].place) return;
    draft()->moveLandmark(*animals_[animal].place, name, pixelOf(atPx), byKey);
}

std::optional<Measurement> PhotoDesk::withLandmarkAt(std::size_t animal, LandmarkName name, QPointF atPx) const {
    if (draft() == nullptr || animal >= animals_.size() || !animals_[animal].place) return std::nullopt;
    return draft()->withLandmarkAt(*animals_[animal].place, name, pixelOf(atPx)).measurement;
}

void PhotoDesk::pull(std::size_t animal, const Outline& outline) {
    if (const auto place = editable(animal)) draft()->setOutline(*pixels_, *place, outline, tr("pull of the outline"));
}

void PhotoDesk::trace(std::size_t animal, const std::vector<PixelPoint>& clicks, bool closed, double nearPx) {
    if (draft() == nullptr || !pixels_) return;
    const auto place = editable(animal);
    const Outline* outline = place ? &draft()->reading().animals[*place].outline : nullptr;
    const bool onOutline = outline != nullptr && fromBoundary(outline->boundaryPx, clicks.front()) < nearPx &&
                           fromBoundary(outline->boundaryPx, clicks.back()) < nearPx;
    if (!closed && onOutline) {
        const auto drawn = withStretch(*outline, traceThrough(*pixels_, clicks));
        if (drawn)
            draft()->setOutline(*pixels_, *place, drawn.value(), tr("trace of the edge"));
        else
            emit refused(reasonText(drawn.refusal().reason, drawn.refusal().sentence));
        return;
    }
    if (clicks.size() < 3) {
        emit refused(tr("A trace begins and ends on the outline, or goes all round an animal."));
        return;
    }
    const auto drawn = traceOutline(*pixels_, clicks);
    if (!drawn)
        emit refused(reasonText(drawn.refusal().reason, drawn.refusal().sentence));
    else if (outline != nullptr && sameAnimal(*outline, drawn.value()))
        draft()->setOutline(*pixels_, *place, drawn.value(), tr("trace of the animal"));
    else
        draft()->replaceAnimals(*pixels_, {}, {drawn.value()}, tr("trace of another animal"));
}

void PhotoDesk::cut(std::size_t animal, const std::vector<PixelPoint>& line) {
    const auto place = editable(animal);
    if (!place) return;
    const auto pieces = cutAlong(draft()->reading().animals[*place].outline, line);
    if (pieces)
        draft()->replaceAnimals(*pixels_, {*place}, pieces.value(), tr("cut"));
    else
        emit refused(reasonText(pieces.refusal().reason, pieces.refusal().sentence));
}

void PhotoDesk::setTailClosed(std::size_t animal, bool closed) {
    if (const auto place = editable(animal)) draft()->setTailClosed(*pixels_, *place, closed);
}

void PhotoDesk::setBrooding(std::size_t animal, bool brooding) {
    if (const auto place = editable(animal)) draft()->setBrooding(*place, brooding);
}

}  // namespace ringrule
