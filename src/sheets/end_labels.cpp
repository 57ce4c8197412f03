// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/end_labels.h"

#include <algorithm>
#include <numeric>

namespace ringrule {
namespace {

/// Neighbouring labels that touch and move as one.
struct Cluster {
    double sum = 0.0;  ///< of the wanted places, each less its offset in the cluster
    int count = 0;
    [[nodiscard]] double start(double gap, double low, double high) const {
        return std::clamp(sum / count, low, std::max(low, high - (count - 1) * gap));
    }
};

}  // namespace

std::vector<double> spreadLabels(const std::vector<double>& wanted, double gap, double low, double high) {
    const std::size_t n = wanted.size();
    if (n == 0) return {};
    std::vector<std::size_t> order(n);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return wanted[a] < wanted[b]; });
    if (n > 1 && static_cast<double>(n - 1) * gap > high - low) gap = (high - low) / static_cast<double>(n - 1);

    std::vector<Cluster> clusters;
    for (const std::size_t index : order) {
        clusters.push_back({wanted[index], 1});
        while (clusters.size() > 1) {
            const Cluster& above = clusters[clusters.size() - 2];
            const Cluster& below = clusters.back();
            if (above.start(gap, low, high) + above.count * gap <= below.start(gap, low, high)) break;
            const Cluster joined{above.sum + below.sum - below.count * above.count * gap, above.count + below.count};
            clusters.pop_back();
            clusters.back() = joined;
        }
    }
    std::vector<double> places(n);
    std::size_t next = 0;
    for (const Cluster& cluster : clusters)
        for (int k = 0; k < cluster.count; ++k) places[order[next++]] = cluster.start(gap, low, high) + k * gap;
    return places;
}

}  // namespace ringrule
