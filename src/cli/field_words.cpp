// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/field_words.h"

#include "ringrule/error.h"

namespace ringrule::cli {

std::map<std::string, std::string> fieldWords(const std::vector<std::string>& words) {
    std::map<std::string, std::string> fields;
    for (const std::string& word : words) {
        const auto sign = word.find('=');
        if (sign == std::string::npos || sign == 0)
            throw Error(ErrorKind::BadUse, "\"" + word +
                                               "\" is not NAME=VALUE; give each as one word, in quotes if it "
                                               "has spaces");
        fields[word.substr(0, sign)] = word.substr(sign + 1);
    }
    return fields;
}

}  // namespace ringrule::cli
