// SPDX-License-Identifier: GPL-3.0-or-later
#include "photograph.h"
#include "random.h"
#include "skin.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

namespace render {

namespace {

// Normal deviates by look-up: one table, walked in an order that the seed decides.
class NoiseTable {
public:
    explicit NoiseTable(std::uint64_t seed) : random_(seed), values_(kSize) {
        for (float& value : values_) {
            value = static_cast<float>(random_.normal());
        }
    }
    float next() {
        if (left_ == 0) {
            word_ = random_.bits();
            left_ = 4;
        }
        const float value = values_[word_ & (kSize - 1)];
        word_ >>= 16U;
        --left_;
        return value;
    }

private:
    static constexpr std::size_t kSize = 1U << 16U;
    Random random_;
    std::vector<float> values_;
    std::uint64_t word_ = 0;
    int left_ = 0;
};

void addHaze(cv::Mat3f& light, const Light& how) {
    const cv::Vec3f veil = linearBgr(how.hazeSrgb) * static_cast<float>(how.haze * how.level / 0.6);
    const float kept = static_cast<float>(1.0 - how.haze);
    for (cv::Vec3f& pixel : light) {
        pixel = pixel * kept + veil;
    }
}

void addNoise(cv::Mat3f& light, const Sensor& sensor, std::uint64_t seed) {
    NoiseTable table(seed);
    cv::Mat3f noise(light.size());
    const float perElectron = static_cast<float>(1.0 / sensor.fullWell);
    const float read = static_cast<float>(sensor.readNoise * sensor.readNoise);
    std::transform(light.begin(), light.end(), noise.begin(), [&](const cv::Vec3f& pixel) {
        cv::Vec3f grain;
        for (int channel = 0; channel < 3; ++channel) {
            const float signal = std::max(0.0F, pixel[channel]);
            grain[channel] = table.next() * std::sqrt(signal * perElectron + read);
        }
        return grain;
    });
    if (sensor.noiseGrainPx > 0.0) {
        cv::GaussianBlur(noise, noise, {}, sensor.noiseGrainPx);
    }
    light += noise;
}

std::vector<unsigned char> toneCurve() {
    std::vector<unsigned char> curve(4096);
    for (std::size_t i = 0; i < curve.size(); ++i) {
        const double v = static_cast<double>(i) / 4095.0;
        const double toned = v <= 0.0031308 ? 12.92 * v : 1.055 * std::pow(v, 1.0 / 2.4) - 0.055;
        curve[i] = static_cast<unsigned char>(std::lround(255.0 * toned));
    }
    return curve;
}

}  // namespace

cv::Mat3b develop(const Scene& scene, cv::Mat3f light) {
    addHaze(light, scene.light);
    if (scene.sensor.blurPx > 0.0) {
        cv::GaussianBlur(light, light, {}, scene.sensor.blurPx);
    }
    addNoise(light, scene.sensor, seedOf(scene.seed, 41));
    const std::vector<unsigned char> curve = toneCurve();
    cv::Mat3b photo(light.size());
    std::transform(light.begin(), light.end(), photo.begin(), [&curve](const cv::Vec3f& pixel) {
        cv::Vec3b toned;
        for (int channel = 0; channel < 3; ++channel) {
            const float bounded = std::clamp(pixel[channel], 0.0F, 1.0F);
            toned[channel] = curve[static_cast<std::size_t>(bounded * 4095.0F + 0.5F)];
        }
        return toned;
    });
    return photo;
}

cv::Mat3b photograph(const Scene& scene) {
    const Body body = bodyOf(scene.animal, scene.posture, scene.view);
    const Sight sight(scene, body);
    return develop(scene, exposeScene(scene, body, sight));
}

}  // namespace render
