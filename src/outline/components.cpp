// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/components.h"

#include <algorithm>
#include <cstddef>
#include <cstring>
#include <utility>

namespace ringrule {
namespace {

struct Run {
    int row, from, to;  ///< columns from … to − 1
    int parent;         ///< a run of the same component with a lower index, or itself
};

/// Appends the runs of one row.
void addRuns(const cv::Mat1b& mask, int row, std::vector<Run>& runs) {
    const auto* const line = mask.ptr<unsigned char>(row);
    const auto* const end = line + mask.cols;
    const auto next = [end](const unsigned char* at, int value) {
        const void* found = at < end ? std::memchr(at, value, static_cast<std::size_t>(end - at)) : nullptr;
        return found == nullptr ? end : static_cast<const unsigned char*>(found);
    };
    for (const auto* from = next(line, 255); from != end;) {
        const auto* to = next(from, 0);
        runs.push_back({row, static_cast<int>(from - line), static_cast<int>(to - line), static_cast<int>(runs.size())});
        from = next(to, 255);
    }
}

int rootOf(std::vector<Run>& runs, int run) {
    const auto parentOf = [&runs](int i) -> int& { return runs[static_cast<std::size_t>(i)].parent; };
    while (parentOf(run) != run) run = parentOf(run) = parentOf(parentOf(run));
    return run;
}

/// Joins the runs of a row, from `row` on, to those of the row above, from `above` on, that they touch.
void join(std::vector<Run>& runs, std::size_t above, std::size_t row) {
    const std::size_t endAbove = row;
    for (std::size_t i = row; i < runs.size(); ++i) {
        while (above < endAbove && runs[above].to < runs[i].from) ++above;
        for (std::size_t k = above; k < endAbove && runs[k].from <= runs[i].to; ++k) {
            int a = rootOf(runs, static_cast<int>(k));
            int b = rootOf(runs, static_cast<int>(i));
            if (a > b) std::swap(a, b);
            runs[static_cast<std::size_t>(b)].parent = a;
        }
    }
}

}  // namespace

Components componentsOf(const cv::Mat1b& mask) {
    std::vector<Run> runs;
    std::size_t above = 0;
    for (int row = 0; row < mask.rows; ++row) {
        const std::size_t first = runs.size();
        addRuns(mask, row, runs);
        const bool touchesAbove = above < first && runs[first - 1].row == row - 1;
        if (touchesAbove) join(runs, above, first);
        above = first;
    }
    Components components;
    components.labels = cv::Mat1i(mask.size(), 0);
    std::vector<std::size_t> componentOfRun(runs.size());
    for (std::size_t i = 0; i < runs.size(); ++i) {
        const auto root = static_cast<std::size_t>(rootOf(runs, static_cast<int>(i)));
        if (root == i) {
            componentOfRun[i] = components.found.size();
            components.found.push_back({{runs[i].from, runs[i].row, runs[i].to - runs[i].from, 1}, 0});
        }
        const std::size_t k = componentOfRun[i] = componentOfRun[root];
        Component& component = components.found[k];
        component.bounds |= cv::Rect(runs[i].from, runs[i].row, runs[i].to - runs[i].from, 1);
        component.areaPx += runs[i].to - runs[i].from;
        auto* label = components.labels.ptr<int>(runs[i].row);
        std::fill(label + runs[i].from, label + runs[i].to, static_cast<int>(k) + 1);
    }
    return components;
}

}  // namespace ringrule
