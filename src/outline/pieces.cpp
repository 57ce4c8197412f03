// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/pieces.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <opencv2/imgproc.hpp>

#include "outline/components.h"

namespace ringrule {
namespace {

constexpr int kLevels = 64;

/// Print is thin: strokes of letters, ticks and lines are narrower than any animal's trunk of that length.
constexpr double kStrokeHalfMm = 0.45;
constexpr double kLetterMm = 6.5;       ///< largest extent of a letter or a tick near the rim
constexpr double kLetterMm2 = 6.0;       ///< and largest area of one, also where smaller parts of animals are looked for
constexpr double kWordMm = 10.0;        ///< largest extent of a numeral or a word in a ruler's row
constexpr double kRowMm = 30.0;         ///< a row is looked for within this distance
constexpr int kRowCount = 5;            ///< and is made of this many marks
constexpr double kCardReach = 1.15;     ///< of a card marker's side: writing on the card lies within
constexpr double kCardWordReach = 1.6;  ///< of the marker's side: largest extent of a word that hangs together
constexpr double kLetterGap = 0.5;      ///< of the marker's side: between letters
constexpr double kReachMm = 15.0;       ///< farthest that a thin end is looked for beyond its piece
constexpr double kJoinMm = 1.5;         ///< widest gap between parted pieces of one animal
constexpr double kLooseShare = 0.4;     ///< of the way from the threshold to the plate's light: what still joins them
constexpr double kLongShare = 4.5;       ///< area over that of the widest disc inside: a disc has 1, long fish over 6
constexpr double kDebrisShare = 0.2;     ///< of the largest animal's area: a smaller compact piece beside it is debris
constexpr double kLineAspect = 60.0;    ///< a line is at least this many times longer than wide

double extentMm(const cv::Rect& bounds, double pxPerMm) {
    return std::hypot(bounds.width, bounds.height) / pxPerMm;
}

/// Largest extent of the piece outside its own label's border: half-width by distance transform of its window.
double halfWidthPx(const cv::Mat1i& labels, const Piece& piece) {
    cv::Mat1b own;
    cv::compare(labels(piece.bounds), piece.label, own, cv::CMP_EQ);
    cv::copyMakeBorder(own, own, 1, 1, 1, 1, cv::BORDER_CONSTANT, cv::Scalar(0));
    cv::Mat1f distance;
    cv::distanceTransform(own, distance, cv::DIST_L2, 3);
    double most = 0.0;
    cv::minMaxLoc(distance, nullptr, &most);
    return most - 0.5;
}

double distanceToPolygon(const std::vector<cv::Point2d>& polygon, const cv::Rect& bounds) {
    std::vector<cv::Point2f> corners;
    corners.reserve(polygon.size());
    for (const cv::Point2d& corner : polygon) corners.emplace_back(corner);
    double nearest = 1e9;
    for (const double fx : {0.0, 0.5, 1.0}) {
        for (const double fy : {0.0, 0.5, 1.0}) {
            const cv::Point2f at(static_cast<float>(bounds.x + fx * (bounds.width - 1)),
                                 static_cast<float>(bounds.y + fy * (bounds.height - 1)));
            nearest = std::min(nearest, -cv::pointPolygonTest(corners, at, true));
        }
    }
    return nearest;
}

double gapBetween(const cv::Rect& a, const cv::Rect& b) {
    const int dx = std::max({0, a.x - b.br().x, b.x - a.br().x});
    const int dy = std::max({0, a.y - b.br().y, b.y - a.br().y});
    return std::hypot(dx, dy);
}

/// Of small pieces, those that belong to a card's writing: near its marker, or near one that does.
std::vector<cv::Rect> cardWriting(const PlateRegion& region, const std::vector<cv::Rect>& small) {
    std::vector<cv::Rect> writing;
    for (const auto& card : region.cards) {
        const double side = cv::norm(card[1] - card[0]);
        std::vector<cv::Rect> open = small;
        std::vector<cv::Rect> found;
        const auto take = [&](auto belongs) {
            const auto kept =
                std::partition(open.begin(), open.end(), [&](const cv::Rect& rect) { return !belongs(rect); });
            std::vector<cv::Rect> taken(kept, open.end());
            open.erase(kept, open.end());
            found.insert(found.end(), taken.begin(), taken.end());
            return taken;
        };
        std::erase_if(
            open, [&](const cv::Rect& rect) { return std::hypot(rect.width, rect.height) > kCardWordReach * side; });
        std::vector<cv::Rect> last =
            take([&](const cv::Rect& rect) { return distanceToPolygon(card, rect) < kCardReach * side; });
        while (!last.empty()) {
            const std::vector<cv::Rect> around = last;
            last = take([&](const cv::Rect& rect) {
                return std::any_of(around.begin(), around.end(),
                                   [&](const cv::Rect& r) { return gapBetween(r, rect) < kLetterGap * side; });
            });
        }
        writing.insert(writing.end(), found.begin(), found.end());
    }
    return writing;
}

/// Whether nearly all of a piece lies in a part of the plate.
bool liesIn(const cv::Mat1b& part, const cv::Mat1i& labels, const Piece& piece) {
    cv::Mat1b own;
    cv::compare(labels(piece.bounds), piece.label, own, cv::CMP_EQ);
    const int all = cv::countNonZero(own);
    own &= part(piece.bounds);
    return cv::countNonZero(own) > 0.8 * all;
}

/// Whether a small piece stands in a row with others too small for animals: ticks and numerals of a ruler.
bool inRow(const Piece& piece, const std::vector<cv::Rect>& specks, double pxPerMm) {
    const cv::Point middle = (piece.bounds.tl() + piece.bounds.br()) / 2;
    const auto near = std::count_if(specks.begin(), specks.end(), [&](const cv::Rect& speck) {
        return cv::norm((speck.tl() + speck.br()) / 2 - middle) < kRowMm * pxPerMm;
    });
    return near >= kRowCount;
}

/// What is too small for an animal: marks in the plate's rim, and everything that is a card's writing.
struct SmallPrint {
    std::vector<cv::Rect> rim;
    std::vector<cv::Rect> writing;
};

bool isPrint(const PlateRegion& region, const cv::Mat1i& labels, const Piece& piece, const SmallPrint& print,
             double pxPerMm) {
    if (std::find(print.writing.begin(), print.writing.end(), piece.bounds) != print.writing.end()) return true;
    if (liesIn(region.scales, labels, piece)) return true;
    const double extent = extentMm(piece.bounds, pxPerMm);
    const bool rim = liesIn(region.rim, labels, piece);
    if (rim && (extent < kLetterMm || (extent < kWordMm && inRow(piece, print.rim, pxPerMm)))) return true;
    if (piece.halfWidthMm < kStrokeHalfMm && extent > kLineAspect * piece.halfWidthMm &&
        piece.areaMm2 < 2.4 * piece.halfWidthMm * extent &&
        std::min(piece.bounds.width, piece.bounds.height) < 1.0 * pxPerMm) {
        return true;
    }
    return rim && piece.halfWidthMm < 0.6 * kStrokeHalfMm;
}

bool reachesEdge(const PlateRegion& region, const cv::Mat1i& labels, const Piece& piece) {
    const cv::Rect window = cv::Rect(piece.bounds.tl() - cv::Point(2, 2), piece.bounds.size() + cv::Size(4, 4)) &
                            cv::Rect({0, 0}, labels.size());
    if (window.x == 0 || window.y == 0 || window.br().x == labels.cols || window.br().y == labels.rows) return true;
    cv::Mat1b own;
    cv::compare(labels(window), piece.label, own, cv::CMP_EQ);
    cv::dilate(own, own, cv::Mat1b::ones(3, 3));
    cv::Mat1b hidden;
    cv::compare(region.plate(window), 0, hidden, cv::CMP_EQ);
    hidden |= region.marks(window);
    hidden &= own;
    return cv::countNonZero(hidden) > 2;
}

/// Whether two pieces hang together by something lighter than the threshold but clearly darker than the plate.
bool hangTogether(const cv::Mat1f& ratio, const cv::Mat1i& labels, const Piece& a, const Piece& b, double loose) {
    const cv::Rect window = a.bounds | b.bounds;
    cv::Mat1b dark;
    cv::compare(ratio(window), loose, dark, cv::CMP_LT);
    cv::Mat1i joined;
    cv::connectedComponents(dark, joined, 8, CV_32S);
    int ofA = 0;
    int ofB = 0;
    for (int y = 0; y < window.height; ++y) {
        for (int x = 0; x < window.width; ++x) {
            const int label = labels(window.y + y, window.x + x);
            if (label == a.label) ofA = joined(y, x);
            if (label == b.label) ofB = joined(y, x);
        }
    }
    return ofA != 0 && ofA == ofB;
}

/// The piece's bounds with what hangs on it at a looser threshold, ends too thin for the reduced picture, within
/// reason: walked from the piece, for it is small in the picture.
cv::Rect reachOf(const cv::Mat1f& ratio, const cv::Mat1i& labels, const Piece& piece, double loose, double pxPerMm) {
    const int most = static_cast<int>(kReachMm * pxPerMm);
    const cv::Rect window = cv::Rect(piece.bounds.x - most, piece.bounds.y - most, piece.bounds.width + 2 * most,
                                     piece.bounds.height + 2 * most) &
                            cv::Rect({0, 0}, ratio.size());
    const auto looseLight = static_cast<float>(loose);
    cv::Mat1b seen(window.size(), static_cast<unsigned char>(0));
    std::vector<cv::Point> open;
    const auto visit = [&](cv::Point at) {
        unsigned char& mark = seen(at - window.tl());
        if (mark == 0 && ratio(at) < looseLight) mark = 1, open.push_back(at);
    };
    for (int y = piece.bounds.y; y < piece.bounds.br().y; ++y) {
        for (int x = piece.bounds.x; x < piece.bounds.br().x; ++x) {
            if (labels(y, x) == piece.label) visit({x, y});
        }
    }
    cv::Point least = piece.bounds.tl();
    cv::Point greatest = piece.bounds.br() - cv::Point(1, 1);
    while (!open.empty()) {
        const cv::Point at = open.back();
        open.pop_back();
        least = {std::min(least.x, at.x), std::min(least.y, at.y)};
        greatest = {std::max(greatest.x, at.x), std::max(greatest.y, at.y)};
        for (int y = std::max(at.y - 1, window.y); y <= std::min(at.y + 1, window.br().y - 1); ++y) {
            for (int x = std::max(at.x - 1, window.x); x <= std::min(at.x + 1, window.br().x - 1); ++x) visit({x, y});
        }
    }
    return {least, greatest + cv::Point(1, 1)};
}

/// Pieces of one animal that a pale band or a thin place parts at the threshold, put together.
void joinParted(const cv::Mat1f& ratio, double threshold, double pxPerMm, Pieces& pieces) {
    const double loose = threshold + kLooseShare * (1.0 - threshold);
    std::vector<Piece>& all = pieces.animals;
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t j = i + 1; j < all.size();) {
            const bool near = gapBetween(all[i].bounds, all[j].bounds) < kJoinMm * pxPerMm;
            if (!near || !hangTogether(ratio, pieces.labels, all[i], all[j], loose)) {
                ++j;
                continue;
            }
            cv::Mat1i part = pieces.labels(all[j].bounds);
            part.setTo(all[i].label, part == all[j].label);
            all[i].bounds |= all[j].bounds;
            all[i].areaMm2 += all[j].areaMm2;
            all[i].halfWidthMm = std::max(all[i].halfWidthMm, all[j].halfWidthMm);
            all[i].atEdge = all[i].atEdge || all[j].atEdge;
            all.erase(all.begin() + static_cast<std::ptrdiff_t>(j));
            j = i + 1;
        }
    }
}

/// Whether the piece is long for its width, as fish are.
bool isLong(const Piece& piece) {
    return piece.areaMm2 > kLongShare * M_PI * piece.halfWidthMm * piece.halfWidthMm;
}

/// Bubbles, snails, droppings: compact pieces that are small beside the photo's largest long animal.
void dropDebris(Pieces& pieces) {
    double largestMm2 = 0.0;
    for (const Piece& piece : pieces.animals) {
        if (isLong(piece)) largestMm2 = std::max(largestMm2, piece.areaMm2);
    }
    std::erase_if(pieces.animals, [largestMm2](const Piece& piece) {
        return !isLong(piece) && piece.areaMm2 < kDebrisShare * largestMm2;
    });
}

}  // namespace

double edgeThreshold(const cv::Mat1f& ratio, const PlateRegion& region, double noise) {
    std::array<double, kLevels> steepness{};
    std::array<double, kLevels> count{};
    for (int y = 1; y + 1 < ratio.rows; y += 2) {
        const auto* row = ratio.ptr<float>(y);
        const auto* above = ratio.ptr<float>(y - 1);
        const auto* below = ratio.ptr<float>(y + 1);
        const auto* plate = region.plate.ptr<unsigned char>(y);
        const auto* rim = region.rim.ptr<unsigned char>(y);
        const auto* marks = region.marks.ptr<unsigned char>(y);
        for (int x = 1; x + 1 < ratio.cols; ++x) {
            if (plate[x] == 0 || rim[x] != 0 || marks[x] != 0 || row[x] >= 1.0F || row[x] <= 0.0F) continue;
            const float dx = row[x + 1] - row[x - 1];
            const float dy = below[x] - above[x];
            const auto level = static_cast<std::size_t>(row[x] * kLevels);
            steepness[level] += static_cast<double>(std::sqrt(dx * dx + dy * dy));
            count[level] += 1.0;
        }
    }
    double best = 0.0;
    double threshold = 0.0;
    for (std::size_t k = 8; k + 3 < kLevels; ++k) {
        double sum = 0.0;
        double n = 0.0;
        for (std::size_t i = k - 3; i <= k + 3 && i < kLevels; ++i) sum += steepness[i], n += count[i];
        if (n < 20.0) continue;
        // The sum of gradients at a level is its contour's length, their mean its steepness: long steep contours are
        // bodies, short steep ones are eyes.
        const double steep = sum / n;
        if (steep < std::max(0.06, 4.0 * noise)) continue;
        if (const double rank = std::pow(steep, 1.5) * std::sqrt(sum); rank > best)
            best = rank, threshold = (static_cast<double>(k) + 0.5) / kLevels;
    }
    return threshold;
}

Pieces findPieces(const cv::Mat1f& ratio, const PlateRegion& region, double threshold, double pxPerMm,
                  double smallestMm2) {
    Pieces pieces;
    pieces.threshold = threshold;
    cv::Mat1b dark;
    cv::compare(ratio, threshold, dark, cv::CMP_LT);
    dark &= region.plate;
    dark.setTo(0, region.marks);
    const Components components = componentsOf(dark);
    pieces.labels = components.labels;
    SmallPrint print;
    std::vector<cv::Rect> all;
    std::vector<Piece> large;
    for (const Component& component : components.found) {
        Piece piece;
        piece.label = static_cast<int>(&component - components.found.data()) + 1;
        piece.areaMm2 = component.areaPx / (pxPerMm * pxPerMm);
        piece.bounds = component.bounds;
        const bool small = piece.areaMm2 < 0.5 * smallestMm2;
        const bool letter = piece.areaMm2 < std::max(2.0 * smallestMm2, kLetterMm2) && extentMm(piece.bounds, pxPerMm) < kLetterMm;
        if (letter && region.rim((piece.bounds.tl() + piece.bounds.br()) / 2) != 0) print.rim.push_back(piece.bounds);
        if (!small) large.push_back(piece);
        if (piece.areaMm2 > 0.1) all.push_back(piece.bounds);
    }
    print.writing = cardWriting(region, all);
    for (Piece& piece : large) {
        piece.halfWidthMm = halfWidthPx(pieces.labels, piece) / pxPerMm;
        if (isPrint(region, pieces.labels, piece, print, pxPerMm)) continue;
        piece.atEdge = reachesEdge(region, pieces.labels, piece);
        pieces.animals.push_back(piece);
    }
    joinParted(ratio, threshold, pxPerMm, pieces);
    dropDebris(pieces);
    const double loose = threshold + kLooseShare * (1.0 - threshold);
    for (Piece& piece : pieces.animals) piece.reach = reachOf(ratio, pieces.labels, piece, loose, pxPerMm);
    std::sort(pieces.animals.begin(), pieces.animals.end(),
              [](const Piece& a, const Piece& b) { return a.bounds.x < b.bounds.x; });
    return pieces;
}

}  // namespace ringrule
