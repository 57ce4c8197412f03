// SPDX-License-Identifier: GPL-3.0-or-later
// plate, cards and box rescale as users type them.
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "../scratch_folder.h"
#include "run_program.h"

TEST_CASE("plate writes a PDF and a box file, and box rescale corrects it") {
    const ScratchFolder folder;
    const std::string pdf = folder / "plate.pdf", box = folder / "bay3.json";
    const Ran made = ringrule({"plate", "--size", "200x120", "--paper", "letter", "--pdf", pdf, "--box", box});
    CHECK(made.status == 0);
    CHECK(made.err.empty());
    CHECK(contentOf(pdf).starts_with("%PDF-"));
    const auto before = nlohmann::json::parse(contentOf(box));
    CHECK(before["format"] == "ringrule-box/1");
    CHECK(before["name"] == "bay3");
    CHECK(before["plate"]["size_mm"] == std::vector<double>{200.0, 120.0});
    const Ran again = ringrule({"plate", "--size", "tray", "--pdf", pdf, "--box", box});
    CHECK(again.status == 2);
    CHECK(nlohmann::json::parse(contentOf(box)) == before);

    const Ran corrected = ringrule({"box", "rescale", "--box", box, "--bar-stated", "200", "--bar-measured", "198.4",
                                    "--down-stated", "150", "--down-measured", "149.1"});
    CHECK(corrected.status == 0);
    CHECK(corrected.out.find("198.4 x 119.28") != std::string::npos);
    const auto after = nlohmann::json::parse(contentOf(box));
    CHECK(after["plate"]["size_mm"][0].get<double>() == Approx(198.4));
    CHECK(after["plate"]["size_mm"][1].get<double>() == Approx(119.28));
    CHECK(filesIn(folder.path()) == 2);
}

TEST_CASE("the bar across alone corrects both ways") {
    const ScratchFolder folder;
    const std::string box = folder / "box.json";
    REQUIRE(ringrule({"plate", "--size", "bench", "--pdf", folder / "p.pdf", "--box", box}).status == 0);
    REQUIRE(ringrule({"box", "rescale", "--box", box, "--bar-stated", "100", "--bar-measured", "99.2"}).status == 0);
    CHECK(nlohmann::json::parse(contentOf(box))["plate"]["size_mm"][1].get<double>() == Approx(119.04));
}

TEST_CASE("cards are written with or without names") {
    const ScratchFolder folder;
    const std::string pdf = folder / "cards.pdf";
    const std::string names = folder.write("names.csv", "number,name\n4,Juniper\n5,P2\n");
    CHECK(ringrule({"cards", "--numbers", "1-12", "--pdf", pdf}).status == 0);
    const Ran all = ringrule({"cards", "--names", names, "--pdf", pdf, "--paper", "letter"});
    CHECK(all.status == 0);
    CHECK(all.out.starts_with("2 cards on 1 sheet of Letter"));
    CHECK(contentOf(pdf).starts_with("%PDF-"));
}

TEST_CASE("paper that cannot be made is status 2, said on standard error, and nothing is written") {
    const ScratchFolder folder;
    const std::string pdf = folder / "x.pdf", box = folder / "x.json";
    const std::string names = folder.write("names.csv", "1,A\nsecond,B\n");
    // Strings, because a generator copies what it uses and the folder must not be.
    const std::string noFolderPdf = folder / "missing/x.pdf", noFolderBox = folder / "missing/x.json";
    const std::string noNames = folder / "none.csv";
    const auto arguments = GENERATE_COPY(values<std::vector<std::string>>({
        {"plate"},
        {"plate", "--size", "200x120", "--pdf", pdf},
        {"plate", "--size", "huge", "--pdf", pdf, "--box", box},
        {"plate", "--size", "20x20", "--pdf", pdf, "--box", box},
        {"plate", "--size", "bench", "--paper", "a3", "--pdf", pdf, "--box", box},
        {"plate", "--size", "bench", "--tone", "green", "--pdf", pdf, "--box", box},
        {"plate", "--size", "bench", "--pdf", pdf, "--box", pdf},
        {"plate", "--size", "bench", "--pdf", noFolderPdf, "--box", box},
        {"plate", "--size", "bench", "--pdf", pdf, "--box", noFolderBox},
        {"cards", "--pdf", pdf},
        {"cards", "--numbers", "1-", "--pdf", pdf},
        {"cards", "--numbers", "1-12"},
        {"cards", "--numbers", "1-12", "--marker", "3", "--pdf", pdf},
        {"cards", "--names", names, "--pdf", pdf},
        {"cards", "--names", noNames, "--pdf", pdf},
        {"box"},
        {"box", "rescale"},
        {"box", "rescale", "--box", box, "--bar-stated", "100", "--bar-measured", "99"},
        {"box", "rescale", "--box", names, "--bar-stated", "100", "--bar-measured", "99"},
        {"box", "rescale", "--box", box, "--bar-stated", "100", "--bar-measured", "9.9"},
        {"box", "rescale", "--box", box, "--bar-stated", "100", "--bar-measured", "99", "--down-stated", "100"},
    }));
    std::string line;
    for (const std::string& word : arguments) line += word + " ";
    INFO(line);
    const Ran ran = ringrule(arguments);
    CHECK(ran.status == 2);
    CHECK(ran.out.empty());
    CHECK_FALSE(ran.err.empty());
    CHECK(filesIn(folder.path()) == 1);
}

TEST_CASE("help of the paper commands names their options and sizes") {
    const Ran plate = ringrule({"plate", "--help"});
    for (const char* word : {"--size", "--paper", "--tone", "--pdf", "--box", "--name", "bench (200x120)", "longest"})
        CHECK(plate.out.find(word) != std::string::npos);
    const Ran cards = ringrule({"cards", "--help"});
    for (const char* word : {"--numbers", "--names", "--paper", "--marker", "--pdf"})
        CHECK(cards.out.find(word) != std::string::npos);
    const Ran box = ringrule({"box", "rescale", "--help"});
    for (const char* word : {"--box", "--bar-stated", "--bar-measured", "--down-stated", "--down-measured"})
        CHECK(box.out.find(word) != std::string::npos);
    CHECK(plate.status + cards.status + box.status == 0);
}
