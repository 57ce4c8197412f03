// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/remark.h"

#include <algorithm>
#include <array>

namespace ringrule {
namespace {

struct Entry {
    Remark remark;
    std::string_view id;
    std::string_view sentence;
};

constexpr std::array kEntries{
    Entry{Remark::NoLens, "no-lens",
          "The box file has no lens: distortion is not corrected and the interval is wider. Calibrate the lens."},
    Entry{Remark::NoMedia, "no-media",
          "The box file has no media: refraction is not corrected and the interval is wider. Measure the box."},
    Entry{Remark::LensScaled, "lens-scaled",
          "The photo has another size than the lens photos, in the same proportion: the lens was scaled to it."},
    Entry{Remark::LensOtherSize, "lens-other-size",
          "The photo's proportions differ from the lens photos': the lens was not used. Use the same camera setting."},
    Entry{Remark::LensOtherCamera, "lens-other-camera",
          "The photo is from another camera than the lens photos: the lens was not used. Use that camera, or calibrate the "
          "lens of this one."},
    Entry{Remark::LensOtherSetting, "lens-other-setting",
          "The photo has another focal length than the lens photos: the lens was not used. Set zoom and camera as then."},
    Entry{Remark::MarkersMissing, "markers-missing",
          "Some of the plate's markers were not found. Uncover and clean the plate."},
    Entry{Remark::PlateTilted, "plate-tilted", "The camera stood oblique to the plate. Square it up."},
    Entry{Remark::PlateUpsideDown, "plate-upside-down",
          "The plate stands upside down in the photo. Lengths hold; turn the plate or the camera."},
    Entry{Remark::NoTimeInPhoto, "no-time", "The photo does not say when it was taken. Set the camera's clock."},
    Entry{Remark::NoCard, "no-card", "No animal card was found in the photo. Say which animal it is."},
    Entry{Remark::SeveralCards, "several-cards", "More than one animal card is in the photo. Say which animal it is."},
    Entry{Remark::SeveralAnimals, "several-animals",
          "More than one animal is in the photo: the card cannot tell whose is whose. Say which is which."},
    Entry{Remark::Blurred, "blurred", "The photo is blurred against the animal's size. Focus on the animal and repeat."},
    Entry{Remark::SmallInFrame, "small-in-frame",
          "The animal is small in the photo: the interval is wide. Move the camera nearer."},
    Entry{Remark::Glare, "glare", "Glare cuts into the animal's outline. Move the light and repeat."},
    Entry{Remark::BadExposure, "bad-exposure", "The photo is too dark or too light. Correct the exposure and repeat."},
    Entry{Remark::CutOff, "cut-off", "The animal reaches the edge of the photo or of the plate. Centre it and repeat."},
    Entry{Remark::TooBent, "too-bent", "The trunk is bent too much for a fair depth. Wait until it straightens."},
    Entry{Remark::TailClosed, "tail-closed",
          "The tail closes on itself and hides length. Wait until it opens by itself; never force it."},
    Entry{Remark::TailHalfCurled, "tail-half-curled",
          "The tail is curled; its gaps are seen and the length was followed round."},
    Entry{Remark::OutlineDoubtful, "outline-doubtful",
          "The outline does not agree with a body along its midline. Look at the overlay before you believe it."},
    Entry{Remark::BeforeDarkPlate, "before-dark-plate",
          "Before a dark plate an eye or a fin can spoil the outline. Look at the overlay before you believe it."},
    Entry{Remark::SeenByColour, "seen-by-colour",
          "The animal is nearly as pale as the plate: its outline was seen by colour alone. Look at the overlay before "
          "you believe it, or use a dark plate."},
    Entry{Remark::HeadEndGuessed, "head-guessed", "Which end is the head is not certain. Check the landmarks."},
    Entry{Remark::FinBaseUncertain, "fin-base-uncertain",
          "The base of the caudal fin was not seen clearly: the tail's end is less certain."},
    Entry{Remark::WidthFromShape, "width-from-shape",
          "Girth uses the shape's usual width, not a second view. Add a photo from above or from the front."},
    Entry{Remark::WidthFromSecondView, "width-from-second-view", "Girth uses the width seen in the second view."},
    Entry{Remark::NotOnGirth, "not-on-girth", "Brooding or carrying: this animal is not judged on girth."},
    Entry{Remark::MovedByHand, "moved-by-hand", "A person moved a landmark."},
    Entry{Remark::OutlinedByHand, "outlined-by-hand", "A person drew, cut or joined a part of the outline."},
    Entry{Remark::ShapeGuessed, "shape-guessed", "The animal's shape was told from its outline and is not certain."},
    Entry{Remark::BoxCheckFailed, "box-check-failed",
          "The box did not measure true in the check before or after. Mend it, check it, and measure again."},
    Entry{Remark::BoxCheckStale, "box-check-stale",
          "No rod check stands for this measure: the last is too old, or the box file or the camera was changed "
          "since. Check it with a rod."},
};

const Entry& entryOf(Remark remark) {
    return *std::find_if(kEntries.begin(), kEntries.end(), [&](const Entry& e) { return e.remark == remark; });
}

}  // namespace

std::string_view remarkId(Remark remark) { return entryOf(remark).id; }

std::string_view remarkSentence(Remark remark) { return entryOf(remark).sentence; }

std::optional<Remark> remarkFromId(std::string_view id) {
    const auto found = std::find_if(kEntries.begin(), kEntries.end(), [&](const Entry& e) { return e.id == id; });
    return found == kEntries.end() ? std::nullopt : std::optional(found->remark);
}

const std::vector<Remark>& allRemarks() {
    static const std::vector<Remark> remarks = [] {
        std::vector<Remark> all;
        for (const Entry& entry : kEntries) all.push_back(entry.remark);
        return all;
    }();
    return remarks;
}

}  // namespace ringrule
