// SPDX-License-Identifier: GPL-3.0-or-later
#include "midline/medial_axis.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

#include <opencv2/imgproc.hpp>

namespace ringrule {
namespace {

constexpr double kCells = 14000.0;  ///< about so many cells inside the body: about a millisecond

/// The body on a grid of square cells; a cell is inside when its centre is, so that no gap narrower than a cell is
/// painted over and no width is added.
struct Grid {
    cv::Mat1b inside;
    PixelPoint originPx;
    double cellPx = 1.0;

    [[nodiscard]] PixelPoint photoFromCell(int x, int y) const {
        return {originPx.x + cellPx * x, originPx.y + cellPx * y};
    }
};

void addCrossings(const std::vector<PixelPoint>& polygon, const Grid& grid,
                  std::vector<std::vector<double>>& crossings) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        PixelPoint a = polygon[i];
        PixelPoint b = polygon[(i + 1) % polygon.size()];
        if (a.y > b.y) std::swap(a, b);
        const int from = std::max(0, static_cast<int>(std::ceil((a.y - grid.originPx.y) / grid.cellPx)));
        const int to =
            std::min(grid.inside.rows - 1, static_cast<int>(std::ceil((b.y - grid.originPx.y) / grid.cellPx)) - 1);
        for (int row = from; row <= to; ++row) {
            const double y = grid.originPx.y + grid.cellPx * row;
            const double x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
            crossings[static_cast<std::size_t>(row)].push_back((x - grid.originPx.x) / grid.cellPx);
        }
    }
}

Grid gridOf(const Outline& outline) {
    double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
    for (const PixelPoint at : outline.boundaryPx) {
        left = std::min(left, at.x), right = std::max(right, at.x);
        top = std::min(top, at.y), bottom = std::max(bottom, at.y);
    }
    Grid grid;
    grid.cellPx = std::max(1.0, std::sqrt(outline.areaPx2 / kCells));
    grid.originPx = {left - 2.0 * grid.cellPx, top - 2.0 * grid.cellPx};
    const auto cells = [&](double length) { return static_cast<int>(std::ceil(length / grid.cellPx)) + 5; };
    grid.inside = cv::Mat1b(cells(bottom - top), cells(right - left), static_cast<unsigned char>(0));
    std::vector<std::vector<double>> crossings(static_cast<std::size_t>(grid.inside.rows));
    addCrossings(outline.boundaryPx, grid, crossings);
    for (const auto& hole : outline.holesPx) addCrossings(hole, grid, crossings);
    for (int row = 0; row < grid.inside.rows; ++row) {
        auto& line = crossings[static_cast<std::size_t>(row)];
        std::sort(line.begin(), line.end());
        for (std::size_t k = 0; k + 1 < line.size(); k += 2) {
            const int from = std::max(0, static_cast<int>(std::ceil(line[k])));
            const int to = std::min(grid.inside.cols - 1, static_cast<int>(std::floor(line[k + 1])));
            for (int x = from; x <= to; ++x) grid.inside(row, x) = 255;
        }
    }
    return grid;
}

/// Chamfer lengths of a straight and a diagonal step (Borgefors 1986): 7/5 is √2 to one per cent.
constexpr std::uint32_t kStraight = 5;
constexpr std::uint32_t kDiagonal = 7;
constexpr std::uint32_t kDearest = 1500;  ///< greatest price of a cell
constexpr std::uint32_t kUnreached = 0xFFFFFFFFU;

struct Sweep {
    std::vector<std::uint32_t> cost;
    std::vector<std::int32_t> parent;
    std::int32_t last = -1;  ///< the cell reached last: the farthest
};

/// Cells waiting to be reached, in a ring of buckets by cost; each bucket is a chain through one common store.
class Buckets {
public:
    /// `count` is a power of two, greater than the dearest step.
    Buckets(std::uint32_t count, std::size_t entries) : heads_(count, -1), mask_(count - 1) {
        entries_.reserve(entries);
    }

    void add(std::uint32_t cost, std::int32_t cell) {
        std::int32_t& head = heads_[cost & mask_];
        entries_.push_back({cell, head});
        head = static_cast<std::int32_t>(entries_.size() - 1);
        ++waiting_;
    }
    /// A cell of this cost, or −1.
    std::int32_t take(std::uint32_t cost) {
        std::int32_t& head = heads_[cost & mask_];
        if (head < 0) return -1;
        const Entry entry = entries_[static_cast<std::size_t>(head)];
        head = entry.next;
        --waiting_;
        return entry.cell;
    }
    [[nodiscard]] bool empty() const { return waiting_ == 0; }

private:
    struct Entry {
        std::int32_t cell, next;
    };
    std::vector<std::int32_t> heads_;
    std::uint32_t mask_;
    std::vector<Entry> entries_;
    std::size_t waiting_ = 0;
};

/// Cheapest ways from some cells to all others over eight neighbours, with whole costs kept in buckets (Dial 1969).
Sweep sweepFrom(const cv::Mat1b& inside, const std::vector<std::uint16_t>& price,
                const std::vector<std::int32_t>& starts) {
    const int width = inside.cols;
    const std::array<std::int32_t, 8> step{1, -1, width, -width, width + 1, width - 1, -width + 1, -width - 1};
    Sweep sweep;
    sweep.cost.assign(inside.total(), kUnreached);
    sweep.parent.assign(inside.total(), -1);
    Buckets buckets(price.empty() ? 16 : 16384, static_cast<std::size_t>(2.0 * kCells));
    for (const std::int32_t start : starts) {
        sweep.cost[static_cast<std::size_t>(start)] = 0;
        buckets.add(0, start);
    }
    for (std::uint32_t now = 0; !buckets.empty(); ++now) {
        for (std::int32_t cell = buckets.take(now); cell >= 0; cell = buckets.take(now)) {
            if (sweep.cost[static_cast<std::size_t>(cell)] != now) continue;
            sweep.last = cell;
            for (std::size_t d = 0; d < 8; ++d) {
                const std::int32_t next = cell + step[d];
                const auto at = static_cast<std::size_t>(next);
                if (inside.data[next] == 0) continue;
                const std::uint32_t unit = d < 4 ? kStraight : kDiagonal;
                const std::uint32_t total = now + unit * (price.empty() ? 1U : price[at]);
                if (total >= sweep.cost[at]) continue;
                sweep.cost[at] = total;
                sweep.parent[at] = cell;
                buckets.add(total, next);
            }
        }
    }
    return sweep;
}

/// What a cell costs on the way through the middle: little where the border is far.
std::vector<std::uint16_t> pricesOf(const cv::Mat1f& border, double widest) {
    std::vector<std::uint16_t> prices(border.total());
    // In a tail two cells deep the middle must still be cheaper than the rim, and in a trunk too.
    const auto scale = static_cast<float>(3.0 * widest * widest);
    const auto* distance = border.ptr<float>();
    for (std::size_t i = 0; i < prices.size(); ++i) {
        if (distance[i] <= 0.0F) continue;
        const float price = 1.0F + scale / (distance[i] * distance[i]);
        prices[i] = static_cast<std::uint16_t>(std::min(price, static_cast<float>(kDearest)));
    }
    return prices;
}

}  // namespace

MedialPath medialPath(const Outline& outline) {
    MedialPath path;
    if (outline.boundaryPx.size() < 12 || outline.areaPx2 <= 0.0) return path;
    const Grid grid = gridOf(outline);
    cv::Mat1f border;
    cv::distanceTransform(grid.inside, border, cv::DIST_L2, 5);
    double widest = 0.0;
    cv::Point middle;
    cv::minMaxLoc(border, nullptr, &widest, nullptr, &middle);
    if (widest <= 0.0) return path;
    const int width = grid.inside.cols;
    const std::int32_t first = sweepFrom(grid.inside, {}, {middle.y * width + middle.x}).last;
    const std::int32_t second = sweepFrom(grid.inside, {}, {first}).last;
    const Sweep central = sweepFrom(grid.inside, pricesOf(border, widest), {first});
    std::vector<std::int32_t> onPath;
    for (std::int32_t cell = second; cell >= 0; cell = central.parent[static_cast<std::size_t>(cell)]) {
        onPath.push_back(cell);
        path.pathPx.push_back(grid.photoFromCell(cell % width, cell / width));
        path.halfWidthPx.push_back(static_cast<double>(border.ptr<float>()[cell]) * grid.cellPx);
    }
    path.greatestHalfWidthPx = widest * grid.cellPx;
    const Sweep aside = sweepFrom(grid.inside, {}, onPath);
    path.farthestAsidePx = aside.cost[static_cast<std::size_t>(aside.last)] * grid.cellPx / kStraight;
    return path;
}

}  // namespace ringrule
