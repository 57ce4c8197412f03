// SPDX-License-Identifier: GPL-3.0-or-later
// ringrule-render: the synthetic photographer's command line.
#include "box_file.h"
#include "demo_set.h"
#include "picture_set.h"
#include "scene_json.h"
#include "scene_sampler.h"

#include <cstdio>
#include <iostream>
#include <map>
#include <stdexcept>
#include <string>

namespace {

constexpr const char* kUsage =
    "ringrule-render scene SCENE.json FOLDER\n"
    "    one photo and its truth from a scene file\n"
    "ringrule-render demo FOLDER [--box FILE]\n"
    "    the demo set: nine sessions, truth, house.json\n"
    "ringrule-render random FOLDER [--box FILE] [--count N] [--seed N] [--shape pipefish|seahorse]\n"
    "                [--view side|above|front] [--shortest MM] [--longest MM] [--width PX] [--height PX]\n"
    "                [--distance FACTOR] [--noise FACTOR] [--closed-tails SHARE] [--pale SHARE] [--quality N]\n"
    "    photos of random animals; without --box a box that suits --longest and --distance is made\n"
    "ringrule-render box FILE\n"
    "    the bench box's file\n";

using Options = std::map<std::string, std::string>;

Options optionsFrom(int argc, char** argv, int first) {
    Options options;
    for (int i = first; i + 1 < argc; i += 2) {
        if (std::string(kUsage).find(std::string("[") + argv[i] + " ") == std::string::npos) {
            throw std::invalid_argument(std::string("unknown option ") + argv[i]);
        }
        options[argv[i]] = argv[i + 1];
    }
    if ((argc - first) % 2 != 0 && argc > first) {
        throw std::invalid_argument(std::string("no value after ") + argv[argc - 1]);
    }
    return options;
}

double number(const Options& options, const std::string& name, double otherwise) {
    const auto found = options.find(name);
    return found == options.end() ? otherwise : std::stod(found->second);
}

render::Box boxOf(const Options& options, const std::filesystem::path& folder) {
    if (const auto found = options.find("--box"); found != options.end()) {
        return render::readBox(found->second);
    }
    const bool sized = options.contains("--longest") || options.contains("--distance");
    const render::Box box =
        sized ? render::boxFor(number(options, "--longest", 165.0), number(options, "--distance", 1.0))
              : render::benchBox();
    render::writeBox(box, folder / "box.json");
    return box;
}

render::SamplerOptions samplerFrom(const Options& options) {
    render::SamplerOptions sampler;
    if (const auto found = options.find("--shape"); found != options.end()) {
        sampler.shape = found->second == "seahorse" ? render::Shape::Seahorse : render::Shape::Pipefish;
    }
    if (const auto found = options.find("--view"); found != options.end()) {
        sampler.view = found->second == "above"   ? render::View::Above
                       : found->second == "front" ? render::View::Front
                                                  : render::View::Side;
    }
    sampler.shortestMm = number(options, "--shortest", sampler.shortestMm);
    sampler.longestMm = number(options, "--longest", sampler.longestMm);
    sampler.widthPx = static_cast<int>(number(options, "--width", sampler.widthPx));
    sampler.heightPx = static_cast<int>(number(options, "--height", sampler.heightPx));
    sampler.noise = number(options, "--noise", sampler.noise);
    sampler.jpegQuality = static_cast<int>(number(options, "--quality", sampler.jpegQuality));
    sampler.closedTailShare = number(options, "--closed-tails", sampler.closedTailShare);
    sampler.paleShare = number(options, "--pale", sampler.paleShare);
    return sampler;
}

void renderRandom(const std::filesystem::path& folder, const Options& options) {
    std::filesystem::create_directories(folder);
    const render::Box box = boxOf(options, folder);
    const render::SamplerOptions sampler = samplerFrom(options);
    const auto seed = static_cast<std::uint64_t>(number(options, "--seed", 1));
    const auto count = static_cast<std::uint64_t>(number(options, "--count", 10));
    for (std::uint64_t i = 0; i < count; ++i) {
        render::Scene scene = render::sampleScene(seed + i, box, sampler);
        const std::string stem = "scene-" + std::to_string(seed + i) + "_rendered";
        scene.photo = stem + ".jpg";
        scene.takenAt = "2031-01-06T09:00:00";
        render::renderToFiles(scene, {folder / scene.photo, folder / (stem + ".json")});
    }
}

int run(int argc, char** argv) {
    const std::string command = argc > 1 ? argv[1] : "";
    if (command == "scene" && argc == 4) {
        const render::Scene scene = render::readScene(argv[2]);
        const std::filesystem::path folder = argv[3];
        const std::filesystem::path stem = std::filesystem::path(scene.photo).stem();
        render::renderToFiles(scene, {folder / scene.photo, folder / (stem.string() + ".json")});
        return 0;
    }
    if (command == "demo" && argc >= 3) {
        const std::filesystem::path folder = argv[2];
        std::filesystem::create_directories(folder);
        render::renderDemoSet(folder, boxOf(optionsFrom(argc, argv, 3), folder),
                              [](const render::DemoPhoto& photo) { std::cerr << photo.photo.string() << '\n'; });
        return 0;
    }
    if (command == "random" && argc >= 3) {
        renderRandom(argv[2], optionsFrom(argc, argv, 3));
        return 0;
    }
    if (command == "box" && argc == 3) {
        render::writeBox(render::benchBox(), argv[2]);
        return 0;
    }
    std::cerr << kUsage;
    return command == "--help" ? 0 : 2;
}

}  // namespace

int main(int argc, char** argv) {
    try {
        return run(argc, argv);
    } catch (const std::invalid_argument& error) {
        std::cerr << "ringrule-render: " << error.what() << '\n' << kUsage;
        return 2;
    } catch (const std::exception& error) {
        std::cerr << "ringrule-render: " << error.what() << '\n';
        return 1;
    }
}
