// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "records/server_address.h"

namespace ringrule {

/// Why a server did not let a program in.
struct ConnectState {
    bool known = false;          ///< the client library could be asked at all
    bool lacksPassword = false;  ///< the server asked for a password and none was found
    std::string sqlstate;        ///< what the server said (PostgreSQL, appendix A); empty: it was not reached
};

/// Asks once more, and for the code rather than for words: Qt hands on words alone, which a server and the client
/// library say in whatever language they are set to. Waits ten seconds at most.
[[nodiscard]] ConnectState connectStateOf(const ServerAddress& address);

}  // namespace ringrule
