// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <exiv2/exiv2.hpp>
#include <opencv2/core.hpp>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "../scratch_folder.h"
#include "ringrule/error.h"
#include "ringrule/imaging/content_hash.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/imaging/upright.h"

using namespace ringrule;
namespace fs = std::filesystem;

namespace {

using Bytes = std::vector<unsigned char>;

struct Folder : ScratchFolder {
    [[nodiscard]] fs::path write(const std::string& name, const Bytes& bytes) const {
        return ScratchFolder::write(name, std::string(bytes.begin(), bytes.end()));
    }
};

// 120 × 80, bright at the top left, with a soft pattern so that its JPEG has some length.
cv::Mat3b picture() {
    cv::Mat3b image(80, 120, cv::Vec3b(60, 60, 60));
    for (int y = 0; y < image.rows; ++y)
        for (int x = 0; x < image.cols; ++x) {
            const auto wave = static_cast<std::uint8_t>(60 + (x * 7 + y * 5) % 40);
            image(y, x) = cv::Vec3b(wave, wave, static_cast<std::uint8_t>(wave + 30));
        }
    image(cv::Rect(8, 8, 24, 16)) = cv::Vec3b(230, 230, 230);
    return image;
}

Bytes encodedAs(const std::string& extension, const cv::Mat& image, std::vector<int> options = {}) {
    Bytes bytes;
    cv::imencode(extension, image, bytes, options);
    return bytes;
}

Exiv2::ExifData exifOf(int orientation, const std::string& taken) {
    Exiv2::ExifData exif;
    exif["Exif.Image.Orientation"] = static_cast<std::uint16_t>(orientation);
    exif["Exif.Image.Make"] = std::string("Invented");
    exif["Exif.Image.Model"] = std::string("bench camera");
    exif["Exif.Photo.DateTimeOriginal"] = taken;
    exif["Exif.Photo.FocalLength"] = Exiv2::Rational(425, 100);
    return exif;
}

void append(Bytes& bytes, std::uint32_t word) {
    for (const unsigned shift : {24U, 16U, 8U, 0U}) bytes.push_back(static_cast<unsigned char>(word >> shift));
}

// A PNG with an eXIf chunk behind its header, by hand: Exiv2 0.27 writes EXIF into text chunks of its own.
Bytes pngWithExif(const Bytes& png, const Exiv2::ExifData& exif) {
    Exiv2::Blob blob;
    Exiv2::ExifParser::encode(blob, Exiv2::littleEndian, exif);
    Bytes body{'e', 'X', 'I', 'f'};
    body.insert(body.end(), blob.begin(), blob.end());
    std::uint32_t crc = 0xFFFFFFFFU;
    for (const unsigned char byte : body) {
        crc ^= byte;
        for (int bit = 0; bit < 8; ++bit) crc = (crc >> 1U) ^ ((crc & 1U) != 0U ? 0xEDB88320U : 0U);
    }
    constexpr std::ptrdiff_t kBehindHeader = 33;
    Bytes bytes(png.begin(), png.begin() + kBehindHeader);
    append(bytes, static_cast<std::uint32_t>(blob.size()));
    bytes.insert(bytes.end(), body.begin(), body.end());
    append(bytes, ~crc);
    bytes.insert(bytes.end(), png.begin() + kBehindHeader, png.end());
    return bytes;
}

Bytes withExif(const Bytes& bytes, int orientation, const std::string& taken) {
    if (bytes.front() == 0x89) return pngWithExif(bytes, exifOf(orientation, taken));
    auto image = Exiv2::ImageFactory::open(bytes.data(), static_cast<long>(bytes.size()));
    image->readMetadata();
    for (const Exiv2::Exifdatum& entry : exifOf(orientation, taken)) image->exifData()[entry.key()] = entry;
    image->writeMetadata();
    image->io().seek(0, Exiv2::BasicIo::beg);
    const Exiv2::DataBuf buffer = image->io().read(static_cast<long>(image->io().size()));
    return {buffer.pData_, buffer.pData_ + buffer.size_};
}

std::string errorOf(const fs::path& path, const PhotoLimits& limits = {}) {
    try {
        (void)loadPhoto(path, limits);
    } catch (const Error& error) {
        CHECK(error.kind() == ErrorKind::BadPhoto);
        CHECK(error.path() == path.string());
        return error.what();
    }
    return "no error";
}

// Middle of the bright patch.
cv::Point2d brightPatch(const cv::Mat& grey) {
    const cv::Moments m = cv::moments(grey > 180, true);
    return {m.m10 / m.m00, m.m01 / m.m00};
}

}  // namespace

TEST_CASE("A photo comes with its pixels, hash, time and camera", "[photo]") {
    const Folder folder;
    const Bytes bytes = withExif(encodedAs(".jpg", picture()), 1, "2031:03:04 10:22:31");
    const Photo photo = loadPhoto(folder.write("a.jpg", bytes));
    CHECK(photo.grey.type() == CV_8UC1);
    CHECK(photo.grey.size() == cv::Size(120, 80));
    CHECK(photo.encoded == bytes);
    CHECK(photo.contentHash == sha256Hex(bytes));
    CHECK(photo.takenAt == "2031-03-04T10:22:31");
    CHECK(photo.cameraMake == "Invented");
    CHECK(photo.cameraModel == "bench camera");
    CHECK(photo.focalLengthMm == 4.25);
    // The patch's middle is exact but for JPEG's ringing.
    CHECK(cv::norm(brightPatch(photo.grey) - cv::Point2d(19.5, 15.5)) < 0.1);
}

TEST_CASE("A time that no clock shows is no time", "[photo]") {
    const Folder folder;
    const std::string taken = GENERATE(as<std::string>{}, "0000:00:00 00:00:00", "2031:13:04 10:22:31", "    ",
                                       "2031-03-04 10:22:31", "2031:03:04 24:00:00", "2031:03:04");
    CHECK_FALSE(loadPhoto(folder.write("a.jpg", withExif(encodedAs(".jpg", picture()), 1, taken))).takenAt);
}

TEST_CASE("Grey is what OpenCV decodes; colour goes with it", "[photo]") {
    const Folder folder;
    const std::string extension = GENERATE(as<std::string>{}, ".jpg", ".png", ".tiff");
    CAPTURE(extension);
    const Bytes bytes = encodedAs(extension, picture());
    const Photo photo = loadPhoto(folder.write("whatever.name", bytes));
    cv::Mat difference;
    cv::absdiff(photo.grey, cv::imdecode(bytes, cv::IMREAD_GRAYSCALE), difference);
    CHECK(cv::countNonZero(difference) == 0);
    const cv::Mat colour = decodeColour(photo);
    CHECK(colour.type() == CV_8UC3);
    CHECK(colour.size() == photo.grey.size());
    CHECK_FALSE(photo.takenAt);
    CHECK(photo.exifOrientation == 1);
}

TEST_CASE("Every EXIF orientation is set upright", "[photo]") {
    // EXIF 2.3, tag 0x0112: where the stored patch of the top left belongs on the upright photo of 120 × 80 or 80 ×
    // 120.
    const auto [orientation, x, y] = GENERATE(table<int, double, double>({{1, 19.5, 15.5},
                                                                          {2, 99.5, 15.5},
                                                                          {3, 99.5, 63.5},
                                                                          {4, 19.5, 63.5},
                                                                          {5, 15.5, 19.5},
                                                                          {6, 63.5, 19.5},
                                                                          {7, 63.5, 99.5},
                                                                          {8, 15.5, 99.5}}));
    const std::string extension = GENERATE(as<std::string>{}, ".jpg", ".png", ".tiff");
    CAPTURE(orientation, extension);
    const Folder folder;
    const Photo photo =
        loadPhoto(folder.write("a", withExif(encodedAs(extension, picture()), orientation, "2031:03:04 10:22:31")));
    CHECK(photo.takenAt == "2031-03-04T10:22:31");
    CHECK(photo.exifOrientation == orientation);
    CHECK(photo.grey.size() == (orientation < 5 ? cv::Size(120, 80) : cv::Size(80, 120)));
    CHECK(cv::norm(brightPatch(photo.grey) - cv::Point2d(x, y)) < 0.1);
    CHECK(decodeColour(photo).size() == photo.grey.size());
    if (extension == ".png") return;
    // OpenCV turns JPEG and TIFF by the same tag, PNG not.
    const cv::Mat turned = cv::imdecode(photo.encoded, cv::IMREAD_GRAYSCALE);
    CHECK(cv::norm(turned, photo.grey, cv::NORM_INF) == 0.0);
}

TEST_CASE("An impossible orientation is as good as none", "[photo]") {
    const Folder folder;
    CHECK(loadPhoto(folder.write("a.jpg", withExif(encodedAs(".jpg", picture()), 9, "x"))).exifOrientation == 1);
}

TEST_CASE("What is no photo is refused with what to do", "[photo]") {
    const Folder folder;
    const std::string text = "This is a list of animals, named as a photo by mistake.";
    CHECK_THAT(errorOf(folder.path() / "none.jpg"), Catch::Contains("no such photo"));
    CHECK_THAT(errorOf(folder.path()), Catch::Contains("folder"));
    CHECK_THAT(errorOf(folder.write("empty.jpg", {})), Catch::Contains("empty"));
    CHECK_THAT(errorOf(folder.write("text.jpg", Bytes(text.begin(), text.end()))), Catch::Contains("not a JPEG"));
    CHECK_THAT(errorOf(folder.write("short.jpg", {0xFF, 0xD8, 0xFF})), Catch::Contains("not a JPEG"));
    CHECK_THAT(errorOf(folder.write("bmp.jpg", encodedAs(".bmp", picture()))), Catch::Contains("not a JPEG"));
    CHECK_THAT(errorOf(folder.write("garbage.jpg", Bytes{0xFF, 0xD8, 0xFF, 0xD9, 0x00})), Catch::Contains("damaged"));
    CHECK_THAT(errorOf("/dev/null"), Catch::Contains("not a file"));
}

TEST_CASE("A photo cut short is refused wherever the cut falls", "[photo]") {
    const Folder folder;
    const std::vector<int> options = GENERATE(std::vector<int>{}, std::vector<int>{cv::IMWRITE_JPEG_PROGRESSIVE, 1});
    const Bytes whole = withExif(encodedAs(".jpg", picture(), options), 1, "2031:03:04 10:22:31");
    for (std::size_t size = 4; size < whole.size(); size += 13) {
        const std::string error =
            errorOf(folder.write("cut.jpg", Bytes(whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(size))));
        CAPTURE(size, whole.size(), error);
        CHECK(error.find("cut short") != std::string::npos);
    }
    CHECK(errorOf(folder.write("whole.jpg", whole)) == "no error");
}

TEST_CASE("Coded data that end early are noticed though the closing marker is there", "[photo]") {
    const Folder folder;
    Bytes bytes = encodedAs(".jpg", picture());
    bytes.erase(bytes.end() - static_cast<std::ptrdiff_t>(bytes.size() / 3), bytes.end() - 2);
    CHECK_THAT(errorOf(folder.write("a.jpg", bytes)), Catch::Contains("cut short"));
}

TEST_CASE("PNG and TIFF cut short or damaged are refused", "[photo]") {
    const Folder folder;
    Bytes png = encodedAs(".png", picture());
    CHECK_THAT(errorOf(folder.write("a.png", Bytes(png.begin(), png.end() - 40))), Catch::Contains("cut short"));
    png[png.size() / 2] ^= 0x55U;
    CHECK_THAT(errorOf(folder.write("b.png", png)), Catch::Contains("damaged"));
    const Bytes tiff = encodedAs(".tiff", picture());
    CHECK(errorOf(folder.write("a.tiff", Bytes(tiff.begin(), tiff.begin() + static_cast<std::ptrdiff_t>(
                                                                                tiff.size() / 2)))) != "no error");
}

TEST_CASE("Limits hold before anything is decoded", "[photo]") {
    const Folder folder;
    const fs::path path = folder.write("a.jpg", encodedAs(".jpg", picture()));
    CHECK_THAT(errorOf(path, {.maxFileBytes = 100}), Catch::Contains("larger than"));
    CHECK_THAT(errorOf(path, {.maxPixels = 120 * 80 - 1}), Catch::Contains("million pixels"));
    CHECK_THAT(errorOf(path, {.minSidePx = 81}), Catch::Contains("thumbnail"));
    CHECK(errorOf(path, {.maxPixels = 120 * 80, .minSidePx = 80}) == "no error");
    // A PNG that claims 60,000 × 60,000 pixels in a few bytes.
    Bytes bomb = encodedAs(".png", picture());
    for (const std::size_t at : {std::size_t{18}, std::size_t{22}}) bomb[at] = 0xEA, bomb[at + 1] = 0x60;
    CHECK_THAT(errorOf(folder.write("bomb.png", bomb)), Catch::Contains("million pixels"));
}

TEST_CASE("Random damage never escapes as anything but an error of ours", "[photo]") {
    const Folder folder;
    const std::string extension = GENERATE(as<std::string>{}, ".jpg", ".png", ".tiff");
    const Bytes whole = extension == ".jpg" ? withExif(encodedAs(extension, picture()), 6, "2031:03:04 10:22:31")
                                            : encodedAs(extension, picture());
    cv::RNG random(99);
    for (int i = 0; i < 60; ++i) {
        Bytes bytes = whole;
        for (int k = 0; k < 6; ++k)
            bytes[static_cast<std::size_t>(random.uniform(8, static_cast<int>(bytes.size())))] =
                static_cast<unsigned char>(random.uniform(0, 256));
        try {
            (void)loadPhoto(folder.write("damaged", bytes));
        } catch (const Error& error) {
            CHECK(error.kind() == ErrorKind::BadPhoto);
        }
    }
}

TEST_CASE("The colour beside the grey is that of the whole picture, at the stored resolution", "[photo]") {
    // The picture is reddish but for its grey patch; OpenCV writes JPEG colour at half the resolution.
    const std::string extension = GENERATE(as<std::string>{}, ".jpg", ".png", ".tiff");
    const int orientation = GENERATE(1, 6);
    CAPTURE(extension, orientation);
    const Folder folder;
    const Photo photo =
        loadPhoto(folder.write("a", withExif(encodedAs(extension, picture()), orientation, "2031:03:04 10:22:31")));
    const Chroma chroma = decodeChroma(photo);
    const int times = extension == ".jpg" ? 2 : 1;
    REQUIRE(chroma.cb.size() == photo.grey.size() / times);
    REQUIRE(chroma.cr.size() == chroma.cb.size());
    cv::Mat apart;
    cv::cvtColor(decodeColour(photo), apart, cv::COLOR_BGR2YCrCb);
    cv::resize(apart, apart, chroma.cb.size(), 0.0, 0.0, cv::INTER_AREA);
    std::vector<cv::Mat> planes;
    cv::split(apart, planes);
    // Decoding to BGR and back rounds twice; upsampling and its mean differ at the patch's border.
    CHECK(cv::mean(planes[1])[0] == Approx(cv::mean(chroma.cr)[0]).margin(0.5));
    CHECK(cv::mean(planes[2])[0] == Approx(cv::mean(chroma.cb)[0]).margin(0.5));
    const cv::Point patch = orientation == 1 ? cv::Point(20, 16) / times : cv::Point(80 - 16, 20) / times;
    CHECK(static_cast<int>(chroma.cr.at<unsigned char>(patch)) == Approx(128).margin(3));
    const cv::Point skin(chroma.cr.cols / 2, chroma.cr.rows / 2);
    // Cr of (v, v, v + 30) is 128 + 0.713 (30 − 0.299 · 30).
    CHECK(static_cast<int>(chroma.cr.at<unsigned char>(skin)) == Approx(143).margin(3));
}

TEST_CASE("Colour of photos whose sides are no whole blocks, turned, is as large as it should be", "[photo]") {
    const int orientation = GENERATE(range(1, 9));
    const cv::Size size = GENERATE(cv::Size(121, 79), cv::Size(65, 112), cv::Size(97, 97));
    const bool progressive = GENERATE(false, true);
    CAPTURE(orientation, size.width, size.height, progressive);
    cv::Mat image;
    cv::resize(picture(), image, size, 0.0, 0.0, cv::INTER_LINEAR);
    const Folder folder;
    const Bytes bytes = encodedAs(".jpg", image, {cv::IMWRITE_JPEG_PROGRESSIVE, progressive ? 1 : 0});
    const Photo photo = loadPhoto(folder.write("a.jpg", withExif(bytes, orientation, "2031:03:04 10:22:31")));
    const Chroma chroma = decodeChroma(photo);
    CHECK(chroma.cb.size() == cv::Size((photo.grey.cols + 1) / 2, (photo.grey.rows + 1) / 2));
    CHECK(chroma.cr.size() == chroma.cb.size());
    CHECK(cv::mean(chroma.cr)[0] == Approx(141).margin(2));  // 143 on most of it, 128 on its patch
}
