// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that the synthetic photographer needs to know about one photo: plain values.
//
// Frames. Plate frame: mm, origin at the plate's top-left corner, x right, y down; a height
// is the distance in front of the plate, toward the camera. Body frame: mm, origin at the
// snout tip (pipefish) or at the cleithral ring (seahorse), u along the plate, v down, the
// animal facing left. Pixels: upright photo, the centre of the first pixel is (0, 0).
#pragma once

#include <array>
#include <cstdint>
#include <opencv2/core.hpp>
#include <optional>
#include <string>
#include <vector>

namespace render {

enum class Shape { Pipefish, Seahorse };
enum class View { Side, Above, Front };
enum class Tail { Open, HalfCurled, Closed };

struct Marker {
    int id = -1;
    cv::Point2d centreMm;
    double sideMm = 0.0;
};

struct Media {
    double cameraToWindowMm = 0.0;  // entrance pupil to the window's outer face
    double windowThicknessMm = 0.0;
    double windowIndex = 1.0;
    double waterToPlateMm = 0.0;  // window's inner face to the plate
    double salinityPpt = 0.0;
    double temperatureC = 0.0;
};

struct Lens {
    double fxPx = 0.0, fyPx = 0.0, cxPx = 0.0, cyPx = 0.0;
    std::array<double, 5> distortion{};  // k1 k2 p1 p2 k3 of OpenCV's model
    int widthPx = 0, heightPx = 0;
};

struct Box {
    std::string name;
    std::string plateDictionary, cardDictionary;
    cv::Size2d plateMm;
    std::vector<Marker> markers;
    double animalDistanceMm = 0.0, animalToleranceMm = 0.0;
    std::optional<Media> media;
    std::optional<Lens> lens;
};

struct Coat {
    cv::Vec3d srgb{90.0, 72.0, 45.0};  // red, green, blue of the flanks, 0 … 255
    double mottling = 0.22;            // relative strength of blotches
    double banding = 0.10;             // relative strength of the bony rings' pattern
    double paleBelly = 0.30;           // how far the belly goes toward a pale tone
};

struct Animal {
    std::string code, species, sex;
    Shape shape = Shape::Pipefish;
    int card = -1;  // marker on the animal card; −1: no card in the photo
    double lengthMm = 0.0;
    double headFraction = 0.21, trunkFraction = 0.28;  // of the length
    double trunkDepthMm = 0.0, trunkWidthMm = 0.0;
    double bellyHollow = -0.05;  // of the trunk depth; negative: the belly bulges
    double headAngleDeg = 80.0;  // seahorse: head axis against trunk axis
    double pouch = 0.0;          // seahorse male: swelling of the pouch, of the trunk depth
    Coat coat;
};

struct Posture {
    double trunkBendDeg = 0.0;  // turn of the midline along the trunk, toward the belly
    double tailBendDeg = 0.0;   // turn along the tail, toward the belly
    double tailWaveDeg = 0.0;   // S-shaped part of the tail's turn
    Tail tail = Tail::Open;     // seahorse only
};

struct Placement {
    cv::Point2d centreMm{100.0, 58.0};  // plate point in front of which the body's middle hangs
    double rotationDeg = 0.0;
    double pitchDeg = 0.0;  // turn out of the plate's plane: the rear end goes to the camera
    double distanceMm = 8.0;
    bool facingRight = false;
};

// Another animal in the same photo: it hangs before those that come earlier.
struct Companion {
    Animal animal;
    Posture posture;
    Placement placement;
};

struct CameraPose {
    cv::Point2d aimMm{100.0, 60.0};  // plate point on the optical axis (without refraction)
    double tiltXDeg = 0.0, tiltYDeg = 0.0, rollDeg = 0.0;
};

struct Light {
    double level = 0.62;                  // linear signal of the plate's middle, of full scale
    cv::Point2d slope{0.0, 0.0};          // relative change from the middle to the plate's edge
    double fallOff = 0.06;                // relative loss at the plate's corners
    cv::Vec3d tint{0.97, 1.0, 0.99};      // red, green, blue
    cv::Point2d shadowShiftMm{1.5, 4.0};  // on the plate
    double shadowBlurMm = 1.6, shadow = 0.25;
    double haze = 0.04;  // share of scattered light
    cv::Vec3d hazeSrgb{150.0, 170.0, 165.0};
};

struct Sensor {
    int widthPx = 1920, heightPx = 1440;
    double blurPx = 0.8;        // standard deviation of lens and demosaicing together
    double fullWell = 16000.0;  // electrons at full scale
    double readNoise = 0.0012;  // of full scale
    double noiseGrainPx = 0.6;  // blur of the noise by the camera's own processing
    int jpegQuality = 78;
};

struct Card {
    bool shown = false;
    std::string text;
    cv::Point2d centreMm{26.0, 30.0};
    double rotationDeg = 0.0;
    double markerMm = 10.0;
};

// A stroke on the plate that multiplies its light: print, a stain, a dropping.
struct Stain {
    cv::Point2d fromMm, toMm;
    double widthMm = 0.3, share = 0.1;
};

struct Scene {
    std::string photo;    // file name of the picture
    std::string takenAt;  // 2031-01-06T08:40:05
    int orientation = 1;  // EXIF: 1, 3, 6 or 8; the file is stored turned accordingly
    std::uint64_t seed = 1;
    View view = View::Side;
    Box box;                           // as it truly is; what the software is told may differ within its tolerance
    std::optional<double> waterIndex;  // else from the salinity and temperature of the box
    Animal animal;
    Posture posture;
    Placement placement;
    CameraPose camera;
    Light light;
    Sensor sensor;
    Card card;
    std::vector<Companion> companions;
    bool darkPlate = false;  // dark ground, the markers on white patches
    std::vector<Stain> stains;
    bool withoutAnimal = false;  // a photo of the empty box
};

}  // namespace render
