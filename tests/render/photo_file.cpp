// SPDX-License-Identifier: GPL-3.0-or-later
#include "photo_file.h"

#include <algorithm>
#include <fstream>
#include <opencv2/imgcodecs.hpp>
#include <stdexcept>
#include <vector>

namespace render {

namespace {

using Bytes = std::vector<unsigned char>;

void put16(Bytes& bytes, std::size_t value) {
    bytes.push_back(static_cast<unsigned char>(value & 0xFFU));
    bytes.push_back(static_cast<unsigned char>((value >> 8U) & 0xFFU));
}

void put32(Bytes& bytes, std::size_t value) {
    put16(bytes, value & 0xFFFFU);
    put16(bytes, (value >> 16U) & 0xFFFFU);
}

// A TIFF directory at a known offset whose long values follow it.
class Directory {
public:
    Directory(std::size_t offset, std::size_t entries) : count_(entries), data_(offset + 2 + 12 * entries + 4) {}

    void addShort(std::size_t tag, std::size_t value) { addEntry(tag, 3, 1, value); }
    void addLong(std::size_t tag, std::size_t value) { addEntry(tag, 4, 1, value); }
    void addText(std::size_t tag, const std::string& text) {
        addEntry(tag, 2, text.size() + 1, data_ + tail_.size());
        tail_.insert(tail_.end(), text.begin(), text.end());
        tail_.push_back(0);
        if (tail_.size() % 2 == 1) {
            tail_.push_back(0);
        }
    }
    std::size_t end() const { return data_ + tail_.size(); }
    void appendTo(Bytes& bytes) const {
        put16(bytes, count_);
        bytes.insert(bytes.end(), head_.begin(), head_.end());
        put32(bytes, 0);
        bytes.insert(bytes.end(), tail_.begin(), tail_.end());
    }

private:
    void addEntry(std::size_t tag, std::size_t type, std::size_t count, std::size_t value) {
        put16(head_, tag);
        put16(head_, type);
        put32(head_, count);
        put32(head_, value);
    }

    std::size_t count_, data_;
    Bytes head_, tail_;
};

// EXIF writes dates as 2031:01:06 08:40:05.
std::string exifDate(std::string iso) {
    std::replace(iso.begin(), iso.begin() + std::min<std::ptrdiff_t>(10, static_cast<std::ptrdiff_t>(iso.size())), '-',
                 ':');
    std::replace(iso.begin(), iso.end(), 'T', ' ');
    return iso;
}

Bytes exifSegment(const PhotoNotes& notes) {
    const bool dated = !notes.takenAt.empty();
    Bytes tiff{'I', 'I', 42, 0, 8, 0, 0, 0};
    Directory main(8, dated ? 4 : 3);
    main.addText(0x010F, "Invented");
    main.addText(0x0110, "bench camera");
    main.addShort(0x0112, static_cast<std::size_t>(notes.orientation));
    if (dated) {
        main.addLong(0x8769, main.end());
    }
    main.appendTo(tiff);
    if (dated) {
        Directory exif(main.end(), 1);
        exif.addText(0x9003, exifDate(notes.takenAt));
        exif.appendTo(tiff);
    }
    Bytes segment{0xFF, 0xE1};
    const std::size_t length = tiff.size() + 8;
    segment.push_back(static_cast<unsigned char>(length >> 8U));
    segment.push_back(static_cast<unsigned char>(length & 0xFFU));
    for (const char letter : {'E', 'x', 'i', 'f', '\0', '\0'}) {
        segment.push_back(static_cast<unsigned char>(letter));
    }
    segment.insert(segment.end(), tiff.begin(), tiff.end());
    return segment;
}

cv::Mat storedTurn(const cv::Mat3b& upright, int orientation) {
    cv::Mat stored;
    switch (orientation) {
        case 3:
            cv::rotate(upright, stored, cv::ROTATE_180);
            return stored;
        case 6:  // shown after a clockwise quarter turn
            cv::rotate(upright, stored, cv::ROTATE_90_COUNTERCLOCKWISE);
            return stored;
        case 8:
            cv::rotate(upright, stored, cv::ROTATE_90_CLOCKWISE);
            return stored;
        default:
            return upright;
    }
}

}  // namespace

void writePhoto(const cv::Mat3b& upright, const PhotoNotes& notes, const std::filesystem::path& file) {
    Bytes jpeg;
    cv::imencode(".jpg", storedTurn(upright, notes.orientation), jpeg,
                 {cv::IMWRITE_JPEG_QUALITY, notes.jpegQuality, cv::IMWRITE_JPEG_OPTIMIZE, 1});
    const Bytes exif = exifSegment(notes);
    jpeg.insert(jpeg.begin() + 2, exif.begin(), exif.end());
    std::ofstream stream(file, std::ios::binary);
    std::copy(jpeg.begin(), jpeg.end(), std::ostreambuf_iterator<char>(stream));
    stream.flush();
    if (!stream) {
        throw std::runtime_error("cannot write " + file.string());
    }
}

}  // namespace render
