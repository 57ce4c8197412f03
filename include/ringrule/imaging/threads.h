// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace ringrule {

/// Tells the image routines to work each photo on the thread that calls them. Photos side by side, one thread each, are
/// faster than many threads inside one photo. Call before the threads are started.
void useOneThreadPerPhoto();

}  // namespace ringrule
