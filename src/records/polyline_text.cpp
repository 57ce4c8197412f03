// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/polyline_text.h"

#include <charconv>
#include <cmath>

#include <nlohmann/json.hpp>

#include "ringrule/error.h"

namespace ringrule {
namespace {

void appendHundredths(std::string& text, double value) {
    char digits[40];
    const auto end = std::to_chars(std::begin(digits), std::end(digits), std::round(value * 100.0) / 100.0).ptr;
    text.append(digits, end);
}

nlohmann::json parsed(const std::string& text) {
    auto json = nlohmann::json::parse(text, nullptr, false);
    if (!json.is_array()) throw Error(ErrorKind::BadStore, "the collection holds a list that cannot be read");
    return json;
}

}  // namespace

std::string textOfPolyline(const std::vector<PixelPoint>& points) {
    std::string text = "[";
    for (const PixelPoint& point : points) {
        text += text.size() == 1 ? "[" : ",[";
        appendHundredths(text, point.x);
        text += ',';
        appendHundredths(text, point.y);
        text += ']';
    }
    return text + "]";
}

std::vector<PixelPoint> polylineOfText(const std::string& text) {
    std::vector<PixelPoint> points;
    for (const auto& point : parsed(text)) {
        if (!point.is_array() || point.size() != 2 || !point[0].is_number() || !point[1].is_number()) {
            throw Error(ErrorKind::BadStore, "the collection holds an outline that cannot be read");
        }
        points.push_back({point[0].get<double>(), point[1].get<double>()});
    }
    return points;
}

std::string textOfWords(const std::vector<std::string>& words) {
    return nlohmann::json(words).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

std::vector<std::string> wordsOfText(const std::string& text) {
    std::vector<std::string> words;
    for (const auto& word : parsed(text)) {
        if (word.is_string()) words.push_back(word.get<std::string>());
    }
    return words;
}

std::string textOfRemarks(const std::vector<Remark>& remarks) {
    std::vector<std::string> ids;
    for (const Remark remark : remarks) ids.emplace_back(remarkId(remark));
    return textOfWords(ids);
}

std::vector<Remark> remarksOfText(const std::string& text) {
    std::vector<Remark> remarks;
    for (const std::string& id : wordsOfText(text)) {
        if (const auto remark = remarkFromId(id)) remarks.push_back(*remark);
    }
    return remarks;
}

}  // namespace ringrule
