// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/paper.h"

#include <algorithm>
#include <cctype>
#include <string>

#include "ringrule/error.h"

namespace ringrule {

PaperSize paperSize(Paper paper) {
    return paper == Paper::A4 ? PaperSize{210.0, 297.0} : PaperSize{215.9, 279.4};
}

std::string_view paperName(Paper paper) {
    return paper == Paper::A4 ? "A4" : "Letter";
}

Paper paperNamed(std::string_view name) {
    std::string small(name);
    std::transform(small.begin(), small.end(), small.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    if (small == "a4") return Paper::A4;
    if (small == "letter") return Paper::Letter;
    throw Error(ErrorKind::BadUse, "\"" + std::string(name) + "\" is no paper that Ringrule knows: a4 or letter");
}

}  // namespace ringrule
