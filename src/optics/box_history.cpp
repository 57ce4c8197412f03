// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/box_history.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <span>

#include "optics/calendar_day.h"
#include "ringrule/imaging/content_hash.h"

namespace ringrule {
namespace {

constexpr std::array<std::string_view, 4> kStateIds{"never-checked", "passed", "failed", "stale"};
// EXIF rounds focal lengths to a tenth of a millimetre; a phone's cameras differ by far more.
constexpr double kSameFocal = 0.02;

bool contradict(const std::string& a, const std::string& b) {
    return !a.empty() && !b.empty() && a != b;
}

void put(std::string& text, double value) {
    std::array<char, 40> digits{};
    // As many digits as a box file is written with; more would tell apart what is the same.
    std::snprintf(digits.data(), digits.size(), "%.9g;", value);
    text += digits.data();
}

// A check beside its day.
struct Dated {
    const PastBoxCheck* check = nullptr;
    int day = 0;
};

// A photo that could not tell says nothing of the box.
bool tells(const PastBoxCheck& check) {
    return check.passed || check.refusalReason.empty() ||
           std::any_of(check.findings.begin(), check.findings.end(),
                       [](const BoxFinding& finding) { return finding.fails; });
}

// Telling checks with a day, the newest last; of one day, in the order given.
std::vector<Dated> telling(const std::vector<PastBoxCheck>& history) {
    std::vector<Dated> dated;
    for (const PastBoxCheck& check : history) {
        const auto on = calendarDay(check.checkedOn);
        if (on && tells(check)) dated.push_back({&check, *on});
    }
    std::stable_sort(dated.begin(), dated.end(), [](const Dated& a, const Dated& b) { return a.day < b.day; });
    return dated;
}

// Whether a check was of another box file than the one asked for; what is not known contradicts nothing.
bool ofOtherFile(const Dated& dated, std::string_view fingerprint) {
    const std::string& then = dated.check->boxFingerprint;
    return !fingerprint.empty() && !then.empty() && then != fingerprint;
}

const Dated* newest(std::span<const Dated> dated, bool withRod) {
    const auto found = std::find_if(dated.rbegin(), dated.rend(),
                                    [withRod](const Dated& d) { return d.check->rod.has_value() == withRod; });
    return found == dated.rend() ? nullptr : &*found;
}

// The first failure among later checks of the same file that reaches back before all of them: a plate that was good
// meanwhile takes back what the plate shows, a rod that read true everything.
const Dated* nextFailure(std::span<const Dated> later, std::string_view fingerprint) {
    bool plateHeld = false;
    for (const Dated& each : later) {
        if (ofOtherFile(each, fingerprint)) return nullptr;
        const bool rod = each.check->rod.has_value();
        if (!each.check->passed) return rod || !plateHeld ? &each : nullptr;
        if (rod) return nullptr;
        plateHeld = true;
    }
    return nullptr;
}

Sentence daysBefore(int days, const char* sameDay, const char* dayBefore, const char* earlier) {
    if (days == 0) return {sameDay};
    return days == 1 ? Sentence{dayBefore} : Sentence{earlier, {std::to_string(days)}};
}

// All that failed, what the rod says first: it tells most.
std::string whatFailed(const PastBoxCheck& check) {
    std::string rod, others;
    for (const BoxFinding& finding : check.findings) {
        std::string& text = finding.fault == BoxFault::LengthOff ? rod : others;
        if (finding.fails) text += (text.empty() ? "" : " ") + finding.sentence;
    }
    if (rod.empty() && others.empty()) return check.refusalSentence;
    return rod + (rod.empty() || others.empty() ? "" : " ") + others;
}

BoxJudgement stale(int age, const char* reason, Sentence sentence) {
    return {BoxState::Stale, reason, std::move(sentence), age};
}

BoxJudgement failed(const Dated& last, int day, std::string_view fingerprint) {
    if (ofOtherFile(last, fingerprint))
        return stale(day - last.day, "box-changed",
                     {"The box did not measure true at its last check, and its file was changed since. Check it with a "
                      "rod."});
    return {BoxState::Failed,
            "check-failed",
            {"The box did not measure true when it was checked on %1. %2",
             {last.check->checkedOn.substr(0, 10), whatFailed(*last.check)}},
            day - last.day};
}

// By the checks up to that day alone.
BoxJudgement judgeBefore(std::span<const Dated> dated, int day, std::string_view fingerprint, const CameraSeen& camera,
                         const BoxJudgementOptions& options) {
    if (dated.empty())
        return {BoxState::NeverChecked,
                "never-checked",
                {"This box was not checked by then. Photograph a rod of known length where the animals hang."},
                {}};
    const Dated* rod = newest(dated, true);
    const Dated* plate = newest(dated, false);
    if (rod != nullptr && !rod->check->passed) return failed(*rod, day, fingerprint);
    // A later rod that reads true outweighs what the plate alone looked like before.
    if (plate != nullptr && !plate->check->passed && (rod == nullptr || plate > rod))
        return failed(*plate, day, fingerprint);
    if (rod == nullptr)
        return stale(day - plate->day, "rod-check-missing",
                     {"Only the plate was checked: whether lengths are true only a rod of known length can tell."});
    const int age = day - rod->day;
    if (ofOtherFile(*rod, fingerprint))
        return stale(age, "box-changed", {"The box file was changed since its last rod check. Check it with a rod."});
    if (differ(rod->check->camera, camera))
        return stale(age, "camera-changed",
                     {"Another camera, or another of its lenses, than at the last rod check. Check it with a rod."});
    if (age > options.mostRodAgeDays)
        return stale(age, "check-old",
                     {"The last rod check was %1 days before. Check it with a rod each month.", {std::to_string(age)}});
    return {BoxState::Passed, "checked",
            daysBefore(age, "A rod of known length read true the same day.",
                       "A rod of known length read true the day before.",
                       "A rod of known length read true %1 days before."),
            age};
}

}  // namespace

bool differ(const CameraSeen& a, const CameraSeen& b) {
    if (contradict(a.make, b.make) || contradict(a.model, b.model)) return true;
    if (!a.focalLengthMm || !b.focalLengthMm) return false;
    return std::abs(std::log(*a.focalLengthMm / *b.focalLengthMm)) > kSameFocal;
}

std::string boxFingerprint(const Box& box) {
    std::string text = box.plate.dictionary + ';';
    for (const double each : {box.plate.widthMm, box.plate.heightMm}) put(text, each);
    for (const PlateMarker& marker : box.plate.markers) {
        for (const double each : {static_cast<double>(marker.id), marker.centreMm.x, marker.centreMm.y, marker.sideMm})
            put(text, each);
    }
    put(text, box.animalPlane.distanceFromPlateMm);
    if (box.media) {
        const Media& m = *box.media;
        text += "media;";
        for (const double each : {m.cameraToWindowMm, m.windowThicknessMm, m.windowIndex, m.waterToPlateMm})
            put(text, each);
    }
    if (box.lens) {
        const Lens& l = *box.lens;
        text += "lens;";
        for (const double each : {l.focalXPx, l.focalYPx, l.centreXPx, l.centreYPx}) put(text, each);
        for (const double each : l.distortion) put(text, each);
    }
    const auto* bytes = reinterpret_cast<const unsigned char*>(text.data());
    return sha256Hex({bytes, text.size()}).substr(0, 16);
}

std::string_view boxStateId(BoxState state) {
    return kStateIds[static_cast<std::size_t>(state)];
}

std::optional<BoxState> boxStateFromId(std::string_view id) {
    const auto found = std::find(kStateIds.begin(), kStateIds.end(), id);
    if (found == kStateIds.end()) return std::nullopt;
    return static_cast<BoxState>(found - kStateIds.begin());
}

BoxJudgement judgeBox(std::string_view fingerprint, const std::vector<PastBoxCheck>& history, std::string_view onDay,
                      const CameraSeen& camera, const BoxJudgementOptions& options) {
    const auto day = calendarDay(onDay);
    const auto dated = day ? telling(history) : std::vector<Dated>{};
    const auto split =
        std::find_if(dated.begin(), dated.end(), [&](const Dated& each) { return day && each.day > *day; });
    BoxJudgement before = judgeBefore({dated.begin(), split}, day.value_or(0), fingerprint, camera, options);
    const Dated* next = nextFailure({split, dated.end()}, fingerprint);
    if (next == nullptr || before.state == BoxState::Failed) return before;
    return {BoxState::Failed,
            "next-check-failed",
            {"The box did not measure true at its next check, on %1, and may have been off before. %2",
             {next->check->checkedOn.substr(0, 10), whatFailed(*next->check)}},
            before.ageDays};
}

}  // namespace ringrule
