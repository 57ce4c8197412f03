// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include <QSqlDatabase>
#include <QSqlError>

namespace ringrule {

/// One connection to one SQLite file, under a name of its own; closed when it goes. Transactions nest: the outermost is
/// the database's, inner ones are savepoints. Every failure is thrown as `Error(BadStore)`, or `Error(NoSpace)` when
/// the disk is full.
class Database {
public:
    enum class Mode { ReadOnly, ReadWrite };

    Database(const std::filesystem::path& file, Mode mode);
    ~Database();
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    /// Runs one statement that takes and gives nothing.
    void run(const std::string& sql);
    /// The first column of the first row, as text; empty when there is none.
    [[nodiscard]] std::string textOf(const std::string& sql) const;

    void begin();
    void commit();
    /// Never throws: it runs while another failure is on its way out.
    void rollback() noexcept;
    [[nodiscard]] int depth() const noexcept { return depth_; }

    [[noreturn]] void fail(const QSqlError& error) const;
    [[nodiscard]] const QSqlDatabase& connection() const noexcept { return connection_; }

private:
    QString name_;
    QSqlDatabase connection_;
    std::filesystem::path file_;
    int depth_ = 0;
};

}  // namespace ringrule
