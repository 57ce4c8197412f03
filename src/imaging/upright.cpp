// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/imaging/upright.h"

namespace ringrule {

cv::Mat turnedUpright(const cv::Mat& stored, int exifOrientation) {
    cv::Mat upright;
    switch (exifOrientation) {
        case 2:
            cv::flip(stored, upright, 1);
            break;
        case 3:
            cv::flip(stored, upright, -1);
            break;
        case 4:
            cv::flip(stored, upright, 0);
            break;
        case 5:
            cv::transpose(stored, upright);
            break;
        case 6:
            cv::rotate(stored, upright, cv::ROTATE_90_CLOCKWISE);
            break;
        case 7:
            cv::transpose(stored, upright);
            cv::flip(upright, upright, -1);
            break;
        case 8:
            cv::rotate(stored, upright, cv::ROTATE_90_COUNTERCLOCKWISE);
            break;
        default:
            upright = stored;
            break;
    }
    return upright;
}

}  // namespace ringrule
