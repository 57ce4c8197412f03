// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <regex>
#include <set>

#include "../scratch_folder.h"
#include "ringrule/remark.h"

using namespace ringrule;

namespace {

const std::filesystem::path kSource(RINGRULE_SOURCE_DIR);

/// The rows "| `id` | sentence |" of one section of the page.
std::vector<std::pair<std::string, std::string>> rowsOf(const std::string& section) {
    const std::string page = contentOf(kSource / "docs/remarks.md");
    const std::size_t begin = page.find("## " + section);
    REQUIRE(begin != std::string::npos);
    const std::string part = page.substr(begin, page.find("\n## ", begin + 1) - begin);
    const std::regex row(R"(\| `([a-z-]+)` \| ([^|\n]+) \|)");
    std::vector<std::pair<std::string, std::string>> rows;
    for (std::sregex_iterator match(part.begin(), part.end(), row), end; match != end; ++match) {
        rows.emplace_back((*match)[1], (*match)[2]);
    }
    return rows;
}

}  // namespace

TEST_CASE("the page lists every remark with its sentence, in the program's order, and no other") {
    std::vector<std::pair<std::string, std::string>> expected;
    for (const Remark remark : allRemarks()) expected.emplace_back(remarkId(remark), remarkSentence(remark));
    CHECK(rowsOf("Remarks") == expected);
}

TEST_CASE("the page lists every reason that the sources give for a refusal, and no other") {
    std::set<std::string> given;
    // A refusal is written as { "some-id", "Sentence" … }, with or without its type's name.
    const std::regex refusal(R"re([{(]\s*"([a-z]+(?:-[a-z]+)+)",\s*"[A-Z])re");
    for (const auto& entry : std::filesystem::recursive_directory_iterator(kSource / "src")) {
        if (entry.path().extension() != ".cpp" && entry.path().extension() != ".h") continue;
        const std::string source = contentOf(entry.path());
        for (std::sregex_iterator match(source.begin(), source.end(), refusal), end; match != end; ++match) {
            given.insert((*match)[1]);
        }
    }
    std::set<std::string> listed;
    for (const auto& [id, sentence] : rowsOf("Reasons for a refusal")) listed.insert(id);
    CHECK(listed == given);
}
