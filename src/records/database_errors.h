// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include <QSqlError>

#include "records/connect_state.h"
#include "records/server_address.h"
#include "ringrule/error.h"

namespace ringrule {

/// Another program holds the database just now.
class DatabaseBusy : public Error {
public:
    using Error::Error;
};

// What a database's failures mean for a keeper. `place` is the file or address that the message names.
[[noreturn]] void throwSqliteError(const QSqlError& error, const std::string& place);
[[noreturn]] void throwServerError(const QSqlError& error, const std::string& place);
/// What to do about a connection that did not come about, as one sentence.
[[nodiscard]] std::string connectAdvice(const ConnectState& state, const ServerAddress& address);
/// A connection that did not come about: server away, wrong password, no such database.
[[noreturn]] void throwConnectError(const QSqlError& error, const ServerAddress& address);

/// Whether the server ended the connection, or cannot be reached any more.
[[nodiscard]] bool isConnectionLost(const QSqlError& error);

}  // namespace ringrule
