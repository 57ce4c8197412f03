// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/database.h"

#include <atomic>
#include <cassert>

#include <QFile>
#include <QSqlQuery>
#include <QVariant>

#include "ringrule/error.h"

namespace ringrule {
namespace {

// Result codes of SQLite's C interface; the driver hands on extended codes, the low byte is the kind.
constexpr int kBusy = 5;
constexpr int kReadOnly = 8;
constexpr int kCorrupt = 11;
constexpr int kFull = 13;
constexpr int kConstraint = 19;
constexpr int kNotADatabase = 26;

QString freshConnectionName() {
    static std::atomic<int> made{0};
    return QStringLiteral("ringrule-%1").arg(++made);
}

}  // namespace

Database::Database(const std::filesystem::path& file, Mode mode) : name_(freshConnectionName()), file_(file) {
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
        throw Error(ErrorKind::BadStore, "the collection's database cannot be opened (" + why + ")", file.string());
    }
}

Database::~Database() {
    connection_.close();
    connection_ = QSqlDatabase();  // the last copy must be gone before its name is
    QSqlDatabase::removeDatabase(name_);
}

void Database::run(const std::string& sql) {
    QSqlQuery query(connection_);
    if (!query.exec(QString::fromStdString(sql))) fail(query.lastError());
}

std::string Database::textOf(const std::string& sql) const {
    QSqlQuery query(connection_);
    if (!query.exec(QString::fromStdString(sql))) fail(query.lastError());
    if (query.next()) return query.value(0).toString().toStdString();
    if (query.lastError().isValid()) fail(query.lastError());
    return {};
}

void Database::begin() {
    run(depth_ == 0 ? "BEGIN IMMEDIATE" : "SAVEPOINT level_" + std::to_string(depth_));
    ++depth_;
}

void Database::commit() {
    assert(depth_ > 0);
    try {
        run(depth_ == 1 ? "COMMIT" : "RELEASE level_" + std::to_string(depth_ - 1));
        --depth_;
    } catch (...) {
        rollback();
        throw;
    }
}

void Database::rollback() noexcept {
    assert(depth_ > 0);
    --depth_;
    // SQLite may have rolled back by itself (disk full): a second rollback then fails, which is no news.
    QSqlQuery query(connection_);
    if (depth_ == 0) {
        query.exec(QStringLiteral("ROLLBACK"));
    } else {
        query.exec(QStringLiteral("ROLLBACK TO level_%1").arg(depth_));
        query.exec(QStringLiteral("RELEASE level_%1").arg(depth_));
    }
}

void Database::fail(const QSqlError& error) const {
    const int code = error.nativeErrorCode().toInt() & 0xff;
    const std::string file = file_.string();
    switch (code) {
        case kFull:
            throw Error(ErrorKind::NoSpace, "the disk is full: nothing was changed; make room and try again", file);
        case kBusy:
            throw Error(ErrorKind::BadStore, "another program is writing to this collection; try again in a moment",
                        file);
        case kReadOnly:
            throw Error(ErrorKind::BadStore, "the collection may only be read here; ask for the right to write it",
                        file);
        case kCorrupt:
        case kNotADatabase:
            throw Error(ErrorKind::BadStore, "the collection's database is damaged; restore it from a backup", file);
        case kConstraint:
            if (error.text().contains(QStringLiteral("FOREIGN KEY")))
                throw Error(ErrorKind::BadData, "other records refer to it, or it refers to one that is not there");
            throw Error(ErrorKind::BadData, "the collection refused it (" + error.text().toStdString() + ")");
        default:
            throw Error(ErrorKind::BadStore, "the collection refused a change (" + error.text().toStdString() + ")",
                        file);
    }
}

}  // namespace ringrule
