// SPDX-License-Identifier: GPL-3.0-or-later
#include "imaging/exif.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstddef>
#include <exception>
#include <mutex>

#include <exiv2/exiv2.hpp>

namespace ringrule {
namespace {

std::string text(const Exiv2::ExifData& data, const char* key) {
    const auto found = data.findKey(Exiv2::ExifKey(key));
    if (found == data.end()) return {};
    std::string value = found->toString();
    while (!value.empty() && (value.back() == '\0' || value.back() == ' ')) value.pop_back();
    return value;
}

// A camera's name as EXIF's ASCII type allows it, in seven bits: what goes into JSON must be text.
std::string sevenBit(std::string value) {
    for (char& c : value) {
        if (c < ' ' || c > '~') c = '?';
    }
    return value;
}

std::int64_t number(const Exiv2::ExifData& data, const char* key) {
    const auto found = data.findKey(Exiv2::ExifKey(key));
    return found == data.end() || found->count() == 0 ? 0 : std::int64_t{found->toLong()};
}

// A length in millimetres; nothing for the 0/0 or 0 of a lens without a chip.
std::optional<double> positive(const Exiv2::ExifData& data, const char* key) {
    const auto found = data.findKey(Exiv2::ExifKey(key));
    if (found == data.end() || found->count() == 0) return std::nullopt;
    const Exiv2::Rational ratio = found->toRational();
    if (ratio.first <= 0 || ratio.second <= 0) return std::nullopt;
    return static_cast<double>(ratio.first) / ratio.second;
}

// "YYYY:MM:DD HH:MM:SS" of EXIF as ISO 8601; nothing for the zeros or blanks of a clock never set.
std::optional<std::string> isoTime(std::string value) {
    constexpr std::string_view kShape = "dddd:dd:dd dd:dd:dd";
    if (value.size() != kShape.size()) return std::nullopt;
    for (std::size_t i = 0; i < kShape.size(); ++i) {
        const bool digit = std::isdigit(static_cast<unsigned char>(value[i])) != 0;
        if (kShape[i] == 'd' ? !digit : value[i] != kShape[i]) return std::nullopt;
    }
    const auto pair = [&value](std::size_t at) { return (value[at] - '0') * 10 + (value[at + 1] - '0'); };
    const int month = pair(5), day = pair(8), hour = pair(11), minute = pair(14), second = pair(17);
    if (month < 1 || month > 12 || day < 1 || day > 31 || hour > 23 || minute > 59 || second > 60) return std::nullopt;
    value[4] = value[7] = '-';
    value[10] = 'T';
    return value;
}

Exif entries(const Exiv2::ExifData& data) {
    Exif exif;
    exif.takenAt = isoTime(text(data, "Exif.Photo.DateTimeOriginal"));
    exif.make = sevenBit(text(data, "Exif.Image.Make"));
    exif.model = sevenBit(text(data, "Exif.Image.Model"));
    exif.focalLengthMm = positive(data, "Exif.Photo.FocalLength");
    const std::int64_t orientation = number(data, "Exif.Image.Orientation");
    if (orientation >= 1 && orientation <= 8) exif.orientation = static_cast<int>(orientation);
    exif.widthPx = number(data, "Exif.Image.ImageWidth");
    exif.heightPx = number(data, "Exif.Image.ImageLength");
    return exif;
}

}  // namespace

Exif readExif(std::span<const unsigned char> tiff) {
    static std::once_flag quiet;
    std::call_once(quiet, [] { Exiv2::LogMsg::setLevel(Exiv2::LogMsg::mute); });
    try {
        Exiv2::ExifData data;
        Exiv2::ExifParser::decode(data, tiff.data(), static_cast<std::uint32_t>(tiff.size()));
        return entries(data);
    } catch (const std::exception&) {
        return {};  // a damaged block costs the time of exposure, not the photo
    }
}

}  // namespace ringrule
