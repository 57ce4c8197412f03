// SPDX-License-Identifier: GPL-3.0-or-later
#include "imaging/jpeg.h"

#include <algorithm>
#include <array>
#include <csetjmp>
#include <cstddef>
#include <cstdio>
#include <cstring>
#include <string_view>

#include <jerror.h>
#include <jpeglib.h>

namespace ringrule {
namespace {

constexpr unsigned kEndOfImage = 0xD9, kApp1 = 0xE1;

unsigned word(std::span<const unsigned char> bytes, std::size_t at) {
    return (unsigned{bytes[at]} << 8U) | unsigned{bytes[at + 1]};
}

bool isFrameHeader(unsigned marker) {
    return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
}

bool standsAlone(unsigned marker) {
    return marker == 0x01 || (marker >= 0xD0 && marker <= 0xD8);
}

// Place of the next marker byte (after its 0xFF) at or behind `from`, passing over stuffed zeros and restart markers
// of coded data; the size of `bytes` when there is none.
std::size_t nextMarker(std::span<const unsigned char> bytes, std::size_t from) {
    while (from + 1 < bytes.size()) {
        const void* found = std::memchr(&bytes[from], 0xFF, bytes.size() - from - 1);
        if (found == nullptr) break;
        from = static_cast<std::size_t>(static_cast<const unsigned char*>(found) - bytes.data()) + 1;
        const unsigned code = bytes[from];
        if (code != 0 && code != 0xFF && !(code >= 0xD0 && code <= 0xD7)) return from;
    }
    return bytes.size();
}

void takeSegment(std::span<const unsigned char> body, unsigned marker, JpegLayout& layout) {
    constexpr std::string_view kExif("Exif\0\0", 6);
    if (isFrameHeader(marker) && body.size() >= 5) {
        layout.heightPx = static_cast<int>(word(body, 1));
        layout.widthPx = static_cast<int>(word(body, 3));
    } else if (marker == kApp1 && layout.exif.empty() && body.size() > kExif.size() &&
               std::equal(kExif.begin(), kExif.end(), body.begin(),
                          [](char a, unsigned char b) { return static_cast<unsigned char>(a) == b; })) {
        layout.exif = body.subspan(kExif.size());
    }
}

struct Decoder {
    jpeg_decompress_struct info{};
    jpeg_error_mgr errors{};
    std::jmp_buf onError{};
    JpegState state = JpegState::Whole;
};

[[noreturn]] void stopDecoding(j_common_ptr info) {
    auto* decoder = static_cast<Decoder*>(info->client_data);
    decoder->state = JpegState::Damaged;
    std::longjmp(decoder->onError, 1);  // the library is C and cannot be unwound by an exception
}

void noteWarning(j_common_ptr info, int level) {
    if (level >= 0) return;  // trace output
    auto* decoder = static_cast<Decoder*>(info->client_data);
    const int code = info->err->msg_code;
    if (code == JWRN_JPEG_EOF || code == JWRN_HIT_MARKER) decoder->state = JpegState::CutShort;
    if (code == JWRN_MUST_RESYNC && decoder->state == JpegState::Whole) decoder->state = JpegState::Damaged;
}

void decodeRows(Decoder& decoder, cv::Mat& grey) {
    jpeg_decompress_struct& info = decoder.info;
    grey.create(static_cast<int>(info.output_height), static_cast<int>(info.output_width), CV_8UC1);
    while (info.output_scanline < info.output_height) {
        auto* row = grey.ptr<unsigned char>(static_cast<int>(info.output_scanline));
        jpeg_read_scanlines(&info, &row, 1);
    }
}

// Whether the first component holds every pixel's grey as it is: all usual photos.
bool holdsGrey(const jpeg_decompress_struct& info) {
    const jpeg_component_info& first = info.comp_info[0];
    return (info.jpeg_color_space == JCS_YCbCr || info.jpeg_color_space == JCS_GRAYSCALE) &&
           first.h_samp_factor == info.max_h_samp_factor && first.v_samp_factor == info.max_v_samp_factor;
}

// Some components straight from their inverse transforms into pictures that are whole blocks high and wide, then cut to
// their own size: the library's own way makes one more copy of every pixel.
template <std::size_t count>
void decodeBlocks(Decoder& decoder, const std::array<int, count>& wanted, std::array<cv::Mat, count>& planes) {
    jpeg_decompress_struct& info = decoder.info;
    const auto rowsAtOnce = static_cast<JDIMENSION>(info.max_v_samp_factor * DCTSIZE);
    const auto columnsAtOnce = static_cast<JDIMENSION>(info.max_h_samp_factor * DCTSIZE);
    const JDIMENSION tall = (info.output_height + rowsAtOnce - 1) / rowsAtOnce;
    const JDIMENSION wide = (info.output_width + columnsAtOnce - 1) / columnsAtOnce;
    for (int i = 0; i < info.num_components; ++i) info.comp_info[i].component_needed = FALSE;
    std::array<std::array<JSAMPROW, MAX_SAMP_FACTOR * DCTSIZE>, count> rowsNow{};
    std::array<JSAMPARRAY, MAX_COMPONENTS> components{};
    components.fill(rowsNow[0].data());  // those not needed are not written
    for (std::size_t k = 0; k < count; ++k) {
        jpeg_component_info& component = info.comp_info[wanted[k]];
        component.component_needed = TRUE;
        components[static_cast<std::size_t>(wanted[k])] = rowsNow[k].data();
        planes[k].create(static_cast<int>(tall) * component.v_samp_factor * DCTSIZE,
                         static_cast<int>(wide) * component.h_samp_factor * DCTSIZE, CV_8UC1);
    }
    while (info.output_scanline < info.output_height) {
        const auto block = static_cast<int>(info.output_scanline / rowsAtOnce);
        for (std::size_t k = 0; k < count; ++k) {
            const int rows = info.comp_info[wanted[k]].v_samp_factor * DCTSIZE;
            for (int i = 0; i < rows; ++i)
                rowsNow[k][static_cast<std::size_t>(i)] = planes[k].template ptr<unsigned char>(block * rows + i);
        }
        jpeg_read_raw_data(&info, components.data(), rowsAtOnce);
    }
    for (std::size_t k = 0; k < count; ++k) {
        const jpeg_component_info& component = info.comp_info[wanted[k]];
        planes[k] = planes[k](cv::Rect(0, 0, static_cast<int>(component.downsampled_width),
                                       static_cast<int>(component.downsampled_height)));
    }
}

void catchErrors(Decoder& decoder) {
    decoder.info.err = jpeg_std_error(&decoder.errors);
    decoder.info.client_data = &decoder;
    decoder.errors.error_exit = stopDecoding;
    decoder.errors.emit_message = noteWarning;
}

void readHeader(Decoder& decoder, std::span<const unsigned char> bytes) {
    jpeg_create_decompress(&decoder.info);  // keeps error manager and client data
    jpeg_mem_src(&decoder.info, bytes.data(), static_cast<unsigned long>(bytes.size()));
    jpeg_read_header(&decoder.info, TRUE);
}

}  // namespace

JpegLayout readJpegLayout(std::span<const unsigned char> bytes) {
    JpegLayout layout;
    std::size_t at = 2;
    while (true) {
        at = nextMarker(bytes, at);
        if (at + 1 >= bytes.size() && !(at < bytes.size() && bytes[at] == kEndOfImage)) break;
        const unsigned marker = bytes[at++];
        if (marker == kEndOfImage) {
            layout.state = JpegState::Whole;
            return layout;
        }
        if (standsAlone(marker)) continue;
        if (at + 2 > bytes.size()) break;
        const std::size_t length = word(bytes, at);
        if (length < 2) return layout;
        if (at + length > bytes.size()) break;
        takeSegment(bytes.subspan(at + 2, length - 2), marker, layout);
        at += length;
    }
    layout.state = JpegState::CutShort;
    return layout;
}

JpegPixels decodeJpegGrey(std::span<const unsigned char> bytes) {
    JpegPixels pixels;
    std::array<cv::Mat, 1> planes;
    Decoder decoder;
    catchErrors(decoder);
    if (setjmp(decoder.onError) == 0) {
        readHeader(decoder, bytes);
        decoder.info.out_color_space = JCS_GRAYSCALE;
        decoder.info.raw_data_out = holdsGrey(decoder.info) ? TRUE : FALSE;
        jpeg_start_decompress(&decoder.info);
        if (decoder.info.raw_data_out == TRUE) {
            decodeBlocks(decoder, std::array{0}, planes);
        } else {
            decodeRows(decoder, planes[0]);
        }
        jpeg_finish_decompress(&decoder.info);
    }
    jpeg_destroy_decompress(&decoder.info);
    pixels.grey = planes[0];
    pixels.state = decoder.state;
    return pixels;
}

JpegChroma decodeJpegChroma(std::span<const unsigned char> bytes) {
    std::array<cv::Mat, 2> planes;
    bool held = false;
    Decoder decoder;
    catchErrors(decoder);
    if (setjmp(decoder.onError) == 0) {
        readHeader(decoder, bytes);
        held = decoder.info.jpeg_color_space == JCS_YCbCr && holdsGrey(decoder.info);
        if (held) {
            decoder.info.raw_data_out = TRUE;
            jpeg_start_decompress(&decoder.info);
            decodeBlocks(decoder, std::array{1, 2}, planes);
            jpeg_finish_decompress(&decoder.info);
        }
    }
    jpeg_destroy_decompress(&decoder.info);
    // After an error `held` may be anything: it is asked last.
    if (decoder.state != JpegState::Whole || !held || planes[0].size() != planes[1].size()) return {};
    return {planes[0], planes[1]};
}

}  // namespace ringrule
