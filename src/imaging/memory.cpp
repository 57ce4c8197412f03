// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/imaging/memory.h"

#include <cstdlib>  // defines __GLIBC__ where that is the C library

#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace ringrule {

void keepLargePagesMapped() {
#ifdef __GLIBC__
    // glibc caps the mapping threshold at 32 MB, less than a 12-megapixel colour image: switch mapping off instead.
    mallopt(M_MMAP_MAX, 0);
    mallopt(M_TRIM_THRESHOLD, 1 << 30);
    mallopt(M_TOP_PAD, 16 << 20);
    // A thread's own arena consists of 64 MB heaps that are unmapped as soon as they are empty; the main one only
    // grows.
    mallopt(M_ARENA_MAX, 1);
#endif
}

}  // namespace ringrule
