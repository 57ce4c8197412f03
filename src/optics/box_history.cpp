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
    return check.passed || std::any_of(check.findings.begin(), check.findings.end(),
                                       [](const BoxFinding& finding) { return finding.fails; });
}

// Telling checks on or before that day, the newest last; of one day, in the order given.
std::vector<Dated> upTo(const std::vector<PastBoxCheck>& history, int day) {
    std::vector<Dated> dated;
    for (const PastBoxCheck& check : history) {
        const auto on = calendarDay(check.checkedOn);
        if (on && *on <= day && tells(check)) dated.push_back({&check, *on});
    }
    std::stable_sort(dated.begin(), dated.end(), [](const Dated& a, const Dated& b) { return a.day < b.day; });
    return dated;
}

const Dated* newest(const std::vector<Dated>& dated, bool withRod) {
    const auto found = std::find_if(dated.rbegin(), dated.rend(),
                                    [withRod](const Dated& d) { return d.check->rod.has_value() == withRod; });
    return found == dated.rend() ? nullptr : &*found;
}

std::string daysAgo(int days) {
    if (days == 0) return "the same day";
    return days == 1 ? "the day before" : std::to_string(days) + " days before";
}

std::string whatFailed(const PastBoxCheck& check) {
    for (const BoxFinding& finding : check.findings) {
        if (finding.fails) return finding.sentence;
    }
    return check.refusalSentence;
}

BoxJudgement stale(int age, const char* reason, std::string sentence) {
    return {BoxState::Stale, reason, std::move(sentence), age};
}

BoxJudgement failed(const Dated& last, int day, const std::string& fingerprint) {
    if (last.check->boxFingerprint != fingerprint)
        return stale(day - last.day, "box-changed",
                     "The box did not measure true at its last check, and its file was changed since. Check it with a "
                     "rod.");
    return {BoxState::Failed, "check-failed",
            "The box did not measure true when it was checked (" + daysAgo(day - last.day) + "). " +
                whatFailed(*last.check),
            day - last.day};
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

BoxJudgement judgeBox(const Box& box, const std::vector<PastBoxCheck>& history, std::string_view onDay,
                      const CameraSeen& camera, const BoxJudgementOptions& options) {
    const auto day = calendarDay(onDay);
    const auto dated = day ? upTo(history, *day) : std::vector<Dated>{};
    if (dated.empty())
        return {BoxState::NeverChecked,
                "never-checked",
                "This box was not checked by then. Photograph a rod of known length where the animals hang.",
                {}};
    const std::string fingerprint = boxFingerprint(box);
    const Dated* rod = newest(dated, true);
    const Dated* plate = newest(dated, false);
    if (rod != nullptr && !rod->check->passed) return failed(*rod, *day, fingerprint);
    // A later rod that reads true outweighs what the plate alone looked like before.
    if (plate != nullptr && !plate->check->passed && (rod == nullptr || plate > rod))
        return failed(*plate, *day, fingerprint);
    if (rod == nullptr)
        return stale(*day - plate->day, "rod-check-missing",
                     "Only the plate was checked: whether lengths are true only a rod of known length can tell.");
    const int age = *day - rod->day;
    if (rod->check->boxFingerprint != fingerprint)
        return stale(age, "box-changed", "The box file was changed since its last rod check. Check it with a rod.");
    if (differ(rod->check->camera, camera))
        return stale(age, "camera-changed",
                     "Another camera, or another of its lenses, than at the last rod check. Check it with a rod.");
    if (age > options.mostRodAgeDays)
        return stale(age, "check-old", "The last rod check was " + daysAgo(age) + ". Check it with a rod each month.");
    return {BoxState::Passed, "checked", "A rod of known length read true " + daysAgo(age) + ".", age};
}

}  // namespace ringrule
