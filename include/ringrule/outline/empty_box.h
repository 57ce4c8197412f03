// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "ringrule/imaging/photo.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/scale.h"
#include "ringrule/outcome.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

/// A photo without what the empty box shows as well. Cheap to copy.
class ClearedPhoto {
public:
    [[nodiscard]] const Photo& photo() const;

    /// The outline drawn straight where it crosses what was filled in: there no edge was seen. Where it runs along such
    /// a place for more than 3 mm it stays, and the outline says that it is doubtful.
    [[nodiscard]] Outline settled(Outline outline) const;

private:
    friend class EmptyBox;
    struct State;
    explicit ClearedPhoto(std::shared_ptr<const State> state) : state_(std::move(state)) {}
    std::shared_ptr<const State> state_;
};

/// What the plate shows without animals, from a photo of the empty box: its print, stains and scratches. They are told
/// in the plate's own millimetres, so camera and box may have moved a little since. Cheap to copy.
class EmptyBox {
public:
    /// Refuses with "empty-box-unclear" when the plate's own light cannot be told in the photo.
    [[nodiscard]] static Outcome<EmptyBox> fromPhoto(const Photo& photo, const Box& box, const FoundPlate& plate,
                                                     const Scale& scale);

    /// The photo with what the empty box shows as well taken out of its grey picture: stains are divided away, dark
    /// print is filled in from beside it, on animals too. Markers stay. Colour and file are left as they are.
    [[nodiscard]] ClearedPhoto takenOutOf(const Photo& photo, const Box& box, const FoundPlate& plate,
                                          const Scale& scale) const;

private:
    struct State;
    explicit EmptyBox(std::shared_ptr<const State> state) : state_(std::move(state)) {}
    std::shared_ptr<const State> state_;
};

}  // namespace ringrule
