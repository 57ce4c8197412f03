// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/imaging/threads.h"

#include <opencv2/core/utility.hpp>

namespace ringrule {

void useOneThreadPerPhoto() {
    cv::setNumThreads(1);
}

}  // namespace ringrule
