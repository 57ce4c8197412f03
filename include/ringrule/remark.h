// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace ringrule {

/// What a reader of a measure must know beside its number. A closed list: ids and sentences are in `src/remark.cpp`, the
/// list for users in `docs/remarks.md`.
enum class Remark {
    NoLens,             ///< box file without lens: distortion not corrected, uncertainty widened
    NoMedia,            ///< box file without media: refraction not corrected, uncertainty widened
    LensScaled,         ///< the photo is smaller or larger than the lens photos, in the same proportion
    LensOtherSize,      ///< the photo's proportions differ from the lens photos': lens not used
    LensOtherCamera,    ///< EXIF names another camera than that of the lens photos: lens not used
    LensOtherSetting,   ///< EXIF tells another focal length than that of the lens photos: lens not used
    MarkersMissing,     ///< some of the plate's markers were not found
    PlateTilted,        ///< the camera stood oblique to the plate
    PlateUpsideDown,    ///< the plate's top is at the bottom of the photo
    NoTimeInPhoto,      ///< the photo carries no time of exposure
    NoCard,             ///< no animal card in the photo
    SeveralCards,       ///< more than one animal card in the photo
    SeveralAnimals,     ///< more than one animal in the photo: the card cannot say whose is whose
    Blurred,            ///< edges are soft against the animal's size
    SmallInFrame,       ///< under 400 px long or under 40 px deep: uncertainty is large
    Glare,              ///< highlights cut into the animal's outline
    BadExposure,        ///< too dark or too light
    CutOff,             ///< the animal reaches the edge of the photo or of the plate
    TooBent,            ///< posture bends the trunk too much for a fair depth
    TailClosed,         ///< the tail closes on itself: no standard length
    TailHalfCurled,     ///< the tail is curled but its gaps are seen: length followed round
    OutlineDoubtful,    ///< the outline does not agree with the body swept along the midline
    BeforeDarkPlate,    ///< a dark plate hides eyes and half transparent fins: a person looks at the outline
    SeenByColour,       ///< as pale as the plate: the outline was told by colour, which is rougher
    HeadEndGuessed,     ///< the two ends look alike: which is the head is not certain
    FinBaseUncertain,   ///< the base of the caudal fin was not seen: tail end placed at the tip
    WidthFromShape,     ///< girth used the shape's usual width-to-depth ratio, not a second view
    WidthFromSecondView,  ///< girth used the trunk width of a second view
    NotOnGirth,         ///< brooding or carrying: never judge this animal on girth
    MovedByHand,        ///< a landmark was moved by a person
    OutlinedByHand,     ///< a part of the outline was drawn, cut or joined by a person
    ShapeGuessed,       ///< shape not told and not clear
    BoxCheckFailed,     ///< the box did not measure true in the check before or after
    BoxCheckStale,      ///< the box was checked too long before
};

/// Stable id of a remark, e.g. "no-lens".
[[nodiscard]] std::string_view remarkId(Remark remark);

/// One plain sentence for a keeper that says what the remark means and what to do.
[[nodiscard]] std::string_view remarkSentence(Remark remark);

/// The remark with this id, or nothing.
[[nodiscard]] std::optional<Remark> remarkFromId(std::string_view id);

/// Every remark, in the order of the list for users.
[[nodiscard]] const std::vector<Remark>& allRemarks();

}  // namespace ringrule
