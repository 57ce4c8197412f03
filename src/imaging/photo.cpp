// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/imaging/photo.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <fstream>
#include <span>
#include <system_error>

#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "imaging/exif.h"
#include "imaging/jpeg.h"
#include "imaging/png.h"
#include "ringrule/error.h"
#include "ringrule/imaging/content_hash.h"
#include "ringrule/imaging/upright.h"

namespace ringrule {
namespace {

using Bytes = std::span<const unsigned char>;

constexpr const char* kCutShort = "the photo is cut short: copy it again from the card";
constexpr const char* kDamaged = "the photo is damaged and cannot be decoded: copy it again from the card";

enum class Format { Unknown, Jpeg, Png, Tiff };

// What the file says before its pixels are decoded.
struct Layout {
    Format format = Format::Unknown;
    bool whole = false;
    std::int64_t widthPx = 0;
    std::int64_t heightPx = 0;
    Exif exif;
};

[[noreturn]] void refuse(const std::filesystem::path& path, const std::string& message) {
    throw Error(ErrorKind::BadPhoto, message, path.string());
}

std::int64_t checkedSize(const std::filesystem::path& path, const PhotoLimits& limits) {
    std::error_code error;
    const auto status = std::filesystem::status(path, error);
    if (!std::filesystem::exists(status)) refuse(path, "there is no such photo: check its name");
    if (std::filesystem::is_directory(status)) refuse(path, "this is a folder, not a photo: name the photos in it");
    if (!std::filesystem::is_regular_file(status)) refuse(path, "this is not a file: name a photo");
    const auto size = static_cast<std::int64_t>(std::filesystem::file_size(path, error));
    if (error) refuse(path, "the photo cannot be opened: check that you may read it");
    if (size == 0) refuse(path, "the photo is empty: copy it again from the card");
    if (size > limits.maxFileBytes)
        refuse(path, "the file is larger than " + std::to_string(limits.maxFileBytes / 1'048'576) +
                         " MB: save the photo as JPEG");
    return size;
}

std::vector<unsigned char> readBytes(const std::filesystem::path& path, const PhotoLimits& limits) {
    const std::int64_t size = checkedSize(path, limits);
    std::ifstream file(path, std::ios::binary);
    if (!file) refuse(path, "the photo cannot be opened: check that you may read it");
    std::vector<unsigned char> bytes(static_cast<std::size_t>(size));
    file.read(reinterpret_cast<char*>(bytes.data()), static_cast<std::streamsize>(size));
    if (file.gcount() != size) refuse(path, "the photo cannot be read to its end: copy it again from the card");
    return bytes;
}

Format formatOf(Bytes bytes) {
    const auto startsWith = [bytes](std::initializer_list<unsigned char> magic) {
        return bytes.size() > magic.size() && std::equal(magic.begin(), magic.end(), bytes.begin());
    };
    if (startsWith({0xFF, 0xD8, 0xFF})) return Format::Jpeg;
    if (startsWith({0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'})) return Format::Png;
    if (startsWith({'I', 'I', 42, 0}) || startsWith({'M', 'M', 0, 42})) return Format::Tiff;
    return Format::Unknown;
}

Layout layoutOf(Bytes bytes) {
    Layout layout;
    layout.format = formatOf(bytes);
    if (layout.format == Format::Jpeg) {
        const JpegLayout jpeg = readJpegLayout(bytes);
        layout = {Format::Jpeg, jpeg.state != JpegState::CutShort, jpeg.widthPx, jpeg.heightPx, readExif(jpeg.exif)};
    } else if (layout.format == Format::Png) {
        const PngLayout png = readPngLayout(bytes);
        layout = {Format::Png, png.whole, png.widthPx, png.heightPx, readExif(png.exif)};
    } else if (layout.format == Format::Tiff) {
        const Exif exif = readExif(bytes);
        layout = {Format::Tiff, exif.widthPx > 0, exif.widthPx, exif.heightPx, exif};
    }
    return layout;
}

void checkLayout(const Layout& layout, const std::filesystem::path& path, const PhotoLimits& limits) {
    if (layout.format == Format::Unknown) refuse(path, "this is not a JPEG, PNG or TIFF photo: export it as JPEG");
    if (!layout.whole) refuse(path, kCutShort);
    if (layout.widthPx <= 0 || layout.heightPx <= 0) refuse(path, kDamaged);
    if (layout.widthPx * layout.heightPx > limits.maxPixels)
        refuse(path, "the photo has more than " + std::to_string(limits.maxPixels / 1'000'000) +
                         " million pixels: save it smaller");
    if (std::min(layout.widthPx, layout.heightPx) < limits.minSidePx)
        refuse(path, "the photo is less than " + std::to_string(limits.minSidePx) +
                         " pixels wide or high: use the original, not a thumbnail");
}

// OpenCV's decode without its own turning by EXIF (but TIFF is always turned); empty when it fails in whatever way.
cv::Mat decode(Bytes bytes, int flags) {
    try {
        return cv::imdecode(
            cv::Mat(1, static_cast<int>(bytes.size()), CV_8UC1, const_cast<unsigned char*>(bytes.data())),
            flags | cv::IMREAD_IGNORE_ORIENTATION);
    } catch (const cv::Exception&) {
        return {};
    }
}

cv::Mat decodeGrey(Bytes bytes, Format format, const std::filesystem::path& path) {
    if (format != Format::Jpeg) {
        cv::Mat grey = decode(bytes, cv::IMREAD_GRAYSCALE);
        if (grey.empty()) refuse(path, kDamaged);
        return grey;
    }
    JpegPixels pixels = decodeJpegGrey(bytes);
    if (pixels.state == JpegState::CutShort) refuse(path, kCutShort);
    if (pixels.state == JpegState::Damaged) refuse(path, kDamaged);
    return pixels.grey;
}

// Whole blocks only; plate and outline both begin their search on smaller pictures than the photo.
cv::Mat halved(const cv::Mat& grey) {
    cv::Mat half;
    const cv::Size size(grey.cols / 2, grey.rows / 2);
    cv::resize(grey(cv::Rect({0, 0}, size * 2)), half, size, 0.0, 0.0, cv::INTER_AREA);
    return half;
}

cv::Mat upright(const cv::Mat& decoded, Format format, int exifOrientation) {
    return format == Format::Tiff ? decoded : turnedUpright(decoded, exifOrientation);
}

}  // namespace

Photo loadPhoto(const std::filesystem::path& path, const PhotoLimits& limits) {
    Photo photo;
    photo.path = path;
    photo.encoded = readBytes(path, limits);
    const Layout layout = layoutOf(photo.encoded);
    checkLayout(layout, path, limits);
    photo.contentHash = sha256Hex(photo.encoded);
    photo.takenAt = layout.exif.takenAt;
    photo.cameraMake = layout.exif.make;
    photo.cameraModel = layout.exif.model;
    photo.focalLengthMm = layout.exif.focalLengthMm;
    photo.exifOrientation = layout.exif.orientation;
    photo.grey = upright(decodeGrey(photo.encoded, layout.format, path), layout.format, photo.exifOrientation);
    photo.halfGrey = halved(photo.grey);
    return photo;
}

cv::Mat decodeColour(const Photo& photo) {
    const cv::Mat colour = decode(photo.encoded, cv::IMREAD_COLOR);
    if (colour.empty()) refuse(photo.path, kDamaged);
    return upright(colour, formatOf(photo.encoded), photo.exifOrientation);
}

Chroma decodeChroma(const Photo& photo) {
    const Format format = formatOf(photo.encoded);
    if (format == Format::Jpeg) {
        if (const JpegChroma stored = decodeJpegChroma(photo.encoded); !stored.cb.empty())
            return {upright(stored.cb, format, photo.exifOrientation),
                    upright(stored.cr, format, photo.exifOrientation)};
    }
    cv::Mat apart;
    cv::cvtColor(decodeColour(photo), apart, cv::COLOR_BGR2YCrCb);
    Chroma chroma;
    cv::extractChannel(apart, chroma.cr, 1);
    cv::extractChannel(apart, chroma.cb, 2);
    return chroma;
}

}  // namespace ringrule
