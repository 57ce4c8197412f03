// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/polyline_text.h"

#include <array>
#include <charconv>
#include <cmath>

#include <nlohmann/json.hpp>

#include "ringrule/error.h"

namespace ringrule {
namespace {

void appendHundredths(std::string& text, double value) {
    std::array<char, 40> digits{};
    char* const begin = digits.data();
    text.append(begin, std::to_chars(begin, begin + digits.size(), std::round(value * 100.0) / 100.0).ptr);
}

/// Walks the text of a polyline; whatever is not as it was written is an error.
class PolylineReader {
public:
    explicit PolylineReader(const std::string& text) : at_(text.data()), end_(text.data() + text.size()) {}

    /// Whether `c` comes next; it is then passed over.
    bool next(char c) {
        while (at_ != end_ && *at_ == ' ') ++at_;
        if (at_ == end_ || *at_ != c) return false;
        ++at_;
        return true;
    }
    void expect(char c) {
        if (!next(c)) fail();
    }
    double number() {
        while (at_ != end_ && *at_ == ' ') ++at_;
        double value = 0.0;
        const auto read = std::from_chars(at_, end_, value);
        if (read.ec != std::errc()) fail();
        at_ = read.ptr;
        return value;
    }

private:
    [[noreturn]] static void fail() {
        throw Error(ErrorKind::BadStore, "the collection holds an outline that cannot be read");
    }

    const char* at_;
    const char* end_;
};

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

// Read by hand: a history reads thousands of outlines, and a JSON tree of each costs ten times as much.
std::vector<PixelPoint> polylineOfText(const std::string& text) {
    PolylineReader reader(text);
    std::vector<PixelPoint> points;
    reader.expect('[');
    while (!reader.next(']')) {
        if (!points.empty()) reader.expect(',');
        reader.expect('[');
        const double x = reader.number();
        reader.expect(',');
        const double y = reader.number();
        reader.expect(']');
        points.push_back({x, y});
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
    ids.reserve(remarks.size());
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
