// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace ringrule {

/// Tells the C library's allocator to keep the memory of freed images for the next ones. By default each large image is
/// mapped anew and its pages are faulted in one by one, which costs more than most work on the pixels. Call once at the
/// start of `main`, before any thread is started. Does nothing where the allocator has no such setting.
void keepLargePagesMapped();

}  // namespace ringrule
