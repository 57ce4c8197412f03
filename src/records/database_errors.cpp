// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/database_errors.h"

#include <filesystem>

#include "ringrule/error.h"

namespace ringrule {
namespace {

// Result codes of SQLite's C interface; the driver hands on extended codes, the low byte is the kind.
constexpr int kBusy = 5;
constexpr int kReadOnly = 8;
constexpr int kInputOutput = 10;
constexpr int kCorrupt = 11;
constexpr int kFull = 13;
constexpr int kCannotOpen = 14;
constexpr int kConstraint = 19;
constexpr int kForeignKey = 787;
constexpr int kNotADatabase = 26;

constexpr const char* kLinkMissing =
    "other records name it, or it names one that is not there; remove or change those first";
constexpr const char* kMayOnlyRead = "the collection may only be read here; ask for the right to write it";

constexpr const char* kDiskFull = "the disk is full: nothing was changed; make room and try again";

/// SQLite says "disk I/O error" when it cannot make its files beside a database for want of room: 32 kB and more.
bool isFull(const std::string& place) {
    std::error_code error;
    const auto space = std::filesystem::space(std::filesystem::path(place).parent_path(), error);
    return !error && space.available < (1U << 20U);
}

/// The first line of what the database itself says.
std::string saying(const QSqlError& error) {
    const QString text = error.databaseText().isEmpty() ? error.text() : error.databaseText();
    return text.section('\n', 0, 0).trimmed().toStdString();
}

}  // namespace

void throwSqliteError(const QSqlError& error, const std::string& place) {
    const std::string text = saying(error);
    const int code = error.nativeErrorCode().toInt();
    switch (code & 0xff) {
        case kFull:
            throw Error(ErrorKind::NoSpace, kDiskFull, place);
        case kInputOutput:
            if (isFull(place)) throw Error(ErrorKind::NoSpace, kDiskFull, place);
            throw Error(ErrorKind::BadStore,
                        "the disk does not answer as it should: see that it is connected and whole, then try again (" +
                            text + ")",
                        place);
        case kBusy:
            throw DatabaseBusy(ErrorKind::BadStore,
                               "another program is writing to this collection; try again in a moment", place);
        case kReadOnly:
            throw Error(ErrorKind::BadStore, kMayOnlyRead, place);
        case kCannotOpen:
            throw Error(ErrorKind::BadStore,
                        "the database cannot be opened; see that the folder is there and may be written to", place);
        case kCorrupt:
        case kNotADatabase:
            throw Error(ErrorKind::BadStore, "the collection's database is damaged; restore it from a backup", place);
        case kConstraint:
            if (code == kForeignKey) throw Error(ErrorKind::BadData, kLinkMissing);
            throw Error(ErrorKind::BadData, "the collection refused it (" + text + ")");
        default:
            throw Error(ErrorKind::BadStore, "the collection refused a change (" + text + ")", place);
    }
}

bool isConnectionLost(const QSqlError& error) {
    // SQLSTATE (PostgreSQL, appendix A): 08 connection exceptions, 57P0x the server goes down or ended us, 25P03 we
    // slept inside a transaction. None at all: the server could not say anything any more.
    const QString code = error.nativeErrorCode();
    return code.isEmpty() || code.startsWith("08") || code.startsWith("57P0") || code == "25P03";
}

void throwServerError(const QSqlError& error, const std::string& place) {
    const QString code = error.nativeErrorCode();
    const std::string text = saying(error);
    if (isConnectionLost(error)) {
        throw Error(
            ErrorKind::BadStore,
            "the connection to the database was lost: nothing was changed; try again when the server is back (" + text +
                ")",
            place);
    }
    if (code == "53100")
        throw Error(ErrorKind::NoSpace, "the server's disk is full: nothing was changed; make room and try again",
                    place);
    if (code == "55P03" || code == "40P01" || code == "40001" || code == "57014")
        throw Error(ErrorKind::BadStore, "another program is writing to this collection; try again in a moment", place);
    if (code == "42501" || code == "25006") throw Error(ErrorKind::BadStore, kMayOnlyRead, place);
    if (code == "23503") throw Error(ErrorKind::BadData, kLinkMissing);
    if (code.startsWith("22") || code.startsWith("23"))
        throw Error(ErrorKind::BadData, "the collection refused it (" + text + ")");
    if (code.startsWith("XX0"))
        throw Error(ErrorKind::BadStore,
                    "the collection's database is damaged (" + text + "); restore it from a backup", place);
    throw Error(ErrorKind::BadStore, "the collection refused a change (" + text + ")", place);
}

std::string connectAdvice(const ConnectState& state, const ServerAddress& address) {
    if (state.lacksPassword || state.sqlstate == "28P01")
        return "the server did not let this user in: the password is wrong or missing; put it into the password file "
               "(~/.pgpass, readable by you alone)";
    if (state.sqlstate == "28000")
        return "the server does not let this user in from here: the user is not known there, or not allowed this way; "
               "ask whoever looks after the server";
    if (state.sqlstate == "3D000")
        return "there is no database \"" + address.database + "\" on this server; have it made (createdb " +
               address.database + ")";
    if (state.sqlstate == "42501")
        return "this user may not open the database; ask whoever looks after the server for the right";
    if (state.sqlstate == "53300" || state.sqlstate == "57P03")
        return "the server is busy or just starting; try again in a moment";
    return "the database cannot be reached; see that the server runs and the address is right";
}

void throwConnectError(const QSqlError& error, const ServerAddress& address) {
    throw Error(ErrorKind::BadStore, connectAdvice(connectStateOf(address), address) + " (" + saying(error) + ")",
                address.text);
}

}  // namespace ringrule
