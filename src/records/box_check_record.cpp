// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/box_check_record.h"

#include <sstream>
#include <string_view>

#include "ringrule/records/box_check_history.h"

namespace ringrule {
namespace {

constexpr std::string_view kFails = "fails ", kNote = "note ";

std::optional<BoxFinding> findingIn(const std::string& line) {
    const bool fails = line.starts_with(kFails);
    if (!fails && !line.starts_with(kNote)) return std::nullopt;
    const std::string rest = line.substr(fails ? kFails.size() : kNote.size());
    for (const BoxFault fault : allBoxFaults()) {
        const std::string id = std::string(boxFaultId(fault)) + ": ";
        if (rest.starts_with(id)) return BoxFinding{fault, fails, rest.substr(id.size())};
    }
    return std::nullopt;
}

}  // namespace

std::string_view boxVerdictName(BoxVerdict verdict) {
    switch (verdict) {
        case BoxVerdict::Holds:
            return "holds";
        case BoxVerdict::Fails:
            return "fails";
        case BoxVerdict::CannotTell:
            break;
    }
    return "cannot-tell";
}

std::string boxFindingLine(const BoxFinding& finding) {
    return std::string(finding.fails ? kFails : kNote) + std::string(boxFaultId(finding.fault)) + ": " +
           finding.sentence;
}

PastBoxCheck pastBoxCheck(const BoxCheckRecord& record) {
    PastBoxCheck past;
    past.checkedOn = record.at.substr(0, 10);
    past.passed = record.verdict == BoxVerdict::Holds;
    past.boxFingerprint = record.boxFingerprint;
    past.camera = {record.cameraMake, record.cameraModel, record.focalLengthMm};
    if (record.rodMm && record.readMm)
        past.rod = PastRodReading{*record.rodMm, *record.readMm, record.readU95Mm.value_or(0.0),
                                  record.trueWithin.value_or(0.0)};
    std::istringstream lines(record.sentences);
    for (std::string line; std::getline(lines, line);) {
        if (auto finding = findingIn(line)) {
            past.findings.push_back(std::move(*finding));
        } else {
            past.refusalSentence += (past.refusalSentence.empty() ? "" : " ") + line;
        }
    }
    if (record.verdict == BoxVerdict::CannotTell) past.refusalReason = "cannot-tell";
    return past;
}

std::vector<PastBoxCheck> boxHistory(const Store& store, const std::string& boxName) {
    std::vector<PastBoxCheck> history;
    for (const BoxCheckRecord& record : store.boxChecks(boxName)) history.push_back(pastBoxCheck(record));
    return history;
}

}  // namespace ringrule
