// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/connect_state.h"

#include <algorithm>
#include <cctype>
#include <chrono>

#include <poll.h>
#include <QLibrary>

namespace ringrule {
namespace {

struct Connection;

// Of libpq-fe.h, the same since version 12 of the library: enum values are part of its binary interface.
constexpr int kPollingFailed = 0;
constexpr int kPollingReading = 1;
constexpr int kPollingOk = 3;
constexpr int kErrorsSqlstate = 3;

/// The client library that Qt's driver has loaded already.
class Client {
public:
    Client() : library_(QStringLiteral("pq"), 5) {}

    template <class Function>
    [[nodiscard]] Function find(const char* name) {
        return reinterpret_cast<Function>(library_.resolve(name));
    }

private:
    QLibrary library_;
};

/// The code at the end of a line such as "… FATAL:  28P01", or nothing.
std::string codeIn(const std::string& text) {
    std::string line = text.substr(0, text.find('\n'));
    while (!line.empty() && line.back() == ' ') line.pop_back();
    if (line.size() < 7) return {};
    const std::string code = line.substr(line.size() - 5);
    const bool isCode = line[line.size() - 6] == ' ' && std::all_of(code.begin(), code.end(), [](unsigned char c) {
                            return std::isdigit(c) != 0 || std::isupper(c) != 0;
                        });
    return isCode ? code : std::string();
}

/// Waits until the connection's socket is ready, or ten seconds are over.
bool wait(int socket, bool reading, std::chrono::steady_clock::time_point end) {
    const auto left =
        std::chrono::duration_cast<std::chrono::milliseconds>(end - std::chrono::steady_clock::now()).count();
    pollfd one{socket, static_cast<short>(reading ? POLLIN : POLLOUT), 0};
    return left > 0 && ::poll(&one, 1, static_cast<int>(left)) > 0;
}

}  // namespace

ConnectState connectStateOf(const ServerAddress& address) {
    Client client;
    const auto start = client.find<Connection* (*)(const char*)>("PQconnectStart");
    const auto poll = client.find<int (*)(Connection*)>("PQconnectPoll");
    const auto socket = client.find<int (*)(const Connection*)>("PQsocket");
    const auto say = client.find<int (*)(Connection*, int)>("PQsetErrorVerbosity");
    const auto message = client.find<const char* (*)(const Connection*)>("PQerrorMessage");
    const auto needsPassword = client.find<int (*)(const Connection*)>("PQconnectionNeedsPassword");
    const auto finish = client.find<void (*)(Connection*)>("PQfinish");
    if (!start || !poll || !socket || !say || !message || !needsPassword || !finish) return {};
    Connection* const connection = start(address.text.c_str());
    if (connection == nullptr) return {};
    say(connection, kErrorsSqlstate);
    const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(10);
    int state = 2;  // writing, as the library asks for the first time
    while (state != kPollingOk && state != kPollingFailed && wait(socket(connection), state == kPollingReading, end))
        state = poll(connection);
    ConnectState found{true, needsPassword(connection) != 0, {}};
    if (state != kPollingOk) found.sqlstate = codeIn(message(connection));
    finish(connection);
    return found;
}

}  // namespace ringrule
