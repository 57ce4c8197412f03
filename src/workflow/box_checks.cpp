// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/box_checks.h"

namespace ringrule {
namespace {

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
    record.cameraMake = past.camera.make;
    record.cameraModel = past.camera.model;
    record.focalLengthMm = past.camera.focalLengthMm;
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
    for (const BoxFinding& finding : past.findings) lines += boxFindingLine(finding) + "\n";
    if (check.refusal) lines += check.refusal->sentence + "\n";
    if (!lines.empty()) lines.pop_back();
    record.sentences = lines;
    return record;
}

}  // namespace ringrule
