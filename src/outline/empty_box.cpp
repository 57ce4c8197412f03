// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/outline/empty_box.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include <opencv2/imgproc.hpp>
#include <opencv2/photo.hpp>

#include "outline/background.h"
#include "outline/plate_region.h"
#include "outline/reduced.h"
#include "outline/tone.h"
#include "ringrule/geometry/polygon.h"

namespace ringrule {
namespace {

constexpr int kCellsAcross = 2400;    ///< of the plate's longer side, at most: finer than print needs
constexpr int kNodeStep = 16;         ///< cells or pixels between places that are traced exactly; linear between them
constexpr float kClean = 0.03F;       ///< shares this near to one are the plate's grain
constexpr float kPrintShare = 0.7F;   ///< darker than this is print, lighter is a stain that lets the plate through
constexpr float kGlareShare = 1.3F;   ///< lighter than this is a reflection, which need not be there again
constexpr double kPrintMarginMm = 0.12;  ///< round print: its blur, and what the two photos' scales differ by
constexpr double kPrintMarginPx = 2.0;
constexpr double kLongestUnseenMm = 3.0;  ///< of an edge, so that its ends tell how it ran
constexpr double kFillReachPx = 5.0;     ///< what is filled in continues what lies this near

/// Where each cell of a picture lies in another one, exact at every `kNodeStep`th place.
template <class Place>
cv::Mat2f placesOf(cv::Size size, const Place& place) {
    const auto node = [&](int row, int column) {
        const cv::Point2d at = place(column * kNodeStep, row * kNodeStep);
        return cv::Vec2f(static_cast<float>(at.x), static_cast<float>(at.y));
    };
    cv::Mat2f nodes((size.height - 1) / kNodeStep + 2, (size.width - 1) / kNodeStep + 2);
    for (int row = 0; row < nodes.rows; ++row)
        for (int column = 0; column < nodes.cols; ++column) nodes(row, column) = node(row, column);
    cv::Mat2f places(size);
    for (int y = 0; y < size.height; ++y) {
        const float down = static_cast<float>(y % kNodeStep) / kNodeStep;
        const cv::Vec2f* above = nodes[y / kNodeStep];
        const cv::Vec2f* below = nodes[y / kNodeStep + 1];
        for (int x = 0; x < size.width; ++x) {
            const int k = x / kNodeStep;
            const float right = static_cast<float>(x % kNodeStep) / kNodeStep;
            const cv::Vec2f left = above[k] + (below[k] - above[k]) * down;
            const cv::Vec2f next = above[k + 1] + (below[k + 1] - above[k + 1]) * down;
            places(y, x) = left + (next - left) * right;
        }
    }
    return places;
}

/// Values of a picture at those places; `beyond` outside of it.
cv::Mat1f readAt(const cv::Mat1f& picture, const cv::Mat2f& places, float beyond) {
    cv::Mat1f read;
    cv::remap(picture, read, places, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_CONSTANT, cv::Scalar(beyond));
    return read;
}

/// The grey value that stands for a light, for 0 … 2.
class GreyFromLight {
public:
    explicit GreyFromLight(const Tone& tone) {
        std::size_t grey = 0;
        for (std::size_t i = 0; i < greys_.size(); ++i) {
            const float light = static_cast<float>(i) / kSteps;
            while (grey < 255 && tone.lightOf[grey] < light) ++grey;
            greys_[i] = static_cast<unsigned char>(grey);
        }
    }
    [[nodiscard]] unsigned char operator()(float light) const {
        return greys_[static_cast<std::size_t>(std::clamp(light, 0.0F, 1.0F) * kSteps)];
    }

private:
    static constexpr float kSteps = 4095.0F;
    std::array<unsigned char, 4096> greys_{};
};

/// Stains divided away, pixel by pixel.
void divideAway(cv::Mat1b& grey, const cv::Mat1f& share, const Tone& tone) {
    const GreyFromLight greyOf(tone);
    for (int y = 0; y < grey.rows; ++y) {
        for (int x = 0; x < grey.cols; ++x) {
            const float s = share(y, x);
            if (s < kPrintShare || s > kGlareShare || std::abs(s - 1.0F) < kClean) continue;
            grey(y, x) = greyOf(tone.lightOf[grey(y, x)] / s);
        }
    }
}

/// What of a part of the photo is print in the empty box: markers and cards are looked after elsewhere.
cv::Mat1b printOf(const cv::Mat1f& share, const cv::Mat1b& marks, double pxPerMm) {
    cv::Mat1b print;
    cv::compare(share, kPrintShare, print, cv::CMP_LT);
    const int margin = static_cast<int>(std::ceil(kPrintMarginMm * pxPerMm + kPrintMarginPx));
    const cv::Size reach(2 * margin + 1, 2 * margin + 1);
    cv::dilate(print, print, cv::getStructuringElement(cv::MORPH_ELLIPSE, reach));
    print.setTo(0, marks);
    return print;
}

double pxPerMmOf(const Box& box, const Scale& scale) {
    const PlatePoint middle{0.5 * box.plate.widthMm, 0.5 * box.plate.heightMm};
    return 1.0 / scale.mmPerPx(scale.pixelFromPlate(middle));
}

}  // namespace

struct EmptyBox::State {
    cv::Mat1f share;  ///< light over that of the clean plate; cell (i, j) is centred on ((j + ½), (i + ½)) / cellsPerMm
    double cellsPerMm = 1.0;
};

struct ClearedPhoto::State {
    Photo photo;
    cv::Mat1b filled;    ///< not zero where the picture was filled in from beside it …
    cv::Point originPx;  ///< … in this part of the photo
    double pxPerMm = 1.0;

    [[nodiscard]] bool unseen(PixelPoint at) const {
        const cv::Point cell(cvRound(at.x) - originPx.x, cvRound(at.y) - originPx.y);
        return cv::Rect({0, 0}, filled.size()).contains(cell) && filled(cell) != 0;
    }
};

Outcome<EmptyBox> EmptyBox::fromPhoto(const Photo& photo, const Box& box, const FoundPlate& plate,
                                      const Scale& scale) {
    const double longerMm = std::max(box.plate.widthMm, box.plate.heightMm);
    const double cellsPerMm = std::min(pxPerMmOf(box, scale), kCellsAcross / longerMm);
    const int factor = std::max(1, static_cast<int>(pxPerMmOf(box, scale) / cellsPerMm));
    const Reduced seen = reducedLight(photo, photoTone(), plateBounds(photo.grey, box, scale), factor);
    const Refusal unclear{"empty-box-unclear",
                          "The plate cannot be told in the photo of the empty box. Take it in the light of the session, "
                          "with the whole plate in it."};
    if (seen.light.empty()) return unclear;
    const PlateRegion region = plateRegion(seen, box, plate, scale);
    cv::Mat1b usable = region.plate.clone();
    usable.setTo(0, region.marks);
    const Background background = fitBackground(seen.light, usable);
    if (!background.fitted) return unclear;
    cv::Mat1f ratio = dividedBy(seen.light, background);
    ratio.setTo(1.0F, usable == 0);
    const cv::Size cells(static_cast<int>(box.plate.widthMm * cellsPerMm),
                         static_cast<int>(box.plate.heightMm * cellsPerMm));
    const cv::Mat2f places = placesOf(cells, [&](int x, int y) {
        return seen.reducedFromPhoto(scale.pixelFromPlate({(x + 0.5) / cellsPerMm, (y + 0.5) / cellsPerMm}));
    });
    return EmptyBox(std::make_shared<const State>(State{readAt(ratio, places, 1.0F), cellsPerMm}));
}

ClearedPhoto EmptyBox::takenOutOf(const Photo& photo, const Box& box, const FoundPlate& plate,
                                  const Scale& scale) const {
    ClearedPhoto::State cleared{photo, {}, {}, pxPerMmOf(box, scale)};
    const cv::Rect part = plateBounds(photo.grey, box, scale);
    const auto made = [&] { return ClearedPhoto(std::make_shared<const ClearedPhoto::State>(std::move(cleared))); };
    if (part.area() == 0) return made();
    cleared.photo.grey = photo.grey.clone();
    cv::Mat1b grey = cleared.photo.grey(part);
    const cv::Mat2f places = placesOf(part.size(), [&](int x, int y) {
        const PlatePoint at = scale.plateFromPixel({1.0 * part.x + x, 1.0 * part.y + y});
        return cv::Point2d(at.x * state_->cellsPerMm - 0.5, at.y * state_->cellsPerMm - 0.5);
    });
    const cv::Mat1f share = readAt(state_->share, places, 1.0F);
    Reduced whole;
    whole.light = share;
    whole.originPx = part.tl();
    const PlateRegion region = plateRegion(whole, box, plate, scale);
    divideAway(grey, share, photoTone());
    cleared.filled = printOf(share, region.marks, cleared.pxPerMm);
    cleared.originPx = part.tl();
    cv::inpaint(grey, cleared.filled, grey, kFillReachPx, cv::INPAINT_TELEA);
    if (!photo.halfGrey.empty())
        cv::resize(cleared.photo.grey, cleared.photo.halfGrey, photo.halfGrey.size(), 0, 0, cv::INTER_AREA);
    return made();
}

const Photo& ClearedPhoto::photo() const {
    return state_->photo;
}

Outline ClearedPhoto::settled(Outline outline) const {
    std::vector<PixelPoint>& points = outline.boundaryPx;
    const auto unseen = [this](const PixelPoint& at) { return state_->unseen(at); };
    const auto seenOne = std::find_if_not(points.begin(), points.end(), unseen);
    if (seenOne == points.end()) {
        outline.remarks.push_back(Remark::OutlineDoubtful);
        return outline;
    }
    std::rotate(points.begin(), seenOne, points.end());
    const double longestPx = kLongestUnseenMm * state_->pxPerMm;
    std::vector<PixelPoint> kept;
    for (std::size_t i = 0; i < points.size();) {
        std::size_t next = i + 1;
        if (unseen(points[i])) {
            while (next < points.size() && unseen(points[next])) ++next;
            const bool crosses = distance(kept.back(), points[next % points.size()]) <= longestPx;
            if (!crosses) kept.insert(kept.end(), points.begin() + std::ptrdiff_t(i), points.begin() + std::ptrdiff_t(next));
            if (!crosses) outline.remarks.push_back(Remark::OutlineDoubtful);
        } else {
            kept.push_back(points[i]);
        }
        i = next;
    }
    points = std::move(kept);
    outline.areaPx2 = signedArea<PixelFrame>(points);
    for (const auto& hole : outline.holesPx) outline.areaPx2 += signedArea<PixelFrame>(hole);
    return outline;
}

}  // namespace ringrule
