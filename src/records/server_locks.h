// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace ringrule {

// Advisory locks of a collection's database on a server; "RRUL" and the next number.
inline constexpr int kWriterLock = 0x5252554c;      ///< held by the one transaction that writes
inline constexpr int kOpenLock = kWriterLock + 1;  ///< shared by all that have the collection open

}  // namespace ringrule
