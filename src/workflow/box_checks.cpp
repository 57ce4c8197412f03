// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/box_checks.h"

#include <array>
#include <optional>
#include <sstream>
#include <string_view>

namespace ringrule {
namespace {

constexpr std::string_view kFails = "fails ", kNote = "note ";

std::string lineOf(const BoxFinding& finding) {
    return std::string(finding.fails ? kFails : kNote) + std::string(boxFaultId(finding.fault)) + ": " +
           finding.sentence;
}

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

PastBoxCheck fromRecord(const BoxCheckRecord& record) {
    PastBoxCheck past;
    past.checkedOn = record.at.substr(0, 10);
    past.passed = record.verdict == BoxVerdict::Holds;
    past.boxFingerprint = record.boxFingerprint;
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

// A plate that is off makes the verdict, whatever else the photo could not tell.
BoxVerdict verdictOf(const BoxCheck& check) {
    if (check.holds()) return BoxVerdict::Holds;
    if (check.plate && !check.plate->holds()) return BoxVerdict::Fails;
    return check.refusal ? BoxVerdict::CannotTell : BoxVerdict::Fails;
}

std::string dayOf(const BoxCheck& check, const std::string& today) {
    return check.takenAt.empty() ? today : check.takenAt;
}

}  // namespace

PastBoxCheck pastBoxCheck(const BoxCheck& check, const Box& box, const std::string& today) {
    PastBoxCheck past;
    past.checkedOn = dayOf(check, today).substr(0, 10);
    past.passed = check.holds();
    past.camera = check.camera;
    past.boxFingerprint = boxFingerprint(box);
    if (check.plate) past.findings = check.plate->findings;
    if (check.rod) {
        const RodCheck& rod = *check.rod;
        past.rod = PastRodReading{rod.statedMm, rod.reading.lengthMm.value, rod.reading.lengthMm.u95(), rod.trueWithin};
        if (rod.finding) past.findings.push_back(*rod.finding);
    }
    if (check.refusal) {
        past.refusalReason = check.refusal->reason;
        past.refusalSentence = check.refusal->sentence;
    }
    return past;
}

BoxCheckRecord boxCheckRecord(const BoxCheck& check, const Box& box, const std::filesystem::path& photo, bool withRod,
                              const std::string& today) {
    const PastBoxCheck past = pastBoxCheck(check, box, today);
    BoxCheckRecord record;
    record.at = dayOf(check, today);
    record.boxName = box.name;
    record.withRod = withRod;
    record.verdict = verdictOf(check);
    record.photoName = photo.filename().string();
    record.photoHash = check.photoHash;
    record.boxFingerprint = past.boxFingerprint;
    if (check.plate) {
        record.markerRmsPx = check.plate->cornerRmsPx;
        record.tiltDegrees = check.plate->tiltDegrees;
        record.cameraToWindowMm = check.plate->cameraToWindowMm;
    }
    if (past.rod) {
        record.rodMm = past.rod->statedMm;
        record.readMm = past.rod->readMm;
        record.readU95Mm = past.rod->u95Mm;
        record.trueWithin = past.rod->trueWithin;
    }
    std::string lines;
    for (const BoxFinding& finding : past.findings) lines += lineOf(finding) + "\n";
    if (check.refusal) lines += check.refusal->sentence + "\n";
    if (!lines.empty()) lines.pop_back();
    record.sentences = lines;
    return record;
}

std::vector<PastBoxCheck> boxHistory(const Store& store, const std::string& boxName) {
    std::vector<PastBoxCheck> history;
    for (const BoxCheckRecord& record : store.boxChecks(boxName)) history.push_back(fromRecord(record));
    return history;
}

}  // namespace ringrule
