// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

#include <QSqlDatabase>
#include <QSqlError>

#include "records/server_address.h"

namespace ringrule {

/// One connection to one SQLite file or one PostgreSQL database, under a name of its own; closed when it goes.
/// Transactions nest: the outermost is the database's, inner ones are savepoints. Only one program at a time is inside
/// a transaction that writes, whichever database it is: so nothing is lost between reading and writing, and no two wait
/// for each other. Every failure is thrown as `Error(BadStore)`, or `Error(NoSpace)` when the disk is full.
class Database {
public:
    enum class Mode { ReadOnly, ReadWrite };

    Database(const std::filesystem::path& file, Mode mode);
    explicit Database(const ServerAddress& address);
    ~Database();
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    [[nodiscard]] bool onServer() const noexcept { return !address_.database.empty(); }

    /// Runs one statement that takes and gives nothing.
    void run(const std::string& sql);
    /// The first column of the first row, as text; empty when there is none.
    [[nodiscard]] std::string textOf(const std::string& sql) const;

    void begin();
    void commit();
    /// Never throws: it runs while another failure is on its way out.
    void rollback() noexcept;
    [[nodiscard]] int depth() const noexcept { return depth_; }

    /// From here on every read sees one state, whatever others write; nothing inside a transaction, which does already.
    void beginReading();
    void endReading() noexcept;

    /// Whether the server went away: what became of an unconfirmed change cannot be told from here.
    [[nodiscard]] bool lost() const noexcept { return lost_; }
    /// Connects again after the server was away; nothing inside a transaction.
    void wake() const;

    [[noreturn]] void fail(const QSqlError& error) const;
    [[nodiscard]] const QSqlDatabase& connection() const noexcept { return connection_; }

private:
    void open() const;
    void startSession() const;

    QString name_;
    QSqlDatabase connection_;
    std::string place_;  ///< file or address, for messages
    ServerAddress address_;
    int depth_ = 0;
    mutable bool lost_ = false;
};

}  // namespace ringrule
