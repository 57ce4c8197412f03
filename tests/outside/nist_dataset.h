// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <fstream>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

/// One NIST StRD nonlinear regression file: data, starts and certified values, read from the file itself.
struct NistDataset {
    std::vector<double> x;
    std::vector<double> y;
    std::vector<double> start1;
    std::vector<double> start2;
    std::vector<double> certified;
    std::vector<double> certifiedSd;
    double residualSumOfSquares = 0.0;
    double residualSd = 0.0;
};

inline NistDataset readNist(const std::string& path) {
    NistDataset set;
    std::ifstream file(path);
    const std::regex parameter(R"(^\s*b\d+\s*=\s*(\S+)\s+(\S+)\s+(\S+)\s+(\S+)\s*$)");
    std::string line;
    bool inData = false;
    while (std::getline(file, line)) {
        if (!line.empty() && line.back() == '\r') {
            line.pop_back();
        }
        std::smatch match;
        if (std::regex_match(line, match, parameter)) {
            set.start1.push_back(std::stod(match[1]));
            set.start2.push_back(std::stod(match[2]));
            set.certified.push_back(std::stod(match[3]));
            set.certifiedSd.push_back(std::stod(match[4]));
        } else if (line.rfind("Residual Sum of Squares:", 0) == 0) {
            set.residualSumOfSquares = std::stod(line.substr(24));
        } else if (line.rfind("Residual Standard Deviation:", 0) == 0) {
            set.residualSd = std::stod(line.substr(28));
        } else if (std::regex_match(line, std::regex(R"(^Data:\s+y\s+x\s*$)"))) {
            inData = true;
        } else if (inData) {
            std::istringstream numbers(line);
            double y = 0.0;
            double x = 0.0;
            if (numbers >> y >> x) {
                set.y.push_back(y);
                set.x.push_back(x);
            }
        }
    }
    return set;
}
