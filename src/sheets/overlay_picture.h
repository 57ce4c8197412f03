// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QImage>
#include <QSizeF>
#include <filesystem>
#include <span>

#include "ringrule/sheets/overlay.h"

namespace ringrule {

/// The photo, upright and cut to its animals, as large as `largest` allows, with outline, midline, half-widths and
/// landmarks drawn over it. Throws `Error(BadPhoto)`.
[[nodiscard]] QImage overlayPicture(const std::filesystem::path& photo, std::span<const OverlayAnimal> animals,
                                    QSizeF largest);

}  // namespace ringrule
