// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/typed_records.h"

#include <cmath>

#include "records/polyline_text.h"
#include "records/record_values.h"
#include "ringrule/error.h"

namespace ringrule {

void FieldWriter::operator()(const char* name, const std::string& value) {
    if (!value.empty()) record_.values[name] = value;
}
void FieldWriter::operator()(const char* name, double value) {
    if (!std::isnan(value)) record_.values[name] = shortNumber(value);
}
void FieldWriter::operator()(const char* name, bool value) {
    record_.values[name] = value ? "true" : "false";
}
void FieldWriter::operator()(const char* name, int value) {
    record_.values[name] = std::to_string(value);
}
void FieldWriter::operator()(const char* name, Date value) {
    record_.values[name] = formatDate(value);
}
void FieldWriter::operator()(const char* name, Sex value) {
    record_.values[name] = value == Sex::Female ? "female" : value == Sex::Male ? "male" : "unknown";
}
void FieldWriter::operator()(const char* name, BoxVerdict value) {
    record_.values[name] = std::string(boxVerdictName(value));
}
void FieldWriter::operator()(const char* name, const std::vector<std::string>& value) {
    record_.values[name] = textOfWords(value);
}

void FieldReader::operator()(const char* name, std::string& value) const {
    value = record_.text(name);
}
void FieldReader::operator()(const char* name, double& value) const {
    if (const std::string text = record_.text(name); !text.empty()) value = numberOf(text);
}
void FieldReader::operator()(const char* name, bool& value) const {
    value = record_.text(name) == "true";
}
void FieldReader::operator()(const char* name, int& value) const {
    if (const std::string text = record_.text(name); !text.empty()) value = std::stoi(text);
}
void FieldReader::operator()(const char* name, Date& value) const {
    const std::string text = record_.text(name);
    if (text.empty()) return;
    const auto date = parseDate(text);
    if (!date) throw Error(ErrorKind::BadStore, "the collection holds \"" + text + "\" where a day should be");
    value = *date;
}
void FieldReader::operator()(const char* name, Sex& value) const {
    const std::string word = record_.text(name);
    value = word == "female" ? Sex::Female : word == "male" ? Sex::Male : Sex::Unknown;
}
void FieldReader::operator()(const char* name, BoxVerdict& value) const {
    const std::string word = record_.text(name);
    value = word == "holds" ? BoxVerdict::Holds : word == "fails" ? BoxVerdict::Fails : BoxVerdict::CannotTell;
}
void FieldReader::operator()(const char* name, std::vector<std::string>& value) const {
    if (const std::string text = record_.text(name); !text.empty()) value = wordsOfText(text);
}

}  // namespace ringrule
