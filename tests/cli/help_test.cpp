// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "run_program.h"

TEST_CASE("the program says its version and its help") {
    const Ran version = ringrule({"--version"});
    CHECK(version.status == 0);
    CHECK(version.out.starts_with("ringrule "));
    const Ran help = ringrule({"--help"});
    CHECK(help.status == 0);
    for (const char* command : {"measure", "create", "session", "measure-again", "review", "demo"}) {
        INFO(command);
        CHECK(help.out.find(command) != std::string::npos);
    }
    CHECK(help.err.empty());
}

TEST_CASE("each command has a help that names its options") {
    struct Command {
        const char* name;
        std::vector<std::string> options;
    };
    const auto command = GENERATE(values<Command>({
        {"measure", {"--box", "--shape", "--view", "--outline", "--overlay", "--jobs"}},
        {"create", {"DIR", "--house", "--calibration"}},
        {"session", {"--store", "--box", "--on", "--keeper", "--jobs"}},
        {"measure-again", {"SESSION", "--store", "--box", "--corrected-too", "--keeper", "--jobs"}},
        {"review", {"--store", "--on"}},
        {"demo", {"--samples", "--calibration", "--out", "--jobs"}},
    }));
    const Ran help = ringrule({command.name, "--help"});
    CHECK(help.status == 0);
    for (const std::string& option : command.options) {
        INFO(command.name << " " << option);
        CHECK(help.out.find(option) != std::string::npos);
    }
}

TEST_CASE("bad use is status 2 and said on standard error") {
    const auto arguments = GENERATE(values<std::vector<std::string>>({
        {},
        {"unknown-command"},
        {"measure"},
        {"measure", "a.jpg"},
        {"measure", "a.jpg", "--box", "b.json", "--shape", "eel"},
        {"measure", "a.jpg", "--box", "b.json", "--view", "below"},
        {"measure", "a.jpg", "--box", "b.json", "--jobs", "-1"},
        {"measure", "a.jpg", "--box", "b.json", "--unknown"},
        {"create"},
        {"create", "x", "--house", "h.json"},
        {"session", "x"},
        {"review"},
        {"review", "--store", "/nonexistent/collection"},
        {"demo", "--samples", "/nonexistent", "--out", "/nonexistent/out"},
        {"demo", "--overlays", "some"},
    }));
    std::string line;
    for (const std::string& word : arguments) line += word + " ";
    INFO(line);
    const Ran ran = ringrule(arguments);
    CHECK(ran.status == 2);
    CHECK(ran.out.empty());
    CHECK_FALSE(ran.err.empty());
}

TEST_CASE("a word that is no command is named") {
    CHECK(ringrule({"foo"}).err == "ringrule: there is no command 'foo'; see: ringrule --help\n");
    CHECK(ringrule({"measure"}).err.find("there is no command") == std::string::npos);
    CHECK(ringrule({}).err.find("there is no command") == std::string::npos);
}
