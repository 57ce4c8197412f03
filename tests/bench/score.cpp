// SPDX-License-Identifier: GPL-3.0-or-later
#include "score.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace bench {
namespace {

constexpr double kZ = 1.959963984540054;

double quantile(std::vector<double> values, double share) {
    if (values.empty()) return std::nan("");
    std::sort(values.begin(), values.end());
    const double place = share * static_cast<double>(values.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, values.size() - 1);
    return values[below] + (place - std::floor(place)) * (values[above] - values[below]);
}

template <class Value>
double meanOf(const std::vector<Answer>& answers, Value value) {
    double sum = 0.0;
    for (const Answer& answer : answers) sum += value(answer);
    return sum / static_cast<double>(answers.size());
}

std::string countsOf(const Score& score) {
    return std::to_string(score.answers.size()) + " | " + std::to_string(score.refused);
}

}  // namespace

double Score::meanAbs() const {
    return meanOf(answers, [](const Answer& a) { return std::abs(a.error); });
}

double Score::percentile95() const {
    std::vector<double> sizes;
    for (const Answer& answer : answers) sizes.push_back(std::abs(answer.error));
    return quantile(sizes, 0.95);
}

double Score::bias() const {
    return meanOf(answers, [](const Answer& a) { return a.error; });
}

double Score::covered() const {
    return meanOf(answers, [](const Answer& a) { return std::abs(a.error) <= a.halfWidth ? 1.0 : 0.0; });
}

double Score::padding() const {
    std::vector<double> widths;
    for (const Answer& answer : answers) widths.push_back(answer.halfWidth);
    const double rms = std::sqrt(meanOf(answers, [](const Answer& a) { return a.error * a.error; }));
    return quantile(widths, 0.5) / (kZ * rms);
}

double Score::paddingOfSure() const {
    Score sure = *this;
    std::erase_if(sure.answers, [](const Answer& a) { return a.inDoubt; });
    return sure.answers.empty() ? std::nan("") : sure.padding();
}

ShareInterval wilson(double share, std::size_t count) {
    const auto n = static_cast<double>(count);
    if (count == 0) return {};
    const double centre = (share + kZ * kZ / (2.0 * n)) / (1.0 + kZ * kZ / n);
    const double half = kZ * std::sqrt(share * (1.0 - share) / n + kZ * kZ / (4.0 * n * n)) / (1.0 + kZ * kZ / n);
    return {centre - half, centre + half};
}

std::string errorHead(const std::string& unit) {
    return "| measure | scenes | refused | mean abs. error, " + unit +
           " | 95th percentile | bias |\n|---|---|---|---|---|---|";
}

std::string errorRow(const std::string& label, const Score& score) {
    const std::string start = "| " + label + " | " + countsOf(score) + " | ";
    if (score.answers.empty()) return start + "– | – | – |";
    char row[128];
    std::snprintf(row, sizeof row, "%.2f | %.2f | %+.2f |", score.meanAbs(), score.percentile95(), score.bias());
    return start + row;
}

std::string coverageHead() {
    return "| measure | scenes | refused | mean abs. error | 95th percentile | bias | covered (Wilson 95 %) | "
           "u95 / (1.96 RMSE) | of those not in doubt |\n|---|---|---|---|---|---|---|---|---|";
}

std::string coverageRow(const std::string& label, const Score& score) {
    const std::string start = "| " + label + " | " + countsOf(score) + " | ";
    if (score.answers.empty()) return start + "– | – | – | – | – | – |";
    const double share = score.covered();
    const ShareInterval interval = wilson(share, score.answers.size());
    char row[192];
    std::snprintf(row, sizeof row, "%.2f | %.2f | %+.2f | %.1f %% (%.1f–%.1f) | %.2f | %.2f |", score.meanAbs(),
                  score.percentile95(), score.bias(), 100.0 * share, 100.0 * interval.low, 100.0 * interval.high,
                  score.padding(), score.paddingOfSure());
    return start + row;
}

}  // namespace bench
