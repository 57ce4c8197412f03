// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace ringrule {

/// Where a PostgreSQL database is: `postgresql://USER@HOST:PORT/DATABASE`, everything but the database may be left out
/// (see libpq, section "Connection URIs"). Without a password: that comes from the usual password file.
struct ServerAddress {
    std::string text;  ///< as it was written
    std::string host;  ///< empty: the local socket
    int port = -1;     ///< −1: the usual one
    std::string database;
    std::string user;     ///< empty: that of the system
    std::string options;  ///< of the connection, as Qt's driver takes them
};

/// Whether a text is meant as an address and not as a folder.
[[nodiscard]] bool isServerAddress(const std::string& text);

/// Takes an address apart. Throws `Error(BadUse)` for one that is malformed, names no database, or holds a password.
[[nodiscard]] ServerAddress readServerAddress(const std::string& text);

}  // namespace ringrule
