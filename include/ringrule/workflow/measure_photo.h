// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "ringrule/imaging/photo.h"
#include "ringrule/measure/measure.h"
#include "ringrule/measure/measurement.h"
#include "ringrule/midline/landmarks.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/optics/scale.h"
#include "ringrule/outcome.h"
#include "ringrule/outline/empty_box.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

struct PhotoOptions {
    Shape shape = Shape::Unknown;  ///< Unknown: by the card, or else told from the outline
    View view = View::Side;
    std::map<int, Shape> shapeByCard;  ///< what is known of the animals whose cards may be seen
    std::shared_ptr<const EmptyBox> emptyBox{};  ///< what the plate shows without animals, if a photo tells
};

/// One animal of a photo, with all that is needed to measure it again after a landmark is moved.
struct AnimalReading {
    int index = 0;
    std::optional<int> card;
    Outline outline;
    Anatomy anatomy;
    Measurement measurement;
};

/// All that one photo gave. `refusal` is set when the photo as a whole could not be measured (no plate, no animal).
struct PhotoReading {
    std::filesystem::path path;
    std::string contentHash;
    std::optional<std::string> takenAt;
    int widthPx = 0;
    int heightPx = 0;
    std::string boxName;
    View view = View::Side;
    double distanceFromPlateMm = 0.0;  ///< of the animal's plane, as the box says
    std::optional<Scale> scale;
    std::vector<int> cards;              ///< animal cards in the photo, left to right
    std::vector<AnimalReading> animals;  ///< left to right
    std::vector<Remark> remarks;         ///< of the photo as a whole; each measurement repeats them
    std::optional<Refusal> refusal;
};

/// The whole chain over one photo. Throws `Error(BadPhoto)`; everything else is in the reading.
[[nodiscard]] PhotoReading measurePhoto(const std::filesystem::path& path, const Box& box,
                                        const PhotoOptions& options = {});

/// The animal measured again with one landmark moved. Precondition: `reading.scale` is set.
[[nodiscard]] AnimalReading withLandmarkMoved(const PhotoReading& reading, const AnimalReading& animal,
                                              LandmarkName name, PixelPoint atPx);

/// The animal measured again with another outline: midline, landmarks and measures anew, landmarks that were moved by
/// hand kept where they were put. `photo` is the reading's own (`loadPhoto`). Precondition: `reading.scale` is set.
[[nodiscard]] AnimalReading withOutline(const Photo& photo, const PhotoReading& reading, const AnimalReading& animal,
                                        const Outline& outline, const PhotoOptions& options = {});

/// The reading with the animals at `replaced` (indices, each below `reading.animals.size()`) taken out and one animal
/// for each of `outlines` put in, left to right: a cut takes one out and puts two in, a join the reverse, debris is
/// taken out for nothing, and an animal that was missed is traced and put in for nothing. Cards and remarks of the photo
/// follow the new number of animals; animals that are not replaced keep their corrections. Precondition: `reading.scale`
/// is set.
[[nodiscard]] PhotoReading withOutlines(const Photo& photo, const PhotoReading& reading,
                                        const std::vector<std::size_t>& replaced, const std::vector<Outline>& outlines,
                                        const PhotoOptions& options = {});

}  // namespace ringrule
