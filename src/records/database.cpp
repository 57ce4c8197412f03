// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/database.h"

#include <atomic>
#include <cassert>
#include <mutex>

#include <QFile>
#include <QSqlQuery>
#include <QVariant>

#include "records/database_errors.h"
#include "records/server_locks.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

QtMessageHandler otherMessages = nullptr;

/// Qt's driver warns when it cannot tidy up a statement whose transaction or connection was lost: its failure is thrown
/// as an error already, and a keeper should read one line.
void withoutTidying(QtMsgType type, const QMessageLogContext& context, const QString& text) {
    if (!text.startsWith(QStringLiteral("Unable to free statement"))) otherMessages(type, context, text);
}

QString freshConnectionName() {
    static std::atomic<int> made{0};
    return QStringLiteral("ringrule-%1").arg(++made);
}

}  // namespace

Database::Database(const std::filesystem::path& file, Mode mode) : name_(freshConnectionName()), place_(file.string()) {
    connection_ = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), name_);
    connection_.setDatabaseName(QFile::decodeName(file.c_str()));
    // Another workstation's short write is waited for rather than failed on.
    QString options = QStringLiteral("QSQLITE_BUSY_TIMEOUT=5000");
    if (mode == Mode::ReadOnly) options += QStringLiteral(";QSQLITE_OPEN_READONLY");
    connection_.setConnectOptions(options);
    if (!connection_.isValid() || !connection_.open()) {
        const std::string why = connection_.lastError().text().toStdString();
        connection_ = QSqlDatabase();
        QSqlDatabase::removeDatabase(name_);
        throw Error(ErrorKind::BadStore, "the collection's database cannot be opened (" + why + ")", place_);
    }
}

Database::Database(const ServerAddress& address)
    : name_(freshConnectionName()), place_(address.text), address_(address) {
    if (!QSqlDatabase::isDriverAvailable(QStringLiteral("QPSQL"))) {
        throw Error(ErrorKind::BadStore,
                    "Qt's driver for PostgreSQL is not installed here; install the package libqt6sql6-psql", place_);
    }
    static std::once_flag once;
    std::call_once(once, [] { otherMessages = qInstallMessageHandler(withoutTidying); });
    connection_ = QSqlDatabase::addDatabase(QStringLiteral("QPSQL"), name_);
    connection_.setHostName(QString::fromStdString(address.host));
    if (address.port > 0) connection_.setPort(address.port);
    connection_.setUserName(QString::fromStdString(address.user));
    connection_.setDatabaseName(QString::fromStdString(address.database));
    connection_.setConnectOptions(QString::fromStdString(address.options));
    try {
        open();
        startSession();
    } catch (...) {
        connection_ = QSqlDatabase();
        QSqlDatabase::removeDatabase(name_);
        throw;
    }
}

Database::~Database() {
    connection_.close();
    connection_ = QSqlDatabase();  // the last copy must be gone before its name is
    QSqlDatabase::removeDatabase(name_);
}

void Database::open() const {
    QSqlDatabase connection = connection_;
    if (!connection.open()) throwConnectError(connection.lastError(), address_);
}

void Database::startSession() const {
    for (const char* sql : {
             "SET client_min_messages = warning",  // libpq would print what is less to standard error
             "SET search_path = ringrule",
             "SET extra_float_digits = 3",                        // every digit of a number comes back
             "SET synchronous_commit = on",                       // a change that is confirmed is on the server's disk
             "SET lock_timeout = '20s'",                          // another workstation's write is waited for this long
             "SET idle_in_transaction_session_timeout = '120s'",  // one that fell asleep holds nobody up for ever
         }) {
        QSqlQuery query(connection_);
        if (!query.exec(QString::fromLatin1(sql))) fail(query.lastError());
    }
    // Whoever restores a backup waits for no other program to hold this.
    QSqlQuery query(connection_);
    if (!query.exec(QStringLiteral("SELECT pg_advisory_lock_shared(%1)").arg(kOpenLock))) fail(query.lastError());
}

void Database::wake() const {
    if (!lost_ || depth_ > 0) return;
    QSqlDatabase connection = connection_;
    connection.close();
    open();
    startSession();
    lost_ = false;
}

void Database::run(const std::string& sql) {
    wake();
    QSqlQuery query(connection_);
    if (!query.exec(QString::fromStdString(sql))) fail(query.lastError());
}

std::string Database::textOf(const std::string& sql) const {
    wake();
    QSqlQuery query(connection_);
    if (!query.exec(QString::fromStdString(sql))) fail(query.lastError());
    if (query.next()) return query.value(0).toString().toStdString();
    if (query.lastError().isValid()) fail(query.lastError());
    return {};
}

void Database::begin() {
    if (depth_ > 0) {
        run("SAVEPOINT level_" + std::to_string(depth_));
    } else if (!onServer()) {
        run("BEGIN IMMEDIATE");
    } else {
        // The lock comes first: each statement after it sees what the writer before left behind.
        run("BEGIN ISOLATION LEVEL READ COMMITTED READ WRITE");
        try {
            run("SELECT pg_advisory_xact_lock(" + std::to_string(kWriterLock) + ")");
        } catch (...) {
            if (!lost_) QSqlQuery(connection_).exec(QStringLiteral("ROLLBACK"));
            throw;
        }
    }
    ++depth_;
}

void Database::commit() {
    assert(depth_ > 0);
    try {
        run(depth_ == 1 ? "COMMIT" : "RELEASE SAVEPOINT level_" + std::to_string(depth_ - 1));
        --depth_;
    } catch (...) {
        const bool unknown = lost_ && depth_ == 1;
        rollback();
        if (!unknown) throw;
        throw Error(ErrorKind::BadStore,
                    "the connection to the database was lost while a change was being confirmed: look whether it is "
                    "there before you make it again",
                    place_);
    }
}

void Database::rollback() noexcept {
    assert(depth_ > 0);
    --depth_;
    if (lost_) return;  // so is the transaction
    // The database may have rolled back by itself (disk full): a second rollback then fails, which is no news.
    QSqlQuery query(connection_);
    if (depth_ == 0) {
        query.exec(QStringLiteral("ROLLBACK"));
    } else {
        query.exec(QStringLiteral("ROLLBACK TO SAVEPOINT level_%1").arg(depth_));
        query.exec(QStringLiteral("RELEASE SAVEPOINT level_%1").arg(depth_));
    }
}

void Database::beginReading() {
    if (depth_ == 0) run(onServer() ? "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY" : "BEGIN");
}

void Database::endReading() noexcept {
    // Nothing was written: what ends a reading cannot lose anything.
    if (depth_ == 0 && !lost_) QSqlQuery(connection_).exec(QStringLiteral("COMMIT"));
}

void Database::fail(const QSqlError& error) const {
    if (!onServer()) throwSqliteError(error, place_);
    lost_ = lost_ || isConnectionLost(error);
    throwServerError(error, place_);
}

}  // namespace ringrule
